/** A quick answer while something is dragged, or the firm one. */
export type Effort = 'coarse' | 'full';

/** How much work goes into a plan. */
export interface EffortRules {
  /** Shots of the first look at every option, and of the search among those that stay in the running. */
  readonly lookShots: number;
  readonly searchShots: number;
  /** Final shots of an option at most. */
  readonly mostFinalShots: number;
  /** The first look already moves the aim. */
  readonly looksAround: boolean;
  /** An option this far behind after the first look is not searched further; without `keepsAll`, left out. */
  readonly hopelessStrokes: number;
  readonly keepsAll: boolean;
  /** The safe way out is looked for even where the options leave nothing to be desired. */
  readonly seeksSafety: boolean;
  /** Map of the green: spokes, every how manieth ring, putts from each node, backward paths out of the hole. */
  readonly map: {
    readonly spokes: number;
    readonly ringStep: number;
    readonly puttsPerNode: number;
    readonly directions: number;
  };
}

export const effortRules: Readonly<Record<Effort, EffortRules>> = {
  coarse: {
    lookShots: 16,
    searchShots: 32,
    mostFinalShots: 128,
    looksAround: false,
    hopelessStrokes: 0.3,
    keepsAll: false,
    seeksSafety: false,
    map: { spokes: 16, ringStep: 2, puttsPerNode: 16, directions: 120 },
  },
  full: {
    lookShots: 32,
    searchShots: 64,
    mostFinalShots: Infinity,
    looksAround: true,
    hopelessStrokes: 0.15,
    keepsAll: true,
    seeksSafety: true,
    map: { spokes: 32, ringStep: 1, puttsPerNode: 32, directions: 360 },
  },
};
