import { applyChanges, documentChanges, documentOf } from '../../shared/atlas/documentChanges.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { type BaseRow, LibraryDatabase, type ShelfRow, type StepRow } from './database.ts';
import type { DatabaseWatcher } from './sharedDatabase.ts';

/** A document with the words for the step that made it. */
export interface JournalState {
  readonly label: string;
  readonly document: AtlasDocument;
}

/** An atlas with its whole journal: enough to undo and redo as before the window was closed. */
export interface ShelvedAtlas {
  readonly shelf: ShelfRow;
  readonly base: AtlasDocument;
  readonly steps: readonly JournalState[];
}

/** An atlas off the shelf, whole. */
export interface TakenAtlas {
  readonly shelf: ShelfRow;
  readonly base: BaseRow;
  readonly steps: readonly StepRow[];
}

/** Steps kept for undoing before the oldest are folded into the base. */
const JOURNAL_LIMIT = 400;

/** The atlases kept in this browser or program. Every failure is an `InputProblem`. */
export class Library {
  readonly #database: LibraryDatabase;
  readonly #journalLimit: number;
  /** Writes go one after another, in the order the edits were made. */
  #queue: Promise<unknown> = Promise.resolve();
  /** Writes to an atlas's journal that failed, in their order: each is tried again before the next, or steps would be missing. */
  readonly #owed = new Map<string, readonly (() => Promise<unknown>)[]>();

  constructor(database = new LibraryDatabase(), journalLimit = JOURNAL_LIMIT) {
    this.#database = database;
    this.#journalLimit = journalLimit;
  }

  watch(watcher: Omit<DatabaseWatcher, 'settled'>): void {
    this.#database.watch({ ...watcher, settled: () => this.settled() });
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(work).catch((error: unknown) => {
      throw this.#database.problem(error);
    });
    this.#queue = turn.catch(() => undefined);
    return turn;
  }

  /** Writes to an atlas's journal what is owed to it and then this, all or nothing. */
  async #journal(id: string, write?: () => Promise<unknown>): Promise<void> {
    const owed = [...(this.#owed.get(id) ?? []), ...(write === undefined ? [] : [write])];
    if (owed.length === 0) return;
    this.#owed.set(id, owed);
    const { atlases, bases, steps } = this.#database;
    const writeAll = (): Promise<void> =>
      this.#database.transaction('rw', atlases, bases, steps, async () => {
        for (const one of owed) await one();
      });
    try {
      await writeAll();
    } catch (error) {
      if (!(await this.#database.revive(error))) throw error;
      await writeAll();
    }
    this.#owed.delete(id);
  }

  list(): Promise<readonly ShelfRow[]> {
    return this.#inTurn(() => this.#database.atlases.orderBy('updatedAt').reverse().toArray());
  }

  /** Puts a new atlas on the shelf with an empty journal. */
  add(shelf: Omit<ShelfRow, 'stepsInForce'>, document: AtlasDocument): Promise<void> {
    return this.#inTurn(() =>
      this.#database.transaction('rw', this.#database.atlases, this.#database.bases, async () => {
        await this.#database.atlases.put({ ...shelf, stepsInForce: 0 });
        await this.#database.bases.put({ atlasId: shelf.id, records: [...document.records.values()] });
      }),
    );
  }

  load(id: string): Promise<ShelvedAtlas | null> {
    return this.#inTurn(async () => {
      // What still cannot be written is not shown either: the steps to come have to follow what is there.
      await this.#journal(id).catch(() => this.#owed.delete(id));
      const shelf = await this.#database.atlases.get(id);
      const base = await this.#database.bases.get(id);
      if (shelf === undefined || base === undefined) return null;
      const rows = await this.#database.steps
        .where('[atlasId+index]')
        .between([id, 0], [id, Infinity])
        .toArray();
      let document = documentOf(base.records);
      const start = document;
      const steps = rows.map(({ label, changes }) => {
        document = applyChanges(document, changes);
        return { label, document };
      });
      return { shelf, base: start, steps };
    });
  }

  /** Writes one step; steps undone before it can no longer be done again. */
  append(
    id: string,
    stepsInForce: number,
    label: string,
    before: AtlasDocument,
    after: AtlasDocument,
    at: number,
  ): Promise<void> {
    const changes = documentChanges(before, after);
    const header = after.records.get('atlas');
    const name = header?.type === 'atlas' ? { name: header.name } : {};
    const { atlases, steps } = this.#database;
    return this.#inTurn(() =>
      this.#journal(id, async () => {
        await steps.where('[atlasId+index]').between([id, stepsInForce], [id, Infinity]).delete();
        await steps.put({ atlasId: id, index: stepsInForce, label, at, changes });
        await atlases.update(id, { updatedAt: at, stepsInForce: stepsInForce + 1, ...name });
      }),
    );
  }

  /** After an undo or redo: how many steps are in force now. */
  moveTo(id: string, stepsInForce: number, at: number): Promise<void> {
    return this.#inTurn(() =>
      this.#journal(id, () => this.#database.atlases.update(id, { stepsInForce, updatedAt: at })),
    );
  }

  /** Folds old steps into the base where the journal has grown long; only when nothing is undone. */
  trim(id: string): Promise<boolean> {
    return this.#inTurn(() =>
      this.#database.transaction(
        'rw',
        this.#database.atlases,
        this.#database.bases,
        this.#database.steps,
        async () => {
          const rows = await this.#database.steps
            .where('[atlasId+index]')
            .between([id, 0], [id, Infinity])
            .toArray();
          const shelf = await this.#database.atlases.get(id);
          const base = await this.#database.bases.get(id);
          if (
            rows.length <= this.#journalLimit ||
            shelf?.stepsInForce !== rows.length ||
            base === undefined
          ) {
            return false;
          }
          const folded = rows.slice(0, rows.length - this.#journalLimit / 2);
          const kept = rows.slice(folded.length);
          const document = folded.reduce(
            (at, { changes }) => applyChanges(at, changes),
            documentOf(base.records),
          );
          await this.#database.bases.put({ atlasId: id, records: [...document.records.values()] });
          await this.#database.steps.where('[atlasId+index]').between([id, 0], [id, Infinity]).delete();
          await this.#database.steps.bulkPut(kept.map((row, index) => ({ ...row, index })));
          const inFile = shelf.stepsInFile === null ? -1 : shelf.stepsInFile - folded.length;
          await this.#database.atlases.update(id, {
            stepsInForce: kept.length,
            stepsInFile: inFile < 0 ? null : inFile,
          });
          return true;
        },
      ),
    );
  }

  /** What is known of an atlas beside its contents. */
  keepAbout(id: string, about: Pick<ShelfRow, 'session' | 'fileName' | 'stepsInFile'>): Promise<void> {
    return this.#inTurn(async () => {
      await this.#database.atlases.update(id, about);
    });
  }

  /** Takes an atlas off the shelf; what comes back puts it there again as it was. */
  takeOff(id: string): Promise<TakenAtlas | null> {
    const { atlases, bases, steps } = this.#database;
    return this.#inTurn(async () => {
      const taken = await this.#database.transaction('rw', atlases, bases, steps, async () => {
        const shelf = await atlases.get(id);
        const base = await bases.get(id);
        if (shelf === undefined || base === undefined) return null;
        const own = steps.where('[atlasId+index]').between([id, 0], [id, Infinity]);
        const rows = await own.toArray();
        await own.delete();
        await bases.delete(id);
        await atlases.delete(id);
        return { shelf, base, steps: rows };
      });
      this.#owed.delete(id);
      // There may be room again for what could not be written.
      for (const other of [...this.#owed.keys()]) await this.#journal(other).catch(() => undefined);
      return taken;
    });
  }

  putBack({ shelf, base, steps }: TakenAtlas): Promise<void> {
    return this.#inTurn(() =>
      this.#database.transaction(
        'rw',
        this.#database.atlases,
        this.#database.bases,
        this.#database.steps,
        async () => {
          await this.#database.atlases.put(shelf);
          await this.#database.bases.put(base);
          await this.#database.steps.bulkPut([...steps]);
        },
      ),
    );
  }

  keep(key: string, value: unknown): Promise<void> {
    return this.#inTurn(async () => {
      await this.#database.kept.put({ key, value });
    });
  }

  kept(key: string): Promise<unknown> {
    return this.#inTurn(async () => (await this.#database.kept.get(key))?.value);
  }

  /** Resolves when everything handed over so far is on the disk, or has failed. */
  async settled(): Promise<void> {
    await this.#queue;
  }
}
