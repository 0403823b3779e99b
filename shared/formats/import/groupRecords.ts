import type { AtlasRecord } from '../../atlas/records.ts';
import type { AreaKind } from '../../words/vocabulary.ts';
import type { ImportGroup } from './importPreview.ts';

const areaTitles: Readonly<Record<AreaKind, string>> = {
  green: 'greens',
  fringe: 'fringes',
  approach: 'approaches',
  fairway: 'fairways',
  lightRough: 'light rough',
  heavyRough: 'heavy rough',
  bare: 'bare ground',
  bunker: 'bunkers',
  penaltyArea: 'penalty areas',
  outOfBounds: 'out of bounds',
  path: 'paths',
  tree: 'trees',
  tee: 'tees',
};

const titles: Readonly<Partial<Record<AtlasRecord['type'], string>>> = {
  hole: 'holes',
  line: 'lines',
  spotHeight: 'spot heights',
  slopeReading: 'slope readings',
  planeByEye: 'planes by eye',
  elevationGrid: 'elevation grids',
  holeLocation: 'hole locations',
  ballPosition: 'ball positions',
  landmark: 'landmarks',
};

export const areaTitle = (kind: AreaKind): string => areaTitles[kind];

/** Records gathered into groups: areas by kind, the rest by type; outlines of unknown kind apart. */
export function grouped(
  entries: readonly { readonly record: AtlasRecord; readonly how: string; readonly unknown?: boolean }[],
): readonly ImportGroup[] {
  const groups = new Map<string, { title: string; how: Set<string>; records: AtlasRecord[] }>();
  for (const { record, how, unknown } of entries) {
    const key =
      record.type !== 'area' ? record.type : unknown === true ? 'area:unknown' : `area:${record.kind}`;
    const title =
      record.type !== 'area'
        ? (titles[record.type] ?? record.type)
        : unknown === true
          ? 'outlines of unknown kind'
          : areaTitle(record.kind);
    const group = groups.get(key) ?? { title, how: new Set<string>(), records: [] };
    group.how.add(how);
    group.records.push(record);
    groups.set(key, group);
  }
  return [...groups].map(([key, { title, how, records }]) => ({
    key,
    title,
    how: [...how].join(' '),
    records,
  }));
}
