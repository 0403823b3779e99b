import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { frameOf, headerOf, recordsOf } from '../../shared/atlas/document.ts';
import type { PlanePoint, PlanePolygon } from '../../shared/geometry/points.ts';
import { boundingBox, distanceM, insideDistanceM } from '../../shared/geometry/ring.ts';
import type { MeasureHere } from '../../shared/terrain/measureNext.ts';
import type { MeasureSpots } from '../store/measureSpots.ts';
import { percent } from '../../shared/units/format.ts';
import type { LookAt } from './lookAt.ts';

/** A height read within this of a spot is the reading that was wanted there, metres. */
const READ_M = 0.75;

/**
 * Spots to measure next as things to look at: those that would help a shot just planned on this hole and are not read yet,
 * or else those that would help the whole green.
 */
export function spotsToMeasure(
  document: AtlasDocument,
  holeId: string | null,
  planned: Pick<MeasureSpots, 'holeId' | 'shot' | 'spots'>,
  ofGreen: readonly MeasureHere[],
  greens: readonly PlanePolygon[],
): readonly LookAt[] {
  const { toPlane } = frameOf(document);
  const sides = headerOf(document).placed ? byCompass : onSheet;
  const heights =
    planned.holeId === holeId && planned.spots.length > 0
      ? recordsOf(document, 'spotHeight').map(({ at }) => toPlane(at))
      : [];
  const open =
    planned.holeId === holeId
      ? planned.spots.filter(({ at }) => heights.every((read) => distanceM(read, at) > READ_M))
      : [];
  const spots = open.length > 0 ? open : ofGreen;
  return spots.map(({ at, reduction }, i): LookAt => {
    const share = `${percent(Math.max(1, 100 * reduction))} of the doubt`;
    const helps = open.length > 0 ? `${share} in ${planned.shot}` : share;
    return {
      id: `measure ${open.length > 0 ? planned.shot : 'green'} ${String(i + 1)}`,
      ink: 'doubt',
      text:
        i === 0
          ? `One more height ${placeOn(at, greens, sides)} would help most: it takes away ${helps}.`
          : `Then one ${placeOn(at, greens, sides)}: ${helps}.`,
      remedy: '',
      at,
      recordId: null,
      mend: null,
    };
  });
}

const byCompass = { up: 'north', down: 'south', right: 'east', left: 'west' } as const;
/** Where north is not known. */
const onSheet = { up: 'top', down: 'bottom', right: 'right', left: 'left' } as const;

/** "near the north west edge", "in the top left of the green", "in the middle of the green". */
function placeOn(
  at: PlanePoint,
  greens: readonly PlanePolygon[],
  { up, down, right, left }: typeof byCompass | typeof onSheet,
): string {
  const green = greens.find((polygon) => insideDistanceM(at, polygon) > -2);
  const box = boundingBox(green?.[0] ?? []);
  if (green === undefined || box === null) return 'here';
  const x = (at.eastM - box.westM) / (box.eastM - box.westM);
  const y = (at.northM - box.southM) / (box.northM - box.southM);
  const words = [y > 0.62 ? up : y < 0.38 ? down : '', x > 0.62 ? right : x < 0.38 ? left : '']
    .filter((word) => word !== '')
    .join(' ');
  if (words === '') return 'in the middle of the green';
  return insideDistanceM(at, green) < 2 ? `near the ${words} edge` : `in the ${words} of the green`;
}
