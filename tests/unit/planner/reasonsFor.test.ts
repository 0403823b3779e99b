import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { buildScene } from '../../../shared/planner/scene.ts';

const text = readFileSync(new URL('../../../sample-course/ossel-down.geojson', import.meta.url), 'utf8');
const document = readAtlasFile(text, 'ossel-down.geojson');

/** The firm answer from one ball of each hole (its place in the list), the quick one from every other ball. */
it.each([
  ['h2', 1],
  ['h4', 3],
  ['h7', 5],
] as const)('gives every option two reasons or more, chosen and rejected, on %s', (holeId, firm) => {
  const scene = buildScene(document, holeId);
  const flagId = scene.flags[0]?.record.id ?? '';
  let options = 0;
  for (const [k, { record }] of scene.balls.entries()) {
    if (k % 2 === 0 && k !== firm) continue;
    const effort = k === firm ? 'full' : 'coarse';
    const plan = planBall(scene, { ballId: record.id, flagId, shotsPerOption: 32, seed: 1, effort });
    expect(plan.options.some(({ id }) => id === plan.chosenId)).toBe(true);
    for (const option of plan.options) {
      const said = option.reasons.map((reason) => reasonText(reason, { system: 'yards', paceM: 0.9 }));
      expect(new Set(said).size, `${record.label} ${option.id}`).toBeGreaterThanOrEqual(2);
      expect(said.join(' ')).not.toMatch(/NaN|undefined|\{/);
      options += 1;
    }
  }
  expect(options).toBeGreaterThan(8);
});
