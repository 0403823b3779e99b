import type { AtlasHeader, AtlasRecord, RecordId, SourceRecord } from '../../atlas/records.ts';
import type { AreaKind } from '../../words/vocabulary.ts';

/** A file as it was chosen. */
export interface ImportFile {
  readonly fileName: string;
  readonly content: Uint8Array;
  /** Text of the .prj file beside an ASCII grid, if there is one. */
  readonly projection?: string;
}

export type HeightUnit = 'm' | 'ft' | 'usft';

/** What a person may say where the file does not, or says it wrongly. */
export interface ImportOptions {
  /** Kind of outlines whose tags and name say none. Default: light rough, which is what untraced ground is anyway. */
  readonly unknownAreaKind?: AreaKind;
  /** CSV: the heading of the column that holds each thing, instead of the guessed one. */
  readonly columns?: Readonly<Record<string, string>>;
  /** CSV and grids: `EPSG:27700`, a PROJ text, or (CSV) `local` for metres east and north of the atlas's anchor. */
  readonly crs?: string;
  /** The hole of flags and balls that name none. By the nearest green where it is not said. */
  readonly holeId?: RecordId;
  readonly heightUnit?: HeightUnit;
  /** One standard deviation of the heights. */
  readonly accuracyM?: number;
  /** Grids: ground kept around each green, metres. Default 25. */
  readonly marginM?: number;
  /** Grids: shift heights to the atlas's own datum where it has heights to compare with. Default true. */
  readonly matchDatum?: boolean;
  readonly progress?: (done: number, of: number) => void;
}

/** Records of one kind that would come in. */
export interface ImportGroup {
  /**
   * Names the group in a selection: `area:green`, `hole`, `spotHeight`; where a kind comes from several tags, with the tag,
   * such as `area:penaltyArea:natural=water`.
   */
  readonly key: string;
  /** "bunkers", or "bunker" for one. */
  readonly title: string;
  /** What in the file says so, such as `golf=bunker`; empty where nothing in particular does. */
  readonly from: string;
  /** One sentence: what in the file becomes this. */
  readonly how: string;
  readonly records: readonly AtlasRecord[];
}

export interface LeftOut {
  readonly what: string;
  readonly why: string;
  readonly count: number;
  /** Where in the file the first ones stand. */
  readonly places: readonly string[];
}

export interface ImportWarning {
  readonly code: string;
  readonly text: string;
}

/** All that would happen, told before anything does. */
export interface ImportPreview {
  readonly fileName: string;
  /** In words: "OpenStreetMap XML". */
  readonly format: string;
  readonly groups: readonly ImportGroup[];
  readonly leftOut: readonly LeftOut[];
  readonly warnings: readonly ImportWarning[];
  readonly source: SourceRecord;
  /** The header to set where the atlas is still empty and takes its place on the earth from the file. */
  readonly header: AtlasHeader | null;
  /** CSV: the headings found, and what each column was taken for. */
  readonly columns?: Readonly<Record<string, string>>;
}

/** Which groups to take, all by default, and as what they come in. */
export interface ImportSelection {
  readonly without?: ReadonlySet<string>;
  /** Kind of the outlines of a group. */
  readonly areaKinds?: Readonly<Record<string, AreaKind>>;
  /** What the flags or balls of a group are instead. */
  readonly pointKinds?: Readonly<Record<string, 'holeLocation' | 'ballPosition' | 'landmark'>>;
  /** The hole that gets the green where just one comes in, and the hole has none. */
  readonly greenOfHole?: RecordId;
  /** Owner and licence in the person's own words. */
  readonly credit?: Pick<SourceRecord, 'attribution' | 'licence'>;
}

export const recordCount = (preview: ImportPreview): number =>
  preview.groups.reduce((sum, { records }) => sum + records.length, 0);
