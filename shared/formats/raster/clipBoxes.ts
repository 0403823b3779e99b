import { frameOf, recordsOf } from '../../atlas/document.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import { type Box, boundingBox } from '../../geometry/ring.ts';

/** How far round a green heights are kept unless said otherwise, metres. */
export const MARGIN_M = 25;

/**
 * The ground worth keeping heights of: a box round each green with the flags and balls of its holes, or round everything
 * traced where there is no green, widened by a margin; boxes that overlap become one. Empty where nothing is traced.
 */
export function clipBoxes(document: AtlasDocument, marginM: number): readonly Box[] {
  const frame = frameOf(document);
  const areas = recordsOf(document, 'area');
  const greens = areas.filter(({ kind }) => kind === 'green');
  const spots = [...recordsOf(document, 'ballPosition'), ...recordsOf(document, 'holeLocation')];
  const holes = recordsOf(document, 'hole');
  const sets =
    greens.length > 0
      ? greens.map((green) => {
          const own = new Set(holes.filter(({ greenId }) => greenId === green.id).map(({ id }) => id));
          return [
            ...green.rings.flat(),
            ...spots.filter(({ holeId }) => own.has(holeId)).map(({ at }) => at),
          ];
        })
      : areas.map(({ rings }) => rings.flat());
  let boxes = sets.flatMap((positions) => {
    const box = boundingBox(positions.map(frame.toPlane));
    return box === null ? [] : [widened(box, marginM)];
  });
  // Joining two boxes can bring a third within reach, so until nothing changes.
  for (let count = -1; count !== boxes.length;) {
    count = boxes.length;
    boxes = boxes.reduce<Box[]>((joined, box) => {
      const other = joined.findIndex((one) => overlap(one, box));
      if (other < 0) return [...joined, box];
      return joined.map((one, i) => (i === other ? around(one, box) : one));
    }, []);
  }
  return boxes;
}

const widened = (box: Box, by: number): Box => ({
  westM: box.westM - by,
  southM: box.southM - by,
  eastM: box.eastM + by,
  northM: box.northM + by,
});

const overlap = (a: Box, b: Box): boolean =>
  a.westM <= b.eastM && b.westM <= a.eastM && a.southM <= b.northM && b.southM <= a.northM;

const around = (a: Box, b: Box): Box => ({
  westM: Math.min(a.westM, b.westM),
  southM: Math.min(a.southM, b.southM),
  eastM: Math.max(a.eastM, b.eastM),
  northM: Math.max(a.northM, b.northM),
});
