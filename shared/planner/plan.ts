import type { PlanePoint } from '../geometry/points.ts';
import type { Effort } from './effort.ts';
import type { Cover, Technique } from '../words/vocabulary.ts';

/** An ellipse of finishes in the plane. */
export interface FinishEllipse {
  readonly centre: PlanePoint;
  readonly semiMajorM: number;
  readonly semiMinorM: number;
  /** True bearing of the major axis, degrees. */
  readonly bearingDeg: number;
}

/** A path sampled for drawing: flat [east, north, height] triples in metres, with the index where each phase starts. */
export interface DrawnPath {
  readonly pointsM: Float64Array;
  /** Indices (in points) of every touchdown; the first is the landing spot. Empty for a roll. */
  readonly touchdowns: readonly number[];
  /** Index (in points) where the ball begins to roll for good. */
  readonly rollFrom: number;
}

export type SwingSize = 'small' | 'medium' | 'long';

/** Why an option stands where it does: a computed difference, put in words by reasonText. */
export interface Reason {
  readonly kind: string;
  /** Numbers behind the sentence, SI units, names carrying the unit. */
  readonly values: Readonly<Record<string, number | string>>;
}

export interface Chances {
  readonly holed: number;
  readonly insideThreeFeet: number;
  readonly insideSixFeet: number;
  /** Hole out in two from here. */
  readonly upAndDown: number;
  readonly offGreen: number;
  readonly bunker: number;
  readonly penalty: number;
  readonly outOfBounds: number;
  /** Struck a lip, bank, crown or wall. */
  readonly obstructed: number;
  /** Rolled on for as long as it was followed: ground that holds no ball. */
  readonly neverStops: number;
  /** Any of bunker, penalty, out of bounds, heavy rough, obstructed or never stopping: what the table calls trouble. */
  readonly trouble: number;
}

export interface PlanOption {
  /** Stable: technique, club and intent, such as `chip:w46` or `away:chip:w46`. */
  readonly id: string;
  readonly technique: Technique;
  readonly clubId: string;
  readonly clubName: string;
  /** The safe way out: aimed to be out of trouble rather than near the flag. */
  readonly playAway: boolean;
  readonly clubheadMps: number;
  readonly size: SwingSize;
  readonly leanDeg: number;
  readonly faceOpenDeg: number;
  /** Bearing of the start line. */
  readonly aimBearingDeg: number;
  /** Where the start line passes the flag, metres to its right (negative left), seen from the ball. */
  readonly aimRightM: number;
  readonly landing: PlanePoint | null;
  /**
   * Landing spot from the green’s near edge along the line: positive on the green, negative short; null past or beside it and
   * for a roll.
   */
  readonly landingOnM: number | null;
  readonly carryM: number;
  readonly runM: number;
  readonly apexM: number;
  /** Rise of the ground from landing to flag (or to rest when playing away). */
  readonly runRiseM: number;
  readonly path: DrawnPath;
  /** Finishes of the simulated shots, flat [east, north] pairs, and each one's cover code (see `covers`), 254 holed, 255 lost. */
  readonly finishesM: Float64Array;
  readonly finishCodes: Uint8Array;
  /** Landing spots of the same shots, flat pairs; empty for a roll. */
  readonly landingsM: Float64Array;
  readonly ellipse50: FinishEllipse;
  readonly ellipse90: FinishEllipse;
  /** Distance left to the hole after this shot, metres, holed counted as 0. */
  readonly leave: {
    readonly q25M: number;
    readonly medianM: number;
    readonly q75M: number;
    readonly q90M: number;
  };
  readonly chances: Chances;
  readonly strokes: number;
  readonly standardErrorStrokes: number;
  /** Strokes over the best option. */
  readonly costStrokes: number;
  /** Not to be told apart from the best by this many shots. */
  readonly level: boolean;
  readonly reasons: readonly Reason[];
}

export interface Plan {
  /** Hash of everything the plan depends on. */
  readonly key: string;
  readonly effort: Effort;
  readonly ballId: string;
  readonly flagId: string;
  readonly seed: number;
  /** Shots of each option in contention; the others have fewer, as their `finishCodes` tell. */
  readonly shotsPerOption: number;
  readonly distanceM: number;
  readonly ballCover: Cover;
  readonly lieAlongDeg: number;
  readonly lieAcrossDeg: number;
  /** Cheapest first. */
  readonly options: readonly PlanOption[];
  /** The recommendation: the simplest option within the player's margin of the best. */
  readonly chosenId: string;
  readonly safeId: string | null;
  /** The ground it depends on, as `packed` writes it; an early answer does without. */
  readonly readGround?: Uint8Array;
  /** Options left out and why, such as a technique that is not in the repertoire. */
  readonly leftOut: readonly { readonly id: string; readonly reason: Reason }[];
}
