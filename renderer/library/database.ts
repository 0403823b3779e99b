import type { EntityTable, Table } from 'dexie';
import type { RecordChange } from '../../shared/atlas/documentChanges.ts';
import type { AtlasRecord } from '../../shared/atlas/records.ts';
import { givePicksTheirPlayer } from './givePicksTheirPlayer.ts';
import { SharedDatabase } from './sharedDatabase.ts';

/** One atlas of the library, without its contents. */
export interface ShelfRow {
  readonly id: string;
  readonly name: string;
  readonly updatedAt: number;
  /** How many of its journal steps are in force; the rest have been undone and can be done again. */
  readonly stepsInForce: number;
  readonly fileName: string | null;
  /** The count of steps at which its file was last written; null where no file holds any state of the journal. */
  readonly stepsInFile: number | null;
  /** What was chosen when it was last open, as the session wrote it. */
  readonly session: unknown;
}

/** The document from which an atlas's journal starts. */
export interface BaseRow {
  readonly atlasId: string;
  readonly records: readonly AtlasRecord[];
}

/** One undoable step, in the order of `index` from 0. */
export interface StepRow {
  readonly atlasId: string;
  readonly index: number;
  readonly label: string;
  readonly at: number;
  readonly changes: readonly RecordChange[];
}

export interface KeptRow {
  readonly key: string;
  readonly value: unknown;
}

/**
 * The tables of the library. A version, once released, is never edited: a change of shape is a new version with an
 * upgrade.
 */
export class LibraryDatabase extends SharedDatabase {
  declare readonly atlases: EntityTable<ShelfRow, 'id'>;
  declare readonly bases: EntityTable<BaseRow, 'atlasId'>;
  declare readonly steps: Table<StepRow, [atlasId: string, index: number]>;
  declare readonly kept: EntityTable<KeptRow, 'key'>;

  constructor(name = 'swale-library') {
    super(name);
    this.version(1).stores({
      atlases: 'id, updatedAt',
      bases: 'atlasId',
      steps: '[atlasId+index]',
      kept: 'key',
    });
    // A pick belongs to a player since.
    this.version(2)
      .stores({})
      .upgrade((opened) => givePicksTheirPlayer(opened));
  }
}
