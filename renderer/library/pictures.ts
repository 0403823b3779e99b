import type { EntityTable } from 'dexie';
import { recordsOf } from '../../shared/atlas/document.ts';
import { documentOf } from '../../shared/atlas/documentChanges.ts';
import { LibraryDatabase } from './database.ts';
import { sha256Of } from '../workers/sha256.ts';
import { type DatabaseWatcher, SharedDatabase } from './sharedDatabase.ts';

interface PictureRow {
  /** SHA-256 of the content, hex. */
  readonly sha256: string;
  readonly content: Uint8Array;
  /** When it was last kept, ms since 1970. */
  readonly keptAt: number;
}

/** Apart from the journal, so that the many small writes there never carry pixels along. */
export class PictureDatabase extends SharedDatabase {
  declare readonly pictures: EntityTable<PictureRow, 'sha256'>;

  constructor(name = 'swale-pictures') {
    super(name);
    this.version(1).stores({ pictures: 'sha256' });
  }
}

/** A picture no atlas names is let go after this: another window may be about to name it, and a deletion be undone. */
const UNNAMED_MS = 24 * 60 * 60 * 1000;

/** Files of pictures, each kept once, whatever atlases show it. Every failure is an `InputProblem`. */
export class Pictures {
  readonly #database: PictureDatabase;

  constructor(database = new PictureDatabase()) {
    this.#database = database;
  }

  watch(watcher: Omit<DatabaseWatcher, 'settled'>): void {
    // A picture is kept in one go: there is never more in hand than what is being written.
    this.#database.watch({ ...watcher, settled: () => Promise.resolve() });
  }

  /** Keeps a picture and returns its hash. */
  async keep(content: Uint8Array, now: number): Promise<string> {
    try {
      const sha256 = await sha256Of(content);
      await this.#database.pictures.put({ sha256, content, keptAt: now });
      return sha256;
    } catch (error) {
      throw this.#database.problem(error);
    }
  }

  async load(sha256: string): Promise<Uint8Array | null> {
    try {
      return (await this.#database.pictures.get(sha256))?.content ?? null;
    } catch (error) {
      throw this.#database.problem(error);
    }
  }

  /** Lets go of what no atlas of the library shows or could show again by undoing. Returns how many. */
  async sweep(now: number, library = new LibraryDatabase()): Promise<number> {
    try {
      const old = await this.#database.pictures
        .filter(({ keptAt }) => keptAt < now - UNNAMED_MS)
        .primaryKeys();
      if (old.length === 0) return 0;
      const named = new Set<string>();
      await library.bases.each(({ records }) => {
        for (const { sha256 } of recordsOf(documentOf(records), 'picture')) named.add(sha256);
      });
      await library.steps.each(({ changes }) => {
        for (const { record } of changes) if (record?.type === 'picture') named.add(record.sha256);
      });
      const unnamed = old.filter((sha256) => !named.has(sha256));
      await this.#database.pictures.bulkDelete(unnamed);
      return unnamed.length;
    } catch (error) {
      throw this.#database.problem(error);
    } finally {
      library.close();
    }
  }
}
