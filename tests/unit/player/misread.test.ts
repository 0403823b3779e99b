import { describe, expect, it } from 'vitest';
import { rollingFromStimp } from '../../../shared/ball/coverPhysics.ts';
import type { Ground } from '../../../shared/ball/ground.ts';
import { SLOPE_PULL_MPS2 } from '../../../shared/ball/constants.ts';
import { PATH_SIZE, stepPath } from '../../../shared/planner/puttPath.ts';
import { misreadErrors } from '../../../shared/player/misread.ts';

const green = rollingFromStimp(10);
const rolling = new Float64Array(12).fill(green);

function plane(rise: number, across: number): Ground {
  return {
    maxHeightM: Infinity,
    obstacles: [],
    sample(at, out) {
      out[0] = across * (at[0] ?? NaN) + rise * (at[1] ?? NaN);
      out[1] = across;
      out[2] = rise;
      out[3] = 0;
    },
  };
}

/** Rolls northward and says how far east of the hole, and how fast, the ball passes it. */
function pass(ground: Ground, distanceM: number, startMps: number, bearing: number): [number, number] {
  const path = Float64Array.of(0, 0, Math.sin(bearing), Math.cos(bearing), startMps ** 2);
  expect(path).toHaveLength(PATH_SIZE);
  while (distanceM - (path[1] ?? 0) > 1e-9) {
    stepPath(ground, rolling, path, Math.min(0.004, (distanceM - (path[1] ?? 0)) / (path[3] ?? 1)));
  }
  return [path[0] ?? 0, Math.sqrt(path[4] ?? 0)];
}

describe('a misread slope', () => {
  const misread = 0.001;
  const cases = [0.9, 2, 6, 15].flatMap((distanceM) =>
    [-0.045, -0.02, 0, 0.03].map((rise) => ({ distanceM, rise })),
  );

  it.each(cases)('is what the ball makes of it: $distanceM m, rise $rise', ({ distanceM, rise }) => {
    const brake = green + SLOPE_PULL_MPS2 * rise;
    const holeMps = Math.sqrt(2 * brake * 0.4);
    const startMps = Math.sqrt(2 * brake * (distanceM + 0.4));
    const putt = { distanceM, startMps, holeMps, rollingMps2: green };
    const { speedSd, aimRad } = misreadErrors(putt, { alongSd: misread, acrossSd: misread, paceSd: 0 });
    // Aimed up the slope across by as much, it comes in over the middle; without, it misses by far more.
    const [aimed] = pass(plane(rise, misread), distanceM, startMps, aimRad);
    const [straight] = pass(plane(rise, misread), distanceM, startMps, 0);
    expect(straight).toBeLessThan(0);
    expect(Math.abs(aimed)).toBeLessThan(0.01 * Math.abs(straight));
    // Struck harder by as much on ground that rises more by the misread, it arrives at the speed meant.
    const [, arrives] = pass(plane(rise + misread, 0), distanceM, startMps * (1 + speedSd), 0);
    expect(Math.abs(arrives ** 2 - holeMps ** 2)).toBeLessThan(
      0.02 * (2 * distanceM * SLOPE_PULL_MPS2 * misread),
    );
  });

  it('stays finite on ground that hardly brakes, or speeds the ball up', () => {
    for (const rise of [-0.06, -0.0783, -0.12]) {
      const start2 = 1.5 ** 2;
      const hole2 = start2 - 2 * 3 * (green + SLOPE_PULL_MPS2 * rise);
      const putt = { distanceM: 3, startMps: 1.5, holeMps: Math.sqrt(hole2), rollingMps2: green };
      const { speedSd, aimRad } = misreadErrors(putt, { alongSd: 0.004, acrossSd: 0.004, paceSd: 0.04 });
      expect(speedSd).toBeGreaterThan(0.02);
      expect(speedSd).toBeLessThanOrEqual(0.35);
      expect(aimRad).toBeGreaterThan(0);
      expect(aimRad).toBeLessThan(0.5);
    }
  });
});
