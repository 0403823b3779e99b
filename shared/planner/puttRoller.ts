import type { Ground } from '../ball/ground.ts';
import { type Conditions, outcomes } from '../ball/shot.ts';
import { shotSimulator } from '../ball/simulator.ts';
import { SLOT_COUNT, slots } from '../ball/slots.ts';
import type { PlanePoint } from '../geometry/points.ts';

/** Code of a putt that dropped; other codes are covers. */
export const ROLL_HOLED = 254;

export interface PuttRoller {
  /** Rolls a putt at the hole and says where it ends. The object returned is the same every time. */
  roll(
    eastM: number,
    northM: number,
    speedMps: number,
    bearing: number,
  ): { readonly eastM: number; readonly northM: number; readonly code: number };
}

const HOLED = outcomes.indexOf('holed');

export function puttRoller(ground: Ground, conditions: Conditions, hole: PlanePoint): PuttRoller {
  const simulator = shotSimulator(ground, conditions, hole);
  const out = new Float64Array(SLOT_COUNT);
  const end = { eastM: 0, northM: 0, code: 0 };
  return {
    roll(eastM, northM, speedMps, bearing) {
      const outcome = simulator.roll(eastM, northM, speedMps, bearing, out);
      end.eastM = out[slots.restEastM] ?? 0;
      end.northM = out[slots.restNorthM] ?? 0;
      end.code = outcome === HOLED ? ROLL_HOLED : (out[slots.restCover] ?? 0);
      return end;
    },
  };
}
