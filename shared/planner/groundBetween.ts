import { type Conditions } from '../ball/shot.ts';
import { coverTable } from '../ball/coverPhysics.ts';
import type { Ground } from '../ball/ground.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { type Cover, covers } from '../words/vocabulary.ts';

/** What lies on the straight line between two points. */
export interface GroundBetween {
  /** Length over each cover that is not green, longest first, metres. */
  readonly offGreen: readonly { readonly cover: Cover; readonly lengthM: number }[];
  /** Share of a rolling ball's energy that each cover takes, the green's included. */
  readonly energyShares: ReadonlyMap<Cover, number>;
  /** The same for all that is not green. */
  readonly paceLostOffGreen: number;
  /** What brakes a rolling ball on the level, the mean over the line. */
  readonly rollingMps2: number;
  /** Rise from the one end to the other, metres. */
  readonly climbM: number;
  /** Lowest dip and highest rise against the straight line between the ends, metres, both positive. */
  readonly dipM: number;
  readonly riseM: number;
}

const STEP_M = 0.1;

export function groundBetween(
  ground: Ground,
  conditions: Conditions,
  from: PlanePoint,
  to: PlanePoint,
): GroundBetween {
  const rolling = coverTable(conditions).rollingMps2;
  const east = to.eastM - from.eastM;
  const north = to.northM - from.northM;
  const length = Math.sqrt(east * east + north * north);
  const steps = Math.max(1, Math.ceil(length / STEP_M));
  const step = length / steps;
  const here = new Float64Array(4);
  const lengths = new Float64Array(covers.length);
  const at = Float64Array.of(to.eastM, to.northM);
  ground.sample(at, here);
  const endM = here[0] ?? 0;
  at[0] = from.eastM;
  at[1] = from.northM;
  ground.sample(at, here);
  const startM = here[0] ?? 0;
  let dipM = 0;
  let riseM = 0;
  let all = 0;
  for (let i = 0; i < steps; i += 1) {
    const share = (i + 0.5) / steps;
    at[0] = from.eastM + share * east;
    at[1] = from.northM + share * north;
    ground.sample(at, here);
    const code = here[3] ?? 0;
    lengths[code] = (lengths[code] ?? 0) + step;
    all += (rolling[code] ?? 0) * step;
    const against = (here[0] ?? 0) - (startM + share * (endM - startM));
    dipM = Math.max(dipM, -against);
    riseM = Math.max(riseM, against);
  }
  const offGreen = covers
    .map((cover, code) => ({ cover, lengthM: lengths[code] ?? 0 }))
    .filter(({ cover, lengthM }) => cover !== 'green' && lengthM > 0)
    .sort((a, b) => b.lengthM - a.lengthM);
  const energyShares = new Map<Cover, number>();
  for (const [code, cover] of covers.entries()) {
    const taken = (rolling[code] ?? 0) * (lengths[code] ?? 0);
    if (taken > 0) energyShares.set(cover, taken / all);
  }
  return {
    offGreen,
    energyShares,
    paceLostOffGreen: 1 - (energyShares.get('green') ?? 0),
    rollingMps2: length > 0 ? all / length : (rolling[here[3] ?? 0] ?? 0),
    climbM: endM - startM,
    dipM,
    riseM,
  };
}
