import { recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { type BaseLayerSetting, openStreetMap } from '../store/baseLayerSettings.ts';

/** What OpenStreetMap's data is published under. */
const ODBL = 'Open Database Licence';

/** Names whom the pictures of a layer come from, once; null where the layer names nobody or the atlas does already. */
export function creditLayer(document: AtlasDocument, layer: BaseLayerSetting): Edit | null {
  const { id, name, attribution } = layer;
  if (attribution === '') return null;
  if (recordsOf(document, 'source').some((source) => source.attribution === attribution)) return null;
  const licence = attribution === openStreetMap.attribution ? ODBL : '';
  return putRecords(`named ${attribution} as a source`, [
    { type: 'source', id: `layer-${id}`, name, attribution, licence },
  ]);
}
