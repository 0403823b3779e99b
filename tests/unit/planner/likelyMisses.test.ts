import { expect, it } from 'vitest';
import { slots } from '../../../shared/ball/slots.ts';
import { approachLine, greenMiddle } from '../../../shared/planner/approachLine.ts';
import { approachShot } from '../../../shared/planner/approachShot.ts';
import { fullSwingReachM } from '../../../shared/planner/fullSwingReach.ts';
import { likelyMisses } from '../../../shared/planner/likelyMisses.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { complexDocument } from './complex.ts';

const scene = buildScene(complexDocument({ balls: [{ id: 'b', at: [-4, -18] }] }), 'h1');
const options = { shots: 160, spots: 3, seed: 5 };
const from = (distanceM: number) =>
  likelyMisses(scene, approachLine({ bearingDeg: 0, distanceM }, greenMiddle(scene)), options);

it('finds misses off the green alone, more of them from farther away', () => {
  const near = from(60);
  const far = from(180);
  expect(far.offM.length).toBeGreaterThan(near.offM.length * 2);
  for (let i = 0; i < far.offM.length; i += 2) {
    const at = { eastM: far.offM[i] ?? NaN, northM: far.offM[i + 1] ?? NaN };
    expect(scene.ground.coverAt(at)).not.toBe('green');
  }
});

it('groups them into places apart, each of them one of the misses', () => {
  const { spots, offM } = from(140);
  expect(spots).toHaveLength(3);
  expect(spots.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  for (const [i, { at }] of spots.entries()) {
    let found = false;
    for (let k = 0; k < offM.length; k += 2) found ||= offM[k] === at.eastM && offM[k + 1] === at.northM;
    expect(found).toBe(true);
    for (const other of spots.slice(i + 1))
      expect(Math.hypot(at.eastM - other.at.eastM, at.northM - other.at.northM)).toBeGreaterThan(5);
  }
});

it('lets the ball bounce and roll: meant for a spot it lands short of it, farther on firm ground', () => {
  const target = { eastM: 0, northM: 0 };
  const runM = (firmness: number): number => {
    const conditions = { ...scene.conditions, firmness };
    const { out, play } = approachShot(scene.ground, conditions, scene.player, target, 0, 140);
    play(0, 0);
    expect(Math.hypot(out[slots.restEastM] ?? NaN, out[slots.restNorthM] ?? NaN)).toBeLessThan(1);
    return (out[slots.restNorthM] ?? NaN) - (out[slots.landingNorthM] ?? NaN);
  };
  expect(runM(0.1)).toBeGreaterThan(0);
  expect(runM(0.9)).toBeGreaterThan(runM(0.1) + 2);
});

it('plays from a place at a flag, and tells how far a full swing with each loft gets', () => {
  const target = { eastM: 2, northM: 3 };
  const line = approachLine({ at: { eastM: -98, northM: 3 } }, target);
  expect(line.bearingDeg).toBeCloseTo(90, 9);
  expect(line.distanceM).toBeCloseTo(100, 9);
  const { offM } = likelyMisses(scene, line, options);
  expect(offM.length).toBeGreaterThan(20);
  const reach = (loftDeg: number): number => fullSwingReachM(scene.player, scene.conditions, 90, loftDeg);
  expect(reach(30)).toBeGreaterThan(reach(46) + 15);
  expect(reach(46)).toBeGreaterThan(reach(58) + 10);
  const { out, play } = approachShot(
    scene.ground,
    scene.conditions,
    scene.player,
    target,
    Math.PI / 2,
    reach(40),
  );
  play(0, 0);
  expect(Math.hypot((out[slots.restEastM] ?? NaN) - 2, (out[slots.restNorthM] ?? NaN) - 3)).toBeLessThan(1);
});
