import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Cornered } from '../../shared/atlas/shaping.ts';
import type { HandState } from './handState.ts';
import { type Thing, thingsInOrder } from './planeShapes.ts';

/** The corner before or after the chosen one, round all rings of a thing; from none, the last or the first. */
export function nextCorner(held: Cornered, corner: HandState['corner'], by: 1 | -1): HandState['corner'] {
  const rings = held.type === 'area' ? held.rings : [held.positions];
  const all = rings.flatMap((ring, r) => ring.map((_, index) => ({ ring: r, index })));
  const at = all.findIndex(({ ring, index }) => ring === corner?.ring && index === corner.index);
  return stepped(all, at, by);
}

/** The thing before or after the one held, in their order on the plate; null where there is none at all. */
export function nextThing(document: AtlasDocument, heldId: string | null, by: 1 | -1): Thing | null {
  const all = thingsInOrder(document);
  const at = all.findIndex(({ id }) => id === heldId);
  return stepped(all, at, by);
}

function stepped<T>(all: readonly T[], at: number, by: 1 | -1): T | null {
  const from = at < 0 ? (by === 1 ? 0 : all.length - 1) : at + by + all.length;
  return all[from % all.length] ?? null;
}
