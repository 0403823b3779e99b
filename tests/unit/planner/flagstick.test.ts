import { expect, it } from 'vitest';
import { putRecords } from '../../../shared/atlas/edits.ts';
import { findRecord } from '../../../shared/atlas/document.ts';
import type { AtlasDocument, ConditionsRecord } from '../../../shared/atlas/records.ts';
import type { PlanOption } from '../../../shared/planner/plan.ts';
import { buildScene, sceneKey } from '../../../shared/planner/scene.ts';
import { tryShotSteps } from '../../../shared/planner/tryShot.ts';
import { complexDocument } from './complex.ts';

const document = complexDocument({
  flags: [{ id: 'A', at: [0, -2] }],
  balls: [{ id: 'b', at: [0, -16] }],
});

function onDay(change: Partial<ConditionsRecord>): AtlasDocument {
  const day = findRecord(document, 'conditions', 'day');
  if (day === undefined) throw new Error('there is a day');
  return putRecords('changed the day', [{ ...day, ...change }]).apply(document);
}

/** A chip landed 4 m on that would stop some three metres past: the same strikes whatever stands in the hole. */
function firmChip(day: AtlasDocument): PlanOption {
  const steps = tryShotSteps(buildScene(day, 'h1'), {
    ...{ ballId: 'b', flagId: 'A', shots: 4096, seed: 1, level: { kind: 'tour' } },
    ...{ technique: 'chip', clubId: 'w46', advisedId: 'chip:w46' },
    ...{ landing: { eastM: 0, northM: -12 }, sizeFactor: 1.15, aimShiftM: 0 },
  });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value.tried;
}

it('drops more firm chips with the flagstick left in', () => {
  const out = firmChip(document);
  const left = firmChip(onDay({ flagstickIn: true }));
  expect(left.clubheadMps).toBe(out.clubheadMps);
  expect(out.chances.holed).toBeGreaterThan(0.005);
  expect(left.chances.holed).toBeGreaterThan(1.3 * out.chances.holed);
  expect(left.strokes).toBeLessThan(out.strokes);
});

it('is another day with the flagstick in or other air, and the same one with what goes without saying', () => {
  const key = sceneKey(document, 'h1');
  expect(sceneKey(onDay({ flagstickIn: false }), 'h1')).toBe(key);
  const others = [
    { flagstickIn: true },
    { heightAboveSeaM: 0 },
    { heightAboveSeaM: 1600 },
    { temperatureC: 15 },
  ].map((change) => sceneKey(onDay(change), 'h1'));
  expect(new Set([key, ...others]).size).toBe(5);
});
