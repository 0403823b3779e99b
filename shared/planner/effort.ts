import type { ChanceRules } from './makeChance.ts';
import type { PathSteps } from './puttPath.ts';

/**
 * How thorough a plan is. `rough` follows a moving hand and answers what-ifs; `coarse` is the part of the full answer that
 * settles the choice, without the options far behind and without the safe way out; `full` is the firm one.
 */
export type Effort = 'rough' | 'coarse' | 'full';

/** How much work goes into a plan. */
export interface EffortRules {
  /** Shots of the first look at every option, as solved. */
  readonly lookShots: number;
  /** An option this far behind after it is not moved about among the others. */
  readonly walkWithinStrokes: number;
  /** Shots, spread wider, that tell of a better aim. */
  readonly walkShots: number;
  /**
   * Those this close after the walk, and this close still after so many shots more of the same aim, are settled by as many
   * again, spread wider; 0 for none.
   */
  readonly settleWithinStrokes: number;
  readonly settleStillWithinStrokes: number;
  readonly settleShots: number;
  /** The options further behind are worked out as well. */
  readonly keepsAll: boolean;
  /** Final shots of an option at most. */
  readonly mostFinalShots: number;
  /** The safe way out is looked for even where the options leave nothing to be desired. */
  readonly seeksSafety: boolean;
}

const thorough = {
  lookShots: 32,
  walkWithinStrokes: 0.3,
  walkShots: 32,
  settleWithinStrokes: 0.15,
  settleStillWithinStrokes: 0.12,
  settleShots: 64,
  mostFinalShots: Infinity,
} as const;

export const effortRules: Readonly<Record<Effort, EffortRules>> = {
  rough: {
    lookShots: 16,
    walkWithinStrokes: 0.3,
    walkShots: 16,
    settleWithinStrokes: 0,
    settleStillWithinStrokes: 0,
    settleShots: 0,
    keepsAll: false,
    mostFinalShots: 128,
    seeksSafety: false,
  },
  coarse: { ...thorough, keepsAll: false, seeksSafety: false },
  full: { ...thorough, keepsAll: true, seeksSafety: true },
};

/**
 * How fine a map of the green is: spokes, every how manieth ring, putts from each node, backward paths from the hole, and
 * how closely these are followed and the chance of each putt worked out (the finest unless said otherwise).
 */
export interface MapRules {
  readonly spokes: number;
  readonly ringStep: number;
  readonly puttsPerNode: number;
  readonly directions: number;
  readonly lineSteps?: PathSteps;
  readonly chance?: ChanceRules;
}

/** `light` is for a flag that moves under the hand, with what misses cost from a table; see `flagToolsSteps`. */
export type MapGrade = 'light' | 'coarse' | 'full';

export const mapRules: Readonly<Record<MapGrade, MapRules>> = {
  light: {
    spokes: 12,
    ringStep: 3,
    puttsPerNode: 4,
    directions: 36,
    lineSteps: { nearM: 0.025, farM: 0.15 },
    chance: { paces: 3, steps: { nearM: 0.06, farM: 0.3 } },
  },
  coarse: { spokes: 16, ringStep: 2, puttsPerNode: 16, directions: 120 },
  full: { spokes: 32, ringStep: 1, puttsPerNode: 32, directions: 360 },
};
