import { planePoint } from '../../../shared/geometry/points.ts';
import type { PlanePoint } from '../../../shared/geometry/points.ts';
import { pointsEllipse } from '../../../shared/plate/finishEllipse.ts';
import type { PlanOption } from '../../../shared/planner/plan.ts';
import { generator } from '../../../shared/random/generator.ts';
import { coverCode } from '../../../shared/words/vocabulary.ts';
import { heightAt } from './complex.ts';

export const chipBall = planePoint(16.4, -4.2);
export const chipFlag = planePoint(-1, -0.6);

/** A chip as a plan would hold it, over the invented complex: made by hand, not simulated. */
export function chipOption(ball: PlanePoint = chipBall, flag: PlanePoint = chipFlag): PlanOption {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const distanceM = Math.hypot(east, north);
  const aimBearingDeg = (Math.atan2(east, north) * 180) / Math.PI + 2.6;
  const a = (aimBearingDeg * Math.PI) / 180;
  const carryM = distanceM * 0.33;
  const at = (d: number): PlanePoint => {
    const bend = d > carryM ? -0.0028 * (d - carryM) ** 2 : 0;
    return planePoint(
      ball.eastM + Math.sin(a) * d + Math.cos(a) * bend,
      ball.northM + Math.cos(a) * d - Math.sin(a) * bend,
    );
  };
  const points: number[] = [];
  const put = (d: number, above: number): void => {
    const p = at(d);
    points.push(p.eastM, p.northM, heightAt(p.eastM, p.northM) + above);
  };
  const arc = (from: number, to: number, apex: number, steps: number): void => {
    for (let i = 0; i < steps; i += 1)
      put(from + ((to - from) * i) / steps, apex * 4 * (i / steps) * (1 - i / steps));
  };
  arc(0, carryM, 1.05, 24);
  const touchdowns = [24, 32, 38];
  arc(carryM, carryM * 1.22, 0.16, 8);
  arc(carryM * 1.22, carryM * 1.34, 0.05, 6);
  for (let i = 0; i <= 30; i += 1) put(carryM * 1.34 + ((distanceM * 1.02 - carryM * 1.34) * i) / 30, 0);
  const random = generator(7);
  const finishes: number[] = [];
  const codes: number[] = [];
  const landings: number[] = [];
  for (let i = 0; i < 160; i += 1) {
    const long = distanceM * 1.01 + random.normal() * 1.5;
    const side = random.normal() * 0.6;
    const rest = at(long);
    finishes.push(rest.eastM + Math.cos(a) * side, rest.northM - Math.sin(a) * side);
    codes.push(i % 40 === 7 ? coverCode('heavyRough') : i % 53 === 4 ? 254 : coverCode('green'));
    const land = at(carryM + random.normal() * 0.45);
    landings.push(land.eastM + Math.cos(a) * side * 0.35, land.northM - Math.sin(a) * side * 0.35);
  }
  const finishesM = Float64Array.from(finishes);
  const ellipse = (sigmas: number) => {
    const e = pointsEllipse(finishesM, sigmas);
    if (e === null) throw new Error('no finishes');
    return e;
  };
  return {
    id: 'chip:w46',
    technique: 'chip',
    clubId: 'w46',
    clubName: '46° wedge',
    playAway: false,
    clubheadMps: 8,
    size: 'small',
    leanDeg: 5,
    faceOpenDeg: 0,
    aimBearingDeg,
    aimRightM: 0.9,
    landing: at(carryM),
    landingOnM: 1.8,
    carryM,
    runM: distanceM * 0.67,
    apexM: 1.05,
    runRiseM: 0.1,
    path: { pointsM: Float64Array.from(points), touchdowns, rollFrom: 38 },
    finishesM,
    finishCodes: Uint8Array.from(codes),
    landingsM: Float64Array.from(landings),
    ellipse50: ellipse(1.18),
    ellipse90: ellipse(2.15),
    leave: { q25M: 0.9, medianM: 1.7, q75M: 2.8, q90M: 4 },
    chances: {
      holed: 0.05,
      insideThreeFeet: 0.3,
      insideSixFeet: 0.6,
      upAndDown: 0.42,
      offGreen: 0.02,
      bunker: 0,
      penalty: 0,
      outOfBounds: 0,
      obstructed: 0,
      neverStops: 0,
      trouble: 0.02,
    },
    strokes: 2.62,
    standardErrorStrokes: 0.01,
    costStrokes: 0,
    level: false,
    reasons: [],
  };
}
