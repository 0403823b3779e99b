import { expect, it } from 'vitest';
import { aimAt } from '../../../shared/planner/bestNear.ts';
import { effortRules } from '../../../shared/planner/effort.ts';
import { flagShooters } from '../../../shared/planner/flagTools.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { bestAim, searchRows } from '../../../shared/planner/seekAim.ts';
import type { Shooter } from '../../../shared/planner/shooter.ts';
import { solveAim, type Solved } from '../../../shared/planner/solveAim.ts';
import { standardShots } from '../../../shared/planner/standardShots.ts';
import { strikeCloud } from '../../../shared/planner/strikeCloud.ts';
import { meanStrokes } from '../../../shared/planner/trial.ts';
import { baselineStrokes } from '../../../shared/player/baseline.ts';
import { club, complexDocument } from './complex.ts';

const scene = buildScene(
  complexDocument({ bunker: false, flags: [{ id: 'A', at: [0, 0] }], balls: [] }),
  'h1',
);
const flag = { eastM: 0, northM: 0 };
/** Left of the flag something takes most of a stroke. */
const field = {
  at: (east: number, north: number): number =>
    baselineStrokes(scene.player.level, 'green', Math.hypot(east, north)) + (east < -4 ? 0.8 : 0),
};

function pitchFrom(distanceM: number, cover: 'fairway' | 'bunker'): { shooter: Shooter; solved: Solved } {
  const ball = { eastM: 0, northM: -distanceM };
  const technique = cover === 'bunker' ? 'splash' : 'pitch';
  const candidate = { technique, club: club('w56', 'wedge', '56° wedge', 56, 10) } as const;
  const shooter = flagShooters(scene, flag).shooterFrom(candidate, ball, cover, 'clean', 0);
  return { shooter, solved: solveAim(shooter, ball, { eastM: 0, northM: 0.3 }, 'rest') };
}

it('tells what aims about its middle cost without a shot more', () => {
  const distanceM = 25;
  const { shooter, solved } = pitchFrom(distanceM, 'fairway');
  const origin = { shooter, solved, distanceM };
  const cloud = strikeCloud(shooter, field, 256);
  const shots = standardShots(256, 7);
  cloud.shoot(solved, shots, 0, 128, 1);
  cloud.shoot(solved, shots, 128, 256, 1.5);
  const fresh = standardShots(4096, 99);
  const moves = [-1, 0, 1].flatMap((along) => [-1, 0, 1].map((aside) => [along, aside] as const));
  const asideM = (distanceM * shooter.spread.lineSdDeg * Math.PI) / 180;
  const alongM = distanceM * solved.touch * shooter.spread.speedSd;
  const off = moves.map(([along, aside]) => {
    const aim = aimAt(origin, { beyondM: along * alongM, rightM: aside * asideM });
    return cloud.at(aim) - meanStrokes(shooter, field, aim, fresh, 4096);
  });
  // Every aim is one standard deviation away or none; means of 256 plain shots would miss by 0.02.
  for (const one of off) expect(Math.abs(one)).toBeLessThan(0.04);
  expect(Math.abs(off.reduce((sum, one) => sum + one, 0) / off.length)).toBeLessThan(0.02);
});

it('never aims with more than the fastest swing, however short the shot falls', () => {
  const distanceM = 45;
  const { shooter, solved } = pitchFrom(distanceM, 'bunker');
  expect(solved.clubheadMps).toBe(shooter.fastestMps);
  const shots = standardShots(searchRows(effortRules.full), 3);
  const aim = bestAim({ shooter, solved, distanceM }, field, shots, effortRules.full);
  expect(aim.clubheadMps).toBeLessThanOrEqual(shooter.fastestMps);
});
