import type { Cover, LieQuality, Moisture } from '../words/vocabulary.ts';

/** The day's numbers the ball model needs. */
export interface Conditions {
  /** Green speed by Stimpmeter on the level, feet. */
  readonly stimpFt: number;
  /** 0 soft to 1 firm. */
  readonly firmness: number;
  readonly moisture: Moisture;
  readonly windMps: number;
  /** True bearing the wind blows from, degrees. */
  readonly windFromDeg: number;
  /** The flagstick stays in the hole, for a putt too (Rule 13.2); else it is out. An approximation: see `meetHole`. */
  readonly flagstickIn?: boolean;
  /** What is known of the air; standard air where both are left out: see `airOf`. */
  readonly heightAboveSeaM?: number;
  readonly temperatureC?: number;
}

/** How the club meets the ball, before the lie has its say. */
export interface Strike {
  readonly clubKind: 'putter' | 'lofted';
  /** Loft printed on the club, degrees. */
  readonly loftDeg: number;
  readonly bounceDeg: number;
  /** Hands ahead of the ball: takes loft off degree for degree. */
  readonly leanDeg: number;
  /** Clubhead path in the vertical plane, degrees; negative is downward. */
  readonly attackDeg: number;
  /** Face opened before gripping, degrees. */
  readonly faceOpenDeg: number;
  /**
   * In sand only: the club meets the ball before the sand, as a long bunker shot is struck. Left out or false, it
   * enters behind the ball and throws it out on a cushion of sand.
   */
  readonly ballFirst?: boolean;
  readonly clubheadMps: number;
  /**
   * Line of the swing, true bearing, degrees. A square face on a level lie starts the ball along it; an opened face or
   * a sidehill lie turns the launch away from it by an angle that does not depend on the bearing.
   */
  readonly bearingDeg: number;
  /** Mirror the sideways effects for a left-handed player. */
  readonly handed: 'right' | 'left';
}

/** Where the ball lies when it is struck. */
export interface Lie {
  readonly cover: Cover;
  readonly quality: LieQuality;
  /** Slope of the ground along the line of play, degrees, uphill positive. */
  readonly alongDeg: number;
  /** Slope across it, degrees, positive where the ball is above the feet. */
  readonly acrossDeg: number;
}

/** The ball as it leaves the clubface or a hand. */
export interface Launch {
  readonly speedMps: number;
  /** Above the horizontal plane (not the local ground), degrees. */
  readonly elevationDeg: number;
  readonly bearingDeg: number;
  readonly backspinRpm: number;
  /** Sideways tilt of the spin axis, degrees, positive curves the ball right. */
  readonly spinAxisDeg: number;
}

export const outcomes = ['atRest', 'holed', 'penaltyArea', 'outOfBounds', 'stillRolling'] as const;
export type Outcome = (typeof outcomes)[number];

/** One simulated shot, as the page and the command line read it. */
export interface ShotResult {
  readonly launch: Launch;
  readonly outcome: Outcome;
  /** Horizontal distance from the start to the first landing; 0 for a roll. */
  readonly carryM: number;
  readonly landing: { readonly eastM: number; readonly northM: number };
  /** Height of the top of the flight above the start. */
  readonly apexM: number;
  readonly bounces: number;
  /** Horizontal distance from the first landing to the rest point. */
  readonly runM: number;
  readonly rest: { readonly eastM: number; readonly northM: number };
  /** Straight horizontal distance from start to rest. */
  readonly totalM: number;
  readonly restCover: Cover;
  /** Hit a crown or wall, or came down short on a face, on the way. */
  readonly struckObstacle: boolean;
}
