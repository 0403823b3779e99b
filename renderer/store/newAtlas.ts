import { atlasDocument } from '../../shared/atlas/document.ts';
import type {
  AtlasDocument,
  AtlasHeader,
  ConditionsRecord,
  PlayerRecord,
} from '../../shared/atlas/records.ts';
import { type LonLat, lonLat } from '../../shared/geometry/points.ts';

export interface NewAtlas {
  readonly name: string;
  readonly kind: AtlasHeader['kind'];
  /** Where on the earth it lies; null for a blank canvas. */
  readonly at: LonLat | null;
}

/** An ordinary day and an ordinary bag, so that the first green can be planned at once; both are there to be changed. */
export const firstDay: ConditionsRecord = {
  type: 'conditions',
  id: 'day-1',
  name: 'Usual',
  stimpFt: 9.5,
  firmness: 0.5,
  moisture: 'dry',
  windMps: 0,
  windFromDeg: 0,
  inUse: true,
};
export const firstPlayer: PlayerRecord = {
  type: 'player',
  id: 'player-1',
  name: 'Example player',
  handed: 'right',
  level: { kind: 'handicap', handicap: 18 },
  bag: [
    { id: 'putter', kind: 'putter', name: 'putter', loftDeg: 3, bounceDeg: 0 },
    { id: 'hybrid', kind: 'hybrid', name: '24° hybrid', loftDeg: 24, bounceDeg: 2 },
    { id: 'iron8', kind: 'iron', name: '8-iron', loftDeg: 37, bounceDeg: 4 },
    { id: 'w46', kind: 'wedge', name: '46° wedge', loftDeg: 46, bounceDeg: 6 },
    { id: 'w52', kind: 'wedge', name: '52° wedge', loftDeg: 52, bounceDeg: 10 },
    { id: 'w56', kind: 'wedge', name: '56° wedge', loftDeg: 56, bounceDeg: 12 },
  ],
  repertoire: {},
  simplicityMarginStrokes: 0.05,
  paceM: 0.9144,
  inUse: true,
};

/** An empty sheet: one hole or station, nothing drawn. */
export function newAtlas(
  { name, kind, at }: NewAtlas = { name: 'New atlas', kind: 'course', at: null },
): AtlasDocument {
  return atlasDocument([
    { type: 'atlas', id: 'atlas', name, kind, placed: at !== null, anchor: at ?? lonLat(0, 0), note: '' },
    {
      type: 'hole',
      id: 'hole-1',
      label: kind === 'course' ? '1' : 'S1',
      order: 1,
      name: '',
      par: null,
      greenId: null,
      line: null,
    },
    firstDay,
    firstPlayer,
  ]);
}
