import { expect, it } from 'vitest';
import { effortRules } from '../../../shared/planner/effort.ts';
import { flagShooters } from '../../../shared/planner/flagTools.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { solveAim } from '../../../shared/planner/solveAim.ts';
import { standardShots } from '../../../shared/planner/standardShots.ts';
import type { StrokesField } from '../../../shared/planner/strokesField.ts';
import { bestAim, searchRows } from '../../../shared/planner/seekAim.ts';
import { baselinePutts } from '../../../shared/player/baseline.ts';
import { club, complexDocument } from './complex.ts';

const scene = buildScene(
  complexDocument({ bunker: false, flags: [{ id: 'A', at: [0, 0] }], balls: [] }),
  'h1',
);
const flag = { eastM: 0, northM: 0 };
const ball = { eastM: 0, northM: -10 };

/** How far to the right of the flag each seed aims a putt of 10 m on level ground. */
const aims = (strokes: StrokesField['at']): readonly number[] => {
  const putt = { technique: 'putt', club: club('pt', 'putter', 'putter', 3, 0) } as const;
  const shooter = flagShooters(scene, flag).shooterFrom(putt, ball, 'green', 'clean', 0);
  const solved = solveAim(shooter, ball, { eastM: 0, northM: 0.3 }, 'rest');
  return Array.from({ length: 24 }, (_, seed) => {
    const shots = standardShots(searchRows(effortRules.full), seed);
    const aim = bestAim({ shooter, solved, distanceM: 10 }, { at: strokes }, shots, effortRules.full);
    return 10 * (aim.bearing - solved.bearing);
  });
};

it('aims straight on level ground whatever the seed, and away from trouble for every seed', () => {
  const level = (east: number, north: number): number =>
    baselinePutts(scene.player.level, Math.hypot(east, north));
  const turned = aims(level).filter((rightM) => Math.abs(rightM) > 0.01);
  expect(turned.length).toBeLessThanOrEqual(1);
  // From a foot right of the flag on a ball costs a stroke more.
  const away = aims((east, north) => level(east, north) + (east > 0.3 ? 1 : 0));
  for (const rightM of away) expect(rightM).toBeLessThan(-0.1);
});
