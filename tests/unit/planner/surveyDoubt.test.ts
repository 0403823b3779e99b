import { describe, expect, it } from 'vitest';
import { osselDown } from '../../../sample-course/make.ts';
import { pointInPolygon } from '../../../shared/geometry/ring.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
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
  const { answer, shares } = finished(3);

  it('says how often the choice holds and what each option costs', () => {
    expect(answer.surfaces).toBe(3);
    expect(answer.options.reduce((sum, { chosen }) => sum + chosen, 0)).toBeCloseTo(1, 12);
    expect(answer.options.find(({ id }) => id === answer.chosenId)?.chosen ?? 0).toBe(answer.holds);
    const inAll = answer.options.filter(({ inRunning }) => inRunning === 1);
    expect(inAll.length).toBeGreaterThan(0);
    for (const { strokes, spreadStrokes } of inAll) {
      expect(strokes).toBeGreaterThan(1.5);
      // The surfaces differ, so the strokes do; centimetres on a green move them by little.
      expect(spreadStrokes).toBeGreaterThan(0);
      expect(spreadStrokes).toBeLessThan(0.3);
    }
  });

  it('names a spot on the green where a reading takes some of the doubt away', () => {
    const { measureHere } = answer;
    if (measureHere === null) throw new Error('no spot');
    expect(pointInPolygon(measureHere.at, scene.green.polygon)).toBe(true);
    expect(measureHere.reduction).toBeGreaterThan(0);
    expect(measureHere.reduction).toBeLessThanOrEqual(1);
  });

  it('tells its progress and comes out the same again', () => {
    expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share <= 1)).toBe(true);
    expect(finished(3).answer).toEqual(answer);
  });
});
