import { expect, it } from 'vitest';
import { PlanCache } from '../../../renderer/store/planCache.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import type { Plan } from '../../../shared/planner/plan.ts';
import { prepareScene, type Scene } from '../../../shared/planner/scene.ts';
import { nothingRead, packed } from '../../../shared/terrain/groundReads.ts';
import { hermiteGrid } from '../../../shared/terrain/hermiteGrid.ts';
import { complexDocument } from '../planner/complex.ts';

const withSand = complexDocument({
  balls: [
    { id: 'a', at: [-2, -19] },
    { id: 'b', at: [-21, 3] },
  ],
});
const withRecord = ({ records }: AtlasDocument, record: AtlasRecord): AtlasDocument => ({
  records: new Map([...records, [record.id, record]]),
});
const recordOf = (id: string): AtlasRecord => {
  const record = withSand.records.get(id);
  if (record === undefined) throw new Error(`there is no ${id}`);
  return record;
};
const sand = recordOf('bunker');
if (sand.type !== 'area') throw new Error('a bunker is an area');
// A height was read on the sand, where an edge that moves is another height; on a bare patch it is not. Clear of the fringe.
const eastwards = sand.rings.map((ring) => ring.map(([lon, lat]) => lonLat(lon + 5e-5, lat)));
const patch = { ...sand, kind: 'bare', lipHeightM: null, rings: eastwards } as const;
const document = withRecord(withSand, patch);
const pairOf = (ballId: string) => ({ ballId, flagId: 'A' });

/** Ground as the worker would send it, level as it is. */
function fitted(plans: PlanCache, of: AtlasDocument): Scene {
  const prepared = prepareScene(of, 'h1');
  const { westM, southM, eastM, northM } = prepared.input.extent;
  const shape = { originEastM: westM, originNorthM: southM, cellM: 5, columns: 0, rows: 0 };
  const whole = { ...shape, columns: (eastM - westM) / 5 + 1, rows: (northM - southM) / 5 + 1 };
  const level = (): Float64Array => new Float64Array(whole.columns * whole.rows);
  const { nodes } = hermiteGrid(whole, level(), level(), level());
  const { groundKey, surfaceKey } = prepared;
  plans.grounds.keep({ groundKey, surfaceKey, shape: whole, nodes }, prepared);
  const { scene, ready } = plans.grounds.sceneNow(of, 'h1', null);
  expect(ready).toBe(true);
  return scene;
}

/** A plan that looked at the ground at one place only. */
function planFrom({ ground: { reads } }: Scene, eastM: number, northM: number): Plan {
  const looks = nothingRead(reads);
  const column = Math.floor((eastM - reads.westM) / reads.blockM);
  looks[Math.floor((northM - reads.southM) / reads.blockM) * reads.columns + column] = 1;
  // The cache looks at nothing else of it.
  return { readGround: packed(looks) } as Plan;
}

it('keeps the plans that an edit to the cover does not touch, and no other', () => {
  const plans = new PlanCache();
  const scene = fitted(plans, document);
  const [fromA, fromB] = [planFrom(scene, 0, 0), planFrom(scene, 19, -6)];
  plans.keep(scene, pairOf('a'), fromA);
  plans.keep(scene, pairOf('b'), fromB);

  // Without the patch that b looked at; the heights are the same, so no worker is waited for.
  const bare = plans.grounds.sceneNow(
    { records: new Map([...document.records].filter(([id]) => id !== 'bunker')) },
    'h1',
    scene,
  );
  expect(bare.ready).toBe(true);
  expect(plans.get(bare.scene, pairOf('a'))).toBe(fromA);
  expect(plans.get(bare.scene, pairOf('b'))).toBeUndefined();

  const renamed = plans.grounds.sceneNow(withRecord(document, { ...patch, name: 'The Kiln' }), 'h1', scene);
  expect(plans.get(renamed.scene, pairOf('b'))).toBe(fromB);

  const green = recordOf('green');
  if (green.type !== 'area') throw new Error('a green is an area');
  const smaller = { ...green, rings: green.rings.map((ring) => ring.slice(1)) };
  expect(plans.get(fitted(plans, withRecord(document, smaller)), pairOf('a'))).toBeUndefined();
});

it('keeps no plan while the heights of another ground are still to come, nor after', () => {
  const plans = new PlanCache();
  const scene = fitted(plans, document);
  plans.keep(scene, pairOf('a'), planFrom(scene, 0, 0));
  const height = recordOf('h0/0');
  if (height.type !== 'spotHeight') throw new Error('it is a height');
  const raised = withRecord(document, { ...height, heightM: 0.2 });
  const waiting = plans.grounds.sceneNow(raised, 'h1', scene);
  expect(waiting.ready).toBe(false);
  expect(plans.get(waiting.scene, pairOf('a'))).toBeUndefined();
  expect(plans.get(fitted(plans, raised), pairOf('a'))).toBeUndefined();
});
