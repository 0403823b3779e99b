import { Dexie } from 'dexie';
import type { InputProblem } from '../../shared/words/inputProblem.ts';
import { libraryBlocked, libraryDeleted, libraryProblem, libraryTakenOver } from './libraryProblem.ts';

/** What a window wants to know of what other windows do to a database. */
export interface DatabaseWatcher {
  /** Another window keeps it from being opened here; null when that one has let go. */
  readonly waits: (problem: InputProblem | null) => void;
  /** Another window has taken it over: nothing is read or written from here any more. */
  readonly lost: (problem: InputProblem) => void;
  /** Resolves when what was handed over for writing is written. */
  readonly settled: () => Promise<unknown>;
}

/** A window that lets go does so within a moment; whoever still holds on after this has to be closed by hand. */
const PATIENCE_MS = 600;

/**
 * A database that windows of different versions may have open at once. Before a newer one changes its shape, this one
 * writes what it has in hand and lets go for good, since it could not tell what the new shape means.
 */
export class SharedDatabase extends Dexie {
  #watcher: DatabaseWatcher | null = null;
  #lost: InputProblem | null = null;
  #patience: ReturnType<typeof setTimeout> | undefined;
  #worked = false;

  constructor(name: string) {
    super(name);
    // Answers of false keep the usual handlers from running: they would open it again in the shape of old.
    this.on('versionchange', ({ newVersion }) => {
      this.#giveUp(newVersion === null || newVersion === 0 ? libraryDeleted() : libraryTakenOver());
      return false;
    });
    this.on('blocked', () => {
      clearTimeout(this.#patience);
      this.#patience = setTimeout(() => this.#watcher?.waits(libraryBlocked()), PATIENCE_MS);
      return false;
    });
    this.on(
      'ready',
      () => {
        clearTimeout(this.#patience);
        this.#watcher?.waits(null);
        // Natively a version counts in tenths. Left alone, a newer shape would be opened as if it were this one.
        if (Math.floor(this.backendDB().version / 10) > this.verno)
          throw Object.assign(new Error('a newer library'), { name: 'VersionError' });
        this.#worked = true;
      },
      true,
    );
  }

  watch(watcher: DatabaseWatcher): void {
    this.#watcher = watcher;
  }

  /** Any failure as a sentence and a remedy. */
  problem(error: unknown): InputProblem {
    return this.#lost ?? libraryProblem(error, this.#worked);
  }

  /** Opens it anew after a failure that may have broken off the connection; false where that would be of no use. */
  async revive(error: unknown): Promise<boolean> {
    if (this.#lost !== null || this.problem(error).code !== 'library-stopped') return false;
    this.close({ disableAutoOpen: false });
    await this.open();
    return true;
  }

  #giveUp(problem: InputProblem): void {
    const watcher = this.#watcher;
    const done = (): void => {
      this.#lost = problem;
      this.close();
      watcher?.lost(problem);
    };
    if (watcher === null) done();
    else watcher.settled().then(done, done);
  }
}
