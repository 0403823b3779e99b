import { describe, expect, it } from 'vitest';
import { shotSimulator } from '../../../shared/ball/simulator.ts';
import { SLOT_COUNT, slots } from '../../../shared/ball/slots.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../../shared/planner/scene.ts';
import { surroundsMapSteps } from '../../../shared/planner/surroundsMap.ts';
import { switchPointsSteps, tilted } from '../../../shared/planner/switchPoints.ts';
import { techniques } from '../../../shared/words/vocabulary.ts';
import { club, complexDocument } from './complex.ts';

function finish<T>(steps: Generator<number, T>): { value: T; progress: number[] } {
  const progress: number[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { value: step.value, progress };
    progress.push(step.value);
  }
}

const putter = club('pt', 'putter', 'putter', 3, 0);
const iron9 = club('i9', 'iron', '9-iron', 41, 5);
const wedge46 = club('w46', 'wedge', '46° wedge', 46, 8);
const heightM = (e: number, n: number): number => 0.02 * n + 0.0002 * e * e;
const flags = [
  { id: 'A', at: [3, 4] },
  { id: 'B', at: [-5, -5] },
] as const;
const scene = buildScene(
  complexDocument({
    heightM,
    flags,
    balls: [{ id: 'b', at: [-3, -16] }],
  }),
  'h1',
);

describe('the map of the surrounds', () => {
  const { value: map, progress } = finish(surroundsMapSteps(scene, 'A'));
  const at = (east: number, north: number): { strokes: number; technique: string | undefined } => {
    const k =
      Math.floor((north - map.southM) / map.cellM) * map.columns + Math.floor((east - map.westM) / map.cellM);
    return { strokes: map.strokes[k] ?? NaN, technique: techniques[map.simple[k] ?? 255] };
  };

  it('is cheap at the flag, dear far away and in sand, and says what the simple shot is', () => {
    expect(at(3.5, 4.5).strokes).toBeLessThan(1.2);
    expect(at(-8, 4).strokes).toBeGreaterThan(1.6);
    expect(at(-24, -20).strokes).toBeGreaterThan(at(-10, -10).strokes);
    expect(at(16.5, -5.5).technique).toBe('splash');
    expect(at(16.5, -5.5).strokes).toBeGreaterThan(at(-11, -8).strokes);
    expect(at(-8, 4).technique).toBe('putt');
  });

  it('reports progress that only grows', () => {
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
    expect(progress.length).toBeGreaterThan(30);
  });
});

describe('what changes the choice', () => {
  it('turns the ground about the ball, as ground surveyed so would play', () => {
    const sceneOn = (heightM: (east: number, north: number) => number): Scene =>
      buildScene(complexDocument({ heightM, balls: [{ id: 'b', at: [0, -18] }] }), 'h1');
    const wall = {
      kind: 'wall' as const,
      name: '',
      ringM: Float64Array.of(-1, 4, 1, 4, 0, 7),
      bottomM: 0,
      topM: 2,
    };
    const level = sceneOn(() => 0);
    const ball = { eastM: 0, northM: -18 };
    const scenes = [
      tilted({ ...level, ground: { ...level.ground, obstacles: [wall] } }, ball, 0, 2),
      sceneOn((_east, north) => 0.02 * (north + 18)),
    ] as const;
    const [rise, carry] = [slots.restNorthM, slots.carryM].map((slot) =>
      scenes.map(({ ground, conditions }) => {
        const out = new Float64Array(SLOT_COUNT);
        // A chip that flies 9 m and runs on over the green.
        shotSimulator({ ...ground, obstacles: [] }, conditions, null).run(
          ball.eastM,
          ball.northM,
          Float64Array.of(0, 8, 5.5, -250, 0, 0),
          out,
        );
        return out[slot] ?? NaN;
      }),
    );
    expect(rise?.[0]).toBeCloseTo(rise?.[1] ?? NaN, 2);
    expect(carry?.[0]).toBeCloseTo(carry?.[1] ?? NaN, 3);
    expect(carry?.[0]).toBeGreaterThan(6);
    const [turned, surveyed] = scenes;
    expect(turned.ground.heightAt(ball)).toBeCloseTo(level.ground.heightAt(ball), 9);
    expect(turned.ground.heightAt({ eastM: 2, northM: 6 })).toBeCloseTo(
      surveyed.ground.heightAt({ eastM: 2, northM: 6 }),
      3,
    );
    // Its middle is 23 m up the tilt.
    expect(turned.ground.obstacles[0]?.topM).toBeCloseTo(2.46, 6);
  });

  it('tries the day, the player and the other flags, and says what the plan of another day would say', () => {
    const near = buildScene(
      complexDocument({
        heightM,
        flags,
        surround: 'lightRough',
        player: { simplicityMarginStrokes: 0.005, bag: [putter, iron9, wedge46] },
        balls: [{ id: 'b', at: [4, -24] }],
      }),
      'h1',
    );
    const ask = { ballId: 'b', flagId: 'A', shotsPerOption: 64, seed: 2 };
    const { value, progress } = finish(switchPointsSteps(near, ask));
    expect(new Set(value.whatIfs.map((w) => w.what))).toEqual(
      new Set(['stimp', 'firmness', 'moisture', 'slope', 'wind', 'flagstick', 'level', 'flag']),
    );
    for (const whatIf of value.whatIfs) {
      expect(whatIf.chosenName).not.toBe('');
      if (whatIf.chosenId === value.chosenId) expect(whatIf.holds).toBe(true);
      if (!whatIf.holds) expect(whatIf.keepingCostsStrokes ?? Infinity).toBeGreaterThan(0.005);
    }
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
    expect(Math.max(...progress)).toBeLessThanOrEqual(1);

    expect(planBall(near, ask).chosenId).toBe(value.chosenId);
    const other = value.whatIfs.find(({ what, switchAt }) => what === 'stimp' && switchAt !== null);
    const at = other?.switchAt ?? NaN;
    const away = Math.sign(at - 10);
    const costOn = (stimpFt: number): number =>
      planBall({ ...near, conditions: { ...near.conditions, stimpFt } }, ask).options.find(
        ({ id }) => id === value.chosenId,
      )?.costStrokes ?? Infinity;
    expect(Math.abs(at - 10)).toBeLessThan(1);
    expect(costOn(at - away / 16)).toBeLessThanOrEqual(0.005);
    expect(costOn(at + away / 16)).toBeGreaterThan(0.005);
  });
});
