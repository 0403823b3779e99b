import { atlasDocument } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { lonLat } from '../../shared/geometry/points.ts';

/** An empty sheet: one hole, nothing drawn, not yet placed on the earth. */
export function newAtlas(): AtlasDocument {
  return atlasDocument([
    {
      type: 'atlas',
      id: 'atlas',
      name: 'New atlas',
      kind: 'course',
      placed: false,
      anchor: lonLat(0, 0),
      note: '',
    },
    { type: 'hole', id: 'hole-1', label: '1', order: 1, name: '', par: null, greenId: null, line: null },
  ]);
}
