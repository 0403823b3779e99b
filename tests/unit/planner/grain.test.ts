import { expect, it } from 'vitest';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { placeAtlas } from '../../../shared/atlas/moving.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import { flagToolsSteps } from '../../../shared/planner/flagTools.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { buildScene, type Scene } from '../../../shared/planner/scene.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { writeAtlasFile } from '../../../shared/formats/writeAtlasFile.ts';
import { groundChange } from '../../../shared/terrain/groundChange.ts';
import { complexDocument } from './complex.ts';

const spec = { flags: [{ id: 'A', at: [0, 3] as const }], balls: [{ id: 'b', at: [0, -3] as const }] };
const grained = (towardsDeg: number | null): AtlasDocument => {
  const document = complexDocument(spec);
  const green = document.records.get('green');
  if (green?.type !== 'area') throw new Error('the green is an area');
  return towardsDeg === null
    ? document
    : {
        records: new Map([
          ...document.records,
          ['green', { ...green, grain: { towardsDeg, strength: 'strong' } }],
        ]),
      };
};
const sceneOf = (towardsDeg: number | null): Scene => buildScene(grained(towardsDeg), 'h1');
const usual = { system: 'metres', paceM: 1 } as const;

/** The putt of 6 m northwards on level ground: pace, metres aimed to the right of the flag, and what it says of grain. */
function putt(towardsDeg: number | null) {
  const scene = sceneOf(towardsDeg);
  const plan = planBall(scene, { ballId: 'b', flagId: 'A', shotsPerOption: 64, seed: 3 });
  const option = plan.options.find(({ technique }) => technique === 'putt');
  if (option === undefined) throw new Error('nobody putts here');
  const told = option.reasons
    .filter(({ kind }) => kind === 'grain')
    .map((reason) => reasonText(reason, usual));
  return { clubheadMps: option.clubheadMps, aimRightM: option.aimRightM, told };
}

it('is putted with more pace against, less with, and across it on a line that the map of the green knows', () => {
  const [none, against, along, across] = [putt(null), putt(180), putt(0), putt(90)];
  expect(none.told).toEqual([]);
  expect(against.clubheadMps).toBeGreaterThan(1.02 * none.clubheadMps);
  expect(along.clubheadMps).toBeLessThan(0.98 * none.clubheadMps);
  expect(across.aimRightM).toBeLessThan(none.aimRightM - 0.1);
  expect([against.told, along.told, across.told]).toEqual([
    ['It rolls into the grain: the ball stops sooner.'],
    ['It rolls with the grain: the ball runs on.'],
    ['The grain takes it to the right as it slows.'],
  ]);
});

it('leaves a putt its chance on the line that allows for it', () => {
  const chanceOf = (scene: Scene): number => {
    const steps = flagToolsSteps(scene, { eastM: 0, northM: 3 }, 'coarse');
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value.map.makeAt(0, 0);
    }
  };
  expect(Math.abs(chanceOf(sceneOf(90)) - chanceOf(sceneOf(null)))).toBeLessThan(0.03);
});

it('belongs to the ground of a plan, not to the fit, and goes with the file', () => {
  const [plain, leaning] = [sceneOf(null), sceneOf(45)];
  expect(leaning.surfaceKey).toBe(plain.surfaceKey);
  expect(leaning.groundKey).not.toBe(plain.groundKey);
  const onOneFit = buildScene(grained(45), 'h1', plain);
  expect(onOneFit.surface).toBe(plain.surface);
  expect(groundChange(plain, onOneFit)).toBeNull();
  expect(groundChange(plain, { ...plain })).not.toBeNull();
});

it('goes with the file and turns with the sheet', () => {
  const { records } = grained(45);
  // Names of the fixture's heights are no names for a file.
  const document = { records: new Map([...records].filter(([, { type }]) => type !== 'spotHeight')) };
  const back = readAtlasFile(writeAtlasFile(document), 'grain.geojson');
  expect(back.records.get('green')).toMatchObject({ grain: { towardsDeg: 45, strength: 'strong' } });
  const set = placeAtlas('set down', lonLat(-2.8, 56.3), 330).apply(back);
  expect(set.records.get('green')).toMatchObject({ grain: { towardsDeg: 15 } });
});
