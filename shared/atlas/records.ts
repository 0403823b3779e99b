import type { LonLat } from '../geometry/points.ts';
import type { AreaKind, Cover, GrainStrength, LieQuality, Moisture } from '../words/vocabulary.ts';
import type { PlayerRecord } from './playerRecords.ts';

export type { Club, MeasuredCarries, PlayerLevel, PlayerRecord } from './playerRecords.ts';

/**
 * The records of an atlas. The document is a flat set of them, keyed by a stable id, so that an edit, an undo step and
 * a journal entry are each a handful of records. Positions are WGS 84; heights are metres above the atlas's own datum.
 */
export type RecordId = string;

/** Rings of positions, outer first; a ring's first position is not repeated. Written to files closed (RFC 7946). */
export type Rings = readonly (readonly LonLat[])[];

/** The one record that names the whole: its id is always `atlas`. */
export interface AtlasHeader {
  readonly type: 'atlas';
  readonly id: 'atlas';
  readonly name: string;
  readonly kind: 'course' | 'practiceGround';
  /** False for a blank canvas whose anchor is nominal. */
  readonly placed: boolean;
  readonly anchor: LonLat;
  readonly note: string;
}

/** A hole of a course, or a station of a practice ground. */
export interface HoleRecord {
  readonly type: 'hole';
  readonly id: RecordId;
  /** What the card prints: "4", or "S2" for a station. Unique in the atlas. */
  readonly label: string;
  readonly order: number;
  readonly name: string;
  readonly par: number | null;
  readonly greenId: RecordId | null;
  /** Line of play from tee to green, or null. */
  readonly line: readonly LonLat[] | null;
}

export interface AreaRecord {
  readonly type: 'area';
  readonly id: RecordId;
  readonly kind: AreaKind;
  readonly name: string;
  readonly rings: Rings;
  /** Bunkers: height of the lip above the sand floor. Null where unknown or not a bunker. */
  readonly lipHeightM: number | null;
  /** Trees: top and underside of the crown above the ground. */
  readonly treeHeightM: number | null;
  readonly canopyBaseM: number | null;
  /** Greens: which way the grass leans, as a true bearing. Left out where it does not, or nobody has said. */
  readonly grain?: { readonly towardsDeg: number; readonly strength: GrainStrength };
}

export interface LineRecord {
  readonly type: 'line';
  readonly id: RecordId;
  readonly kind: 'tierEdge' | 'ridge' | 'contour' | 'wall';
  readonly name: string;
  readonly positions: readonly LonLat[];
  /** Contours: their height. Walls: height above the ground. */
  readonly heightM: number | null;
}

export interface SpotHeight {
  readonly type: 'spotHeight';
  readonly id: RecordId;
  readonly at: LonLat;
  readonly heightM: number;
  /** One standard deviation of the reading. */
  readonly accuracyM: number;
}

export interface SlopeReading {
  readonly type: 'slopeReading';
  readonly id: RecordId;
  readonly at: LonLat;
  readonly slopePct: number;
  /** True bearing in which the ground falls. */
  readonly downhillBearingDeg: number;
  readonly accuracyPct: number;
}

/** How the ground seems to lie as a whole, judged by eye: "2 % back to front". Weak evidence, but better than none. */
export interface PlaneByEye {
  readonly type: 'planeByEye';
  readonly id: RecordId;
  readonly at: LonLat;
  /** Half the length of the ground that was looked at. */
  readonly reachM: number;
  readonly slopePct: number;
  /** True bearing in which the ground falls. */
  readonly downhillBearingDeg: number;
  readonly accuracyPct: number;
}

/** Heights on a regular grid, cut from an elevation model about a green. */
export interface ElevationGrid {
  readonly type: 'elevationGrid';
  readonly id: RecordId;
  readonly name: string;
  /** The corner nodes in one ring: south-west, south-east, north-east, north-west as the grid's own rows and columns lie. */
  readonly corners: Rings;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the south-west corner; null where the model has no height. */
  readonly heightsM: readonly (number | null)[];
  /** Added to every height to reach the atlas's own datum. */
  readonly datumShiftM: number;
  /** One standard deviation of a height, beyond what a common shift explains. */
  readonly accuracyM: number;
}

export interface HoleLocation {
  readonly type: 'holeLocation';
  readonly id: RecordId;
  readonly holeId: RecordId;
  /** The letter on its tag, unique in the hole. */
  readonly label: string;
  readonly name: string;
  readonly at: LonLat;
  /** The pin sheet it belongs to, such as "Saturday"; absent where it is on none. */
  readonly sheet?: string;
}

export interface BallPosition {
  readonly type: 'ballPosition';
  readonly id: RecordId;
  readonly holeId: RecordId;
  /** The number in its circle, unique in the hole. */
  readonly label: string;
  readonly name: string;
  readonly at: LonLat;
  readonly lie: LieQuality;
  /** Cover under the ball where the map would say otherwise; null follows the map. */
  readonly coverOverride: Cover | null;
  /** How wet it is under the ball where the day would say otherwise; absent follows the day. */
  readonly moistureOverride?: Moisture;
  /** A name that balls seen, planned and printed together share; absent where it is in no group. */
  readonly group?: string;
}

/** A thing to find one's way by or to measure from: a sprinkler, a marker post, a bench. */
export interface Landmark {
  readonly type: 'landmark';
  readonly id: RecordId;
  readonly name: string;
  readonly at: LonLat;
}

export interface ConditionsRecord {
  readonly type: 'conditions';
  readonly id: RecordId;
  readonly name: string;
  readonly stimpFt: number;
  /** 0 soft to 1 firm. */
  readonly firmness: number;
  readonly moisture: Moisture;
  readonly windMps: number;
  /** True bearing the wind blows from. */
  readonly windFromDeg: number;
  /** The flagstick stays in the hole, for putts too; absent takes it out. */
  readonly flagstickIn?: boolean;
  readonly heightAboveSeaM?: number;
  readonly temperatureC?: number;
  /** The pin sheet in play: holes with flags on it are played to those alone. Absent plays to every flag. */
  readonly sheet?: string;
  readonly inUse: boolean;
}

/** What a player chose for a ball and a flag; it may differ from the advice. */
export interface ChoiceRecord {
  readonly type: 'choice';
  readonly id: RecordId;
  readonly ballId: RecordId;
  readonly flagId: RecordId;
  readonly playerId: RecordId;
  /** PlanOption.id */
  readonly optionId: string;
  readonly note: string;
}

/** Where imported data came from, and on what terms; printed with whatever is made from it. */
export interface SourceRecord {
  readonly type: 'source';
  readonly id: RecordId;
  /** The file, or what the file calls itself. */
  readonly name: string;
  /** As its owner asks to be named: "© somebody". Empty where the file names nobody. */
  readonly attribution: string;
  /** Name or address of the licence; empty where the file names none. */
  readonly licence: string;
}

/** Kinds of picture file that every window can show. */
export type PictureMediaType = 'image/jpeg' | 'image/png' | 'image/webp';

/**
 * A photo, scan or drone image of the ground, to trace over. Its pixels are no part of the document: they are kept beside
 * it, once for each content, by their hash.
 */
export interface PictureRecord {
  readonly type: 'picture';
  readonly id: RecordId;
  readonly name: string;
  /** SHA-256 of the picture's file, 64 hex digits. */
  readonly sha256: string;
  readonly mediaType: PictureMediaType;
  /** As it is seen, upright. */
  readonly widthPx: number;
  readonly heightPx: number;
  /**
   * Where its corners lie, in one ring: bottom left, bottom right, top right, top left as it is seen. It may be turned
   * and stretched evenly but not bent, so the third follows from the others and is not read.
   */
  readonly corners: Rings;
  /** 0 not to be seen, 1 hides what is below. */
  readonly opacity: number;
  readonly shown: boolean;
  /** As its owner asks to be named, and on what terms; printed with whatever is traced from it. Empty for nobody. */
  readonly attribution: string;
  readonly licence: string;
}

export type AtlasRecord =
  | AtlasHeader
  | HoleRecord
  | AreaRecord
  | LineRecord
  | SpotHeight
  | SlopeReading
  | PlaneByEye
  | ElevationGrid
  | HoleLocation
  | BallPosition
  | Landmark
  | ConditionsRecord
  | PlayerRecord
  | ChoiceRecord
  | SourceRecord
  | PictureRecord;

export type RecordOf<T extends AtlasRecord['type']> = Extract<AtlasRecord, { readonly type: T }>;

/** The document: immutable; edits make a new one. It always holds the header. */
export interface AtlasDocument {
  readonly records: ReadonlyMap<RecordId, AtlasRecord>;
}
