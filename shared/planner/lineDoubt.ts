import type { PlanePoint } from '../geometry/points.ts';
import { normalDensity, normalQuantile } from '../numeric/normal.ts';
import { HOLE_RADIUS_M } from '../ball/constants.ts';
import { rollingFromStimp } from '../ball/coverPhysics.ts';
import { exp, length2 } from '../numeric/elementary.ts';
import { baselinePutts } from '../player/baseline.ts';
import type { AtStake } from '../terrain/measureNext.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { GreenMap } from './greenMap.ts';
import type { Plan, PlanOption } from './plan.ts';
import { SLOPE_PULL_MPS2 } from '../ball/constants.ts';
import type { Scene } from './scene.ts';

/** A slope across the line is taken over a pace, along the line at steps of no more than this: metres. */
const ACROSS_M = 1;
const STEP_M = 0.75;
/** How far past the hole a putt's pace would carry, metres: enough to say how fast it arrives. */
const PAST_M = 0.45;
/** Finishes and roll-outs of each option that stand for all of them. */
const PUTTS_EACH = 12;
const ROLLS_EACH = 8;
/** An option this much dearer than the best matters e times less. */
const CLOSE_STROKES = 0.05;
const GREEN = coverCode('green');

/**
 * How far a ball that rolls from one place towards another is turned aside by the ground, metres to its right, as a weighted
 * sum of heights: across a slope g it gains (5/7) g g dt sideways and keeps it for the time that is left, T = (v - end) / a.
 * Straight lines and one deceleration `a` (m/s^2); what the ground does to the pace is left out.
 *
 * @param pastM how far beyond `to` the ball would run on the level
 */
export function breakTerms(from: PlanePoint, to: PlanePoint, rollingMps2: number, pastM: number): number[] {
  const dx = to.eastM - from.eastM;
  const dy = to.northM - from.northM;
  const lengthM = length2(dx, dy);
  if (lengthM === 0) return [];
  const steps = Math.max(2, Math.ceil(lengthM / STEP_M));
  const end = Math.sqrt(2 * rollingMps2 * pastM);
  // The right-hand side of the line.
  const rightX = ((dy / lengthM) * ACROSS_M) / 2;
  const rightY = ((-dx / lengthM) * ACROSS_M) / 2;
  const terms: number[] = [];
  for (let i = 0; i < steps; i += 1) {
    const share = (i + 0.5) / steps;
    const speed = Math.sqrt(2 * rollingMps2 * (pastM + (1 - share) * lengthM));
    const pull = (SLOPE_PULL_MPS2 / rollingMps2) * ((speed - end) / speed) * (lengthM / steps);
    const x = from.eastM + share * dx;
    const y = from.northM + share * dy;
    // Ground that rises to the right turns the ball to the left.
    terms.push(x + rightX, y + rightY, -pull / ACROSS_M, x - rightX, y - rightY, pull / ACROSS_M);
  }
  return terms;
}

/** How much further a ball runs for the fall between two places, metres, as a weighted sum of their heights. */
export function runTerms(from: PlanePoint, to: PlanePoint, rollingMps2: number): number[] {
  const per = SLOPE_PULL_MPS2 / rollingMps2;
  return [from.eastM, from.northM, per, to.eastM, to.northM, -per];
}

/**
 * What of the ground a plan hangs on: the roll-outs of the shots that are close to the best and the putts that they leave,
 * each with what a square metre of its doubt costs in strokes.
 */
export function atStakeIn(scene: Scene, { options }: Plan, map: GreenMap, ball: PlanePoint): AtStake[] {
  const best = Math.min(...options.map(({ strokes }) => strokes));
  const shares = options.map(({ strokes }) => exp((best - strokes) / CLOSE_STROKES));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return options.flatMap((option, i) => ofOption(scene, option, (shares[i] ?? 0) / whole, map, ball));
}

function ofOption(
  { conditions, player }: Scene,
  option: PlanOption,
  share: number,
  map: GreenMap,
  ball: PlanePoint,
): AtStake[] {
  const rolling = rollingFromStimp(conditions.stimpFt);
  const { finishesM, finishCodes, landingsM } = option;
  const place = (flat: Float64Array, i: number): PlanePoint => ({
    eastM: flat[2 * i] ?? NaN,
    northM: flat[2 * i + 1] ?? NaN,
  });
  const putt = (from: PlanePoint, part: number): AtStake => ({
    terms: breakTerms(from, map.flag, rolling, PAST_M),
    at: halfway(from, map.flag),
    weight: part * lossPerSquare(map.makeAt(from.eastM, from.northM)),
  });
  if (option.technique === 'putt' && finishCodes.length > 0) {
    // A long putt is lagged: what is left of it depends on the fall of the ground too.
    const missed = perLeave(option, player.level);
    return [
      putt(ball, share),
      { terms: breakTerms(ball, map.flag, rolling, 0), at: halfway(ball, map.flag), weight: share * missed },
      { terms: runTerms(ball, map.flag, rolling), at: halfway(ball, map.flag), weight: share * missed },
      ...spread(finishCodes.length, PUTTS_EACH).flatMap((i) =>
        finishCodes[i] === GREEN ? [putt(place(finishesM, i), share / PUTTS_EACH)] : [],
      ),
    ];
  }
  const rolls = landingsM.length === 0 ? [] : spread(finishCodes.length, ROLLS_EACH);
  const perRoll = (share / ROLLS_EACH) * perLeave(option, player.level);
  return [
    ...rolls.flatMap((i): AtStake[] => {
      if (finishCodes[i] !== GREEN) return [];
      const from = place(landingsM, i);
      const to = place(finishesM, i);
      const at = halfway(from, to);
      return [
        { terms: breakTerms(from, to, rolling, 0), at, weight: perRoll },
        { terms: runTerms(from, to, rolling), at, weight: perRoll },
      ];
    }),
    ...spread(finishCodes.length, PUTTS_EACH).flatMap((i) =>
      finishCodes[i] === GREEN ? [putt(place(finishesM, i), share / PUTTS_EACH)] : [],
    ),
  ];
}

/**
 * Strokes that a square metre of variance in the line of a putt costs. With a hole of half-width R and a line spread s the
 * putt drops with P = 2 F(R / s) - 1, so half the curvature of P at its middle is z^3 f(z) / R^2 with z = R / s.
 */
function lossPerSquare(makeShare: number): number {
  const z = normalQuantile((1 + Math.min(0.999, Math.max(0, makeShare))) / 2);
  return (z * z * z * normalDensity(z)) / (HOLE_RADIUS_M * HOLE_RADIUS_M);
}

/** Strokes that a square metre of variance in where a ball stops costs: it adds d^2 / 2r to a leave of r. */
function perLeave({ leave }: PlanOption, level: Scene['player']['level']): number {
  const [near, far] = [0.6, 2.4];
  const perMetre = (baselinePutts(level, far) - baselinePutts(level, near)) / (far - near);
  return perMetre / (2 * Math.max(0.5, leave.medianM));
}

/** Numbers of so many things, evenly out of all. */
const spread = (all: number, wanted: number): number[] =>
  Array.from({ length: Math.min(all, wanted) }, (_, k) => Math.floor((k * all) / Math.min(all, wanted)));

const halfway = (a: PlanePoint, b: PlanePoint): PlanePoint => ({
  eastM: (a.eastM + b.eastM) / 2,
  northM: (a.northM + b.northM) / 2,
});
