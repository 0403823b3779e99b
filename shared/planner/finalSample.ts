import { slots } from '../ball/slots.ts';
import { length2 } from '../numeric/elementary.ts';
import type { Candidate } from '../player/availability.ts';
import { coverCode } from '../words/vocabulary.ts';
import { type outOfContention, partsOfSample } from './contention.ts';
import {
  CODE,
  CODE_HOLED,
  CODE_LOST,
  isLost,
  LAND_EAST,
  LAND_NORTH,
  REST_EAST,
  REST_NORTH,
  type Shooter,
} from './shooter.ts';
import type { Situation } from './situation.ts';
import type { Aim } from './solveAim.ts';
import { DRAWS_PER_SHOT } from './standardShots.ts';
import { strokesOf, withReplays } from './trial.ts';
import { type Struck, whatWasStruck } from './whatWasStruck.ts';

/** What is to be shot. */
export interface OptionAim {
  readonly candidate: Candidate;
  readonly shooter: Shooter;
  readonly aim: Aim;
  /** How far from its target a perfect strike ends. */
  readonly missM: number;
}

/** How many of the shots came to what. */
export interface Counts {
  lost: number;
  holed: number;
  insideThreeFeet: number;
  insideSixFeet: number;
  offGreen: number;
  bunker: number;
  penalty: number;
  outOfBounds: number;
  obstructed: number;
  neverStops: number;
  trouble: number;
}

/** The final shots of one option, shot in parts, and what came of them so far. */
export interface FinalSample {
  readonly of: OptionAim;
  readonly shots: number;
  /** Of the shots so far, in their order; the arrays have room for all. */
  readonly finishesM: Float64Array;
  readonly finishCodes: Uint8Array;
  /** Empty for a putt. */
  readonly landingsM: Float64Array;
  /** Strokes of each shot, NaN for a lost one. */
  readonly perShot: Float64Array;
  readonly leavesM: Float64Array;
  readonly counts: Readonly<Counts>;
  /** Of up and down, summed. */
  readonly chancesOfTwo: number;
  readonly struckCounts: ReadonlyMap<Struck, number>;
  /** Mean, a lost shot counted with its replay. */
  strokes(): number;
  /**
   * Shoots on to so many of the situation's final shots.
   * @param outOfIt told the strokes and the share in trouble after a part of the sample: whether that will do for good
   */
  shootTo(until: number, outOfIt?: ReturnType<typeof outOfContention>): void;
}

export const THREE_FEET_M = 0.9144;
const BUNKER = coverCode('bunker');
const GREEN = coverCode('green');
const PENALTY = coverCode('penaltyArea');
const OUT = coverCode('outOfBounds');
const HEAVY = coverCode('heavyRough');
/** Chance to hole out in two from off the green: a chip-in, where no putt is left. Assumed. */
const CHIP_IN = 0.03;

export function finalSample(situation: Situation, of: OptionAim): FinalSample {
  const { scene, tools, flag, finalShots } = situation;
  const { map, field } = tools;
  const { shooter, aim } = of;
  const { out } = shooter;
  const most = finalShots.length / DRAWS_PER_SHOT;
  const roll = of.candidate.technique === 'putt';
  const finishesM = new Float64Array(2 * most);
  const finishCodes = new Uint8Array(most);
  const landingsM = new Float64Array(roll ? 0 : 2 * most);
  const perShot = new Float64Array(most);
  const leavesM = new Float64Array(most);
  const counts: Counts = {
    lost: 0,
    holed: 0,
    insideThreeFeet: 0,
    insideSixFeet: 0,
    offGreen: 0,
    bunker: 0,
    penalty: 0,
    outOfBounds: 0,
    obstructed: 0,
    neverStops: 0,
    trouble: 0,
  };
  const struckCounts = new Map<Struck, number>();
  let shots = 0;
  let sum = 0;
  let two = 0;
  let parts = 0;
  let enough = false;
  shooter.perfect(aim.clubheadMps, aim.bearing);
  const metAsMeant = out[slots.obstructed] ?? 0;

  const shoot = (i: number): void => {
    shooter.struck(aim.clubheadMps, aim.bearing, finalShots, i);
    const code = out[CODE] ?? 0;
    const east = out[REST_EAST] ?? 0;
    const north = out[REST_NORTH] ?? 0;
    finishesM[2 * i] = east;
    finishesM[2 * i + 1] = north;
    finishCodes[i] = code;
    if (!roll) {
      landingsM[2 * i] = out[LAND_EAST] ?? 0;
      landingsM[2 * i + 1] = out[LAND_NORTH] ?? 0;
    }
    const left = code === CODE_HOLED ? 0 : length2(east - flag.eastM, north - flag.northM);
    leavesM[i] = left;
    const lost = isLost(code);
    const strokes = lost ? NaN : strokesOf(shooter, field, code);
    perShot[i] = strokes;
    if (lost) counts.lost += 1;
    else sum += strokes;
    if (code === CODE_HOLED) counts.holed += 1;
    if (left <= THREE_FEET_M) counts.insideThreeFeet += 1;
    if (left <= 2 * THREE_FEET_M) counts.insideSixFeet += 1;
    two += code === CODE_HOLED ? 1 : code === GREEN ? map.makeAt(east, north) : lost ? 0 : CHIP_IN;
    if (code !== GREEN && code !== CODE_HOLED) counts.offGreen += 1;
    if (code === BUNKER) counts.bunker += 1;
    if (code === PENALTY) counts.penalty += 1;
    if (code === CODE_LOST) counts.neverStops += 1;
    if (code === OUT) counts.outOfBounds += 1;
    const struck = whatWasStruck(
      scene.ground,
      out[slots.obstructed] ?? 0,
      metAsMeant,
      out[LAND_EAST] ?? 0,
      out[LAND_NORTH] ?? 0,
    );
    if (struck !== null) {
      counts.obstructed += 1;
      struckCounts.set(struck, (struckCounts.get(struck) ?? 0) + 1);
    }
    if (struck !== null || code === BUNKER || lost || code === HEAVY) counts.trouble += 1;
  };
  const strokes = (): number => withReplays(sum, shots, counts.lost);
  return {
    of,
    get shots() {
      return shots;
    },
    finishesM,
    finishCodes,
    landingsM,
    perShot,
    leavesM,
    counts,
    get chancesOfTwo() {
      return two;
    },
    struckCounts,
    strokes,
    shootTo(until, outOfIt) {
      while (shots < Math.min(until, most) && !enough) {
        const part = partsOfSample[parts];
        if (shots === part?.shots) {
          parts += 1;
          enough = outOfIt?.(part, strokes(), counts.trouble / shots) === true;
          if (enough) return;
        }
        shoot(shots);
        shots += 1;
      }
    },
  };
}
