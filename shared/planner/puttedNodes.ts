import type { Ground } from '../ball/ground.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { coverCode } from '../words/vocabulary.ts';
import { notedNow } from './noted.ts';

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');
/** So near the flag a ball is putted whatever it lies on, metres. */
const AT_FLAG_M = 0.5;

/**
 * On rings around a flag, with spokes clockwise from north: 1 for the nodes on the green, its fringe and about the flag. That much is not noted as ground read, all round as it is:
 * where the green or its fringe has changed, no plan to it is kept.
 */
export function puttedNodes(
  ground: Ground,
  flag: PlanePoint,
  radiiM: Float64Array,
  spokes: number,
): Uint8Array {
  const putted = new Uint8Array(radiiM.length * spokes);
  const here = new Float64Array(4);
  const at = new Float64Array(2);
  const look = (): void => {
    for (let node = 0; node < putted.length; node += 1) {
      const radius = radiiM[Math.floor(node / spokes)] ?? 1;
      const angle = (2 * Math.PI * (node % spokes)) / spokes;
      at[0] = flag.eastM + radius * sin(angle);
      at[1] = flag.northM + radius * cos(angle);
      ground.sample(at, here);
      if (here[3] === GREEN || here[3] === FRINGE || radius <= AT_FLAG_M) putted[node] = 1;
    }
  };
  if (ground.reads === undefined) look();
  else notedNow(ground.reads, new Uint8Array(ground.reads.into.length), look);
  return putted;
}
