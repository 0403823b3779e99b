import { describe, expect, it } from 'vitest';
import { osselDown } from '../../../sample-course/make.ts';
import { insideDistanceM } from '../../../shared/geometry/ring.ts';
import { breakTerms, runTerms } from '../../../shared/planner/lineDoubt.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { type LineAsked, sureLinesSteps } from '../../../shared/planner/sureLine.ts';
import { type SurveyDoubt, surveyDoubtSteps } from '../../../shared/planner/surveyDoubt.ts';

const scene = buildScene(osselDown(), 'h4');
const request = { ballId: 'h4-ball-1', flagId: 'h4-flag-a', shotsPerOption: 64, seed: 3 };

function finished(surfaces: number): { readonly answer: SurveyDoubt; readonly shares: readonly number[] } {
  const steps = surveyDoubtSteps(scene, request, surfaces);
  const shares: number[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { answer: step.value, shares };
    shares.push(step.value);
  }
}

describe('the doubt that the survey leaves in a plan', () => {
  const { answer, shares } = finished(2);

  it('says on how many surfaces the choice holds and how sure each line is', () => {
    expect(answer.surfaces).toBe(2);
    expect(answer.holds / 2).toBe(answer.options.find(({ id }) => id === answer.chosenId)?.chosen ?? 0);
    expect(answer.options.length).toBeGreaterThan(1);
    for (const { aimSdM, alongSdM, asideSdM, strokesSd } of answer.options) {
      // The surfaces differ, so the lines do; centimetres on a green move them by a step or two.
      for (const doubt of [aimSdM, alongSdM, asideSdM, strokesSd]) expect(doubt).toBeGreaterThan(0);
      expect(aimSdM).toBeLessThan(1.5);
      expect(alongSdM).toBeLessThan(2);
      expect(strokesSd).toBeLessThan(0.3);
    }
  });

  it('names three spots about the green', () => {
    const { measureNext } = answer;
    expect(new Set(measureNext.map(({ at }) => `${String(at.eastM)} ${String(at.northM)}`)).size).toBe(3);
    for (const { at, reduction } of measureNext) {
      expect(insideDistanceM(at, scene.green.polygon)).toBeGreaterThan(-1.5);
      expect(reduction).toBeGreaterThan(0);
    }
    expect(measureNext.reduce((sum, { reduction }) => sum + reduction, 0)).toBeLessThan(1);
  });

  it('knows how sure a line is without planning anew, about as the plans have it', () => {
    const { chosenId, options } = answer;
    const [technique, clubId] = chosenId.split(':');
    if (technique === undefined || clubId === undefined) throw new Error('nothing chosen');
    const option = { id: chosenId, technique, clubId, landing: null, playAway: false } as LineAsked['option'];
    const steps = sureLinesSteps(scene, [
      { flagId: request.flagId, lines: [{ ballId: request.ballId, option }] },
    ]);
    const told: number[] = [];
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) told.push(step.value);
    expect(told.at(-1)).toBe(1);
    const [line] = step.value[0]?.lines ?? [];
    const ratio = (line?.aimSdM ?? NaN) / (options.find(({ id }) => id === chosenId)?.aimSdM ?? NaN);
    // Eight surfaces of one draw against two of another: a factor of some threes either way.
    expect(ratio).toBeGreaterThan(1 / 4);
    expect(ratio).toBeLessThan(4);
  });

  it('tells its progress and comes out the same again', () => {
    expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share <= 1)).toBe(true);
    expect(finished(2).answer).toEqual(answer);
  });
});

describe('what a line takes from the ground', () => {
  const sumOver = (terms: readonly number[], height: (x: number, y: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < terms.length; i += 3)
      sum += (terms[i + 2] ?? NaN) * height(terms[i] ?? NaN, terms[i + 1] ?? NaN);
    return sum;
  };
  const from = { eastM: 3, northM: 1 };
  const hole = { eastM: 3, northM: 7 };

  it('is turned downhill by the slope across it, and by nothing else', () => {
    const terms = breakTerms(from, hole, 0.55, 0.45);
    expect(sumOver(terms, () => 4.2)).toBeCloseTo(0, 9);
    expect(sumOver(terms, (_, y) => 0.03 * y)).toBeCloseTo(0, 9);
    // Rising to the right by 1 %: to the left. The closed form of a putt of length D with end speed u, start speed v:
    // lateral speed gained at the rate (5/7) g s over a time (v - u)/a, so half of that rate times the time squared.
    const time = (Math.sqrt(2 * 0.55 * 6.45) - Math.sqrt(2 * 0.55 * 0.45)) / 0.55;
    const expected = -0.5 * (5 / 7) * 9.80665 * 0.01 * time * time;
    const ours = sumOver(terms, (x) => 0.01 * x);
    expect(ours / expected).toBeGreaterThan(0.99);
    expect(ours / expected).toBeLessThan(1.01);
  });

  it('runs further for the fall between its ends', () => {
    expect(sumOver(runTerms(from, hole, 0.55), (_, y) => -0.01 * y)).toBeCloseTo(
      ((5 / 7) * 9.80665 * 0.06) / 0.55,
      9,
    );
  });
});
