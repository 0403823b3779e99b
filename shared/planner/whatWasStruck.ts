import { length2 } from '../numeric/elementary.ts';
import type { Situation } from './situation.ts';

/** Things that stop a ball on its way. */
export type Struck = 'lip' | 'bank' | 'tree' | 'wall';

/** A ball that met a crown or a wall comes down within this of its outline, metres. */
const NEAR_M = 2.5;
/** A ball that met the lip in front of it comes down within this, metres. */
const LIP_M = 6;

/** Names what an obstructed shot met, from where it came down. */
export function whatWasStruck(situation: Situation, landEastM: number, landNorthM: number): Struck {
  for (const { kind, ringM } of situation.scene.ground.obstacles) {
    let east = 0;
    let north = 0;
    const corners = ringM.length / 2;
    for (let i = 0; i < corners; i += 1) {
      east += (ringM[2 * i] ?? 0) / corners;
      north += (ringM[2 * i + 1] ?? 0) / corners;
    }
    let reach = 0;
    for (let i = 0; i < corners; i += 1)
      reach = Math.max(reach, length2((ringM[2 * i] ?? 0) - east, (ringM[2 * i + 1] ?? 0) - north));
    if (length2(landEastM - east, landNorthM - north) <= reach + NEAR_M) return kind;
  }
  const { ball, cover, scene } = situation;
  const fromBall = length2(landEastM - ball.eastM, landNorthM - ball.northM);
  if (cover === 'bunker' && fromBall <= LIP_M) return 'lip';
  return scene.ground.coverAt({ eastM: landEastM, northM: landNorthM }) === 'bunker' ? 'lip' : 'bank';
}
