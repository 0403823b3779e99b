import {
  aimAt,
  type Improved,
  mean,
  NOTHING,
  shoot,
  stepsOf,
  type Tally,
  type Trials,
  withReplays,
} from './trial.ts';

/**
 * Settles an aim found by the walk, with more shots: the foot of a parabola through three trials along the line, then of
 * one through three aside. Three trials far apart say more of where the least lies than a chain of small steps does, each
 * of which luck may turn. A move must show its gain in the sample; one aside more than luck would (`plainlyBetter`), since a
 * sample of level ground leans to one side or the other too.
 */
export function settleAim(trials: Trials, count: number, begun: Improved): Improved {
  const { shooter, field, shots } = trials;
  const tried = (beyondM: number, rightM: number, known = NOTHING): Improved => {
    const aim = aimAt(trials, beyondM, rightM);
    const tally = shoot(shooter, field, aim, shots, known, count);
    return { aim, strokes: mean(tally), beyondM, rightM, tally };
  };
  const better = (a: Improved, b: Improved): Improved => (b.strokes < a.strokes ? b : a);
  let best = tried(begun.beyondM, begun.rightM, begun.tally);
  // The walk may have been led away by its few shots.
  if (best.rightM !== 0) {
    const straight = tried(best.beyondM, 0);
    if (!plainlyBetter(best, straight)) best = straight;
  }
  if (best.beyondM !== 0 || best.rightM !== 0) best = better(best, tried(0, 0));

  const { alongM, asideM } = stepsOf(trials);
  const { beyondM, rightM } = best;
  // What lies to both sides is told by half of the shots; only where the foot is is tried with all.
  const half = count >> 1;
  const beside = (byBeyondM: number, byRightM: number): Improved => {
    const aim = aimAt(trials, best.beyondM + byBeyondM, best.rightM + byRightM);
    const tally = shoot(shooter, field, aim, shots, NOTHING, half);
    return {
      aim,
      strokes: mean(tally),
      beyondM: best.beyondM + byBeyondM,
      rightM: best.rightM + byRightM,
      tally,
    };
  };
  const shorter = beside(-alongM, 0);
  const longer = beside(alongM, 0);
  const here = meanOfFirst(best.tally, half);
  const foot = footOfParabola(shorter.strokes, here, longer.strokes, alongM, 1.5 * alongM);
  for (const side of [shorter, longer])
    if (side.strokes < here) best = better(best, tried(side.beyondM, side.rightM, side.tally));
  if (foot !== 0 && Math.abs(foot) !== alongM) best = better(best, tried(beyondM + foot, rightM));

  const left = beside(0, -asideM);
  const right = beside(0, asideM);
  const aside = footOfParabola(left.strokes, meanOfFirst(best.tally, half), right.strokes, asideM, asideM);
  if (aside === 0) return best;
  const turned = tried(best.beyondM, rightM + aside);
  return plainlyBetter(turned, best) ? turned : best;
}

/** Mean strokes of the first shots of a tally. */
function meanOfFirst({ each }: Tally, count: number): number {
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < count; i += 1) {
    const strokes = each[i] ?? NaN;
    if (strokes === strokes) sum += strokes;
    else lost += 1;
  }
  return withReplays(sum, count, lost);
}

/**
 * A move aside must save so many standard errors of the difference shot by shot. So none of 24 seeds turns a putt of 10 m
 * on level ground (at one error 3 do), and 22 turn it from ground half a metre aside that costs a stroke.
 */
const BEYOND_LUCK = 1.5;

function plainlyBetter(a: Improved, b: Improved): boolean {
  const of = ({ tally, strokes }: Improved, shot: number): number => {
    const own = tally.each[shot] ?? NaN;
    return own === own ? own : 2 + strokes;
  };
  const gain = b.strokes - a.strokes;
  const { shots } = a.tally;
  let squares = 0;
  for (let i = 0; i < shots; i += 1) {
    const off = of(b, i) - of(a, i) - gain;
    squares += off * off;
  }
  return gain > (BEYOND_LUCK * Math.sqrt(squares)) / shots;
}

/** Where a parabola through values at -h, 0 and h is least, within the limit; where it has no least, the best of the three. */
function footOfParabola(before: number, here: number, after: number, h: number, limit: number): number {
  const bend = before - 2 * here + after;
  if (bend <= 1e-9) return Math.min(before, after) >= here ? 0 : before < after ? -h : h;
  return Math.max(-limit, Math.min(limit, (0.5 * h * (before - after)) / bend));
}
