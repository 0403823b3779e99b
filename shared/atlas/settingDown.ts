import { type Affine, onPlane } from '../geometry/affine.ts';
import { bearingDeg } from '../geometry/bearing.ts';
import { localFrame, type LocalFrame } from '../geometry/localFrame.ts';
import { type LonLat, planePoint } from '../geometry/points.ts';
import { canonicalPosition } from './canonical.ts';
import { frameOf, headerOf } from './document.ts';
import { mapPositions } from './moving.ts';
import type { AtlasDocument, AtlasRecord, RecordId } from './records.ts';

/** Far enough to tell a direction to a billionth of a degree. */
const ALONG_M = 1000;

/**
 * Where the atlas goes, as `placeAtlas` takes it, when its sheet is laid over the plane of another frame by a map that
 * only moves and turns. North of that frame is not quite north at the new place, which the turn makes good.
 */
export function settingDown(
  over: LocalFrame,
  rigid: Affine,
): { readonly anchor: LonLat; readonly turnDeg: number } {
  const anchor = canonicalPosition(over.toLonLat(onPlane(rigid, { x: 0, y: 0 })));
  const up = localFrame(anchor).toPlane(over.toLonLat(onPlane(rigid, { x: 0, y: ALONG_M })));
  return { anchor, turnDeg: bearingDeg(planePoint(0, 0), up) };
}

/** The atlas as it would look so set down, drawn in the plane of `over`: for showing only. */
export function shownSetDown(document: AtlasDocument, over: LocalFrame, rigid: Affine): AtlasDocument {
  const from = frameOf(document);
  const after = new Map<RecordId, AtlasRecord>();
  for (const [id, record] of document.records)
    after.set(
      id,
      mapPositions(record, (at) => {
        const { eastM, northM } = from.toPlane(at);
        return over.toLonLat(onPlane(rigid, { x: eastM, y: northM }));
      }),
    );
  after.set('atlas', { ...headerOf(document), anchor: over.anchor, placed: true });
  return { records: after };
}
