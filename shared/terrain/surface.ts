import type { Ceiling } from './ceiling.ts';

/** A fitted height field on a regular grid, row by row from the south-west corner, C1 between nodes. */
export interface Surface {
  readonly originEastM: number;
  readonly originNorthM: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  /** Heights at nodes, metres, length rows x columns. */
  readonly heightsM: Float64Array;
  /** A height that no ground of it exceeds anywhere, and the same over blocks; left out where they are not known. */
  readonly highestM?: number;
  readonly ceiling?: Ceiling;
  /** Writes height, dz/dEast, dz/dNorth into out[0..2]. Defined everywhere; beyond the grid it goes on smoothly. */
  sampleHeight(eastM: number, northM: number, out: Float64Array): void;
  /** The same at the point in at[0..1], for loops: engines wrap every number that is passed to a call. */
  sampleAt(at: Float64Array, out: Float64Array): void;
}
