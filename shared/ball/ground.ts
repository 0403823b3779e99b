/**
 * The ground as the ball model sees it: no more than this. Implementations allocate nothing in `sample`.
 * The plane is metres east (x) and north (y) with metres up (z).
 */
export interface Ground {
  /**
   * Writes the height (m), the gradient (dz/dEast, dz/dNorth) and the cover code at the point in `at[0..1]` into `out[0..3]`.
   * Defined everywhere: beyond the surveyed ground the surface goes on smoothly. The point comes in an array because engines
   * wrap every number that is passed to a call, and this is called forty times a shot.
   */
  sample(at: Float64Array, out: Float64Array): void;
  /** The cover code alone, where that is to be had for less. */
  codeAt?(at: Float64Array): number;
  /** No ground is higher than this (m): a ball above it and above every obstacle needs no contact check. */
  readonly maxHeightM: number;
  /** The same block by block, where it is known. */
  readonly ceiling?: Ceiling | null;
  /** Things in the air. Empty on most ground. */
  readonly obstacles: readonly Obstacle[];
  /** The grain of its greens; left out where there is none. */
  readonly grain?: Grain;
  /** Where it is noted what flights pass over, if anybody wants to know. */
  readonly reads?: FlightNotes;
}

/**
 * Grain of a green: the way the grass leans, as long as the share of the rolling resistance by which it pulls a ball that
 * way, as a slight fall of the ground would: along it a putt runs on, across it a putt breaks. Assumed: no source gives a
 * figure.
 */
export interface Grain {
  readonly eastShare: number;
  readonly northShare: number;
}

/** Blocks of ground from the south-west with a height (m) that no ground in them exceeds, nor within a hand's breadth. */
export interface Ceiling {
  readonly westM: number;
  readonly southM: number;
  /** Blocks to a metre. */
  readonly perM: number;
  readonly columns: number;
  readonly rows: number;
  readonly heightsM: Float64Array;
}

/** Blocks of ground from the south-west, a byte of `into` each from `airFrom` on; those at the edge stand for all beyond. */
export interface FlightNotes {
  into: Uint8Array;
  readonly westM: number;
  readonly southM: number;
  /** Blocks to a metre. */
  readonly airPerM: number;
  readonly airColumns: number;
  readonly airRows: number;
  readonly airFrom: number;
}

/** A tree crown or a wall: an upright prism over a ring, between two heights above datum. */
export interface Obstacle {
  readonly kind: 'tree' | 'wall';
  readonly name: string;
  /** Ring as flat east, north pairs in metres, not closed. */
  readonly ringM: Float64Array;
  readonly bottomM: number;
  readonly topM: number;
}
