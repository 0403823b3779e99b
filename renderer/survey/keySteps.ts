import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { METRES_PER_FOOT, METRES_PER_YARD } from '../../shared/units/conversions.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { groupCentre } from './group.ts';
import { cornersOf, isCornered, middleOf } from './grips.ts';
import type { Drag, HandState } from './handState.ts';
import type { Thing } from './planeShapes.ts';

/** Which way each arrow key goes. */
export const keySteps: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/** How far one press of an arrow key goes: a foot or a yard, a quarter metre or a metre. */
export function keyStepM(system: UnitsPreference['system'], far: boolean): number {
  if (system === 'yards') return far ? METRES_PER_YARD : METRES_PER_FOOT;
  return far ? 1 : 0.25;
}

/** The drag after one more press: of the chosen corner if there is one, else of all that is held. */
export function steppedDrag(
  document: AtlasDocument,
  things: readonly Thing[],
  drag: Drag | null,
  corner: HandState['corner'],
  moved: (at: PlanePoint) => PlanePoint,
): Drag | null {
  if (drag?.kind === 'corner' || drag?.kind === 'move') return { ...drag, to: moved(drag.to) };
  const [held] = things;
  if (held === undefined) return null;
  if (corner !== null && things.length === 1 && isCornered(held)) {
    const at = cornersOf(document, held, corner.ring)[corner.index];
    return at === undefined ? null : { kind: 'corner', id: held.id, ...corner, isNew: false, to: moved(at) };
  }
  const from = things.length === 1 ? middleOf(document, held) : groupCentre(document, things);
  return { kind: 'move', ids: things.map(({ id }) => id), from, to: moved(from) };
}
