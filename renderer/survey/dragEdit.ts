import type { Edit } from '../../shared/atlas/edits.ts';
import { moveRecords } from '../../shared/atlas/moving.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { insertCorner, moveCorner, turnRecords } from '../../shared/atlas/shaping.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { groupWords, thingsOf } from './group.ts';
import type { Drag } from './handState.ts';

/** The one step a drag makes of the document; null where it came back to where it began, or its thing is gone. */
export function dragEdit(
  document: AtlasDocument,
  drag: Exclude<Drag, { kind: 'crown' | 'frame' }>,
): Edit | null {
  const things = thingsOf(document, drag.kind === 'corner' ? [drag.id] : drag.ids);
  const [record] = things;
  if (record === undefined) return null;
  const ids = things.map(({ id }) => id);
  switch (drag.kind) {
    case 'move': {
      const { from, to } = drag;
      if (distanceM(from, to) === 0) return null;
      const [eastM, northM] = [to.eastM - from.eastM, to.northM - from.northM];
      return moveRecords(`moved ${groupWords(things)}`, ids, eastM, northM);
    }
    case 'turn':
      return drag.turnDeg === 0
        ? null
        : turnRecords(`turned ${groupWords(things)}`, ids, drag.centre, drag.turnDeg);
    case 'corner':
      if (record.type !== 'area' && record.type !== 'line') return null;
      return drag.isNew
        ? insertCorner(document, record, drag.ring, drag.index - 1, drag.to)
        : moveCorner(document, record, drag.ring, drag.index, drag.to);
  }
}
