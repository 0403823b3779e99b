import type { AtlasRecord } from '../../atlas/records.ts';
import type { AreaKind } from '../../words/vocabulary.ts';
import type { ImportGroup } from './importPreview.ts';

type Words = readonly [one: string, many: string];

const areaTitles: Readonly<Record<AreaKind, Words>> = {
  green: ['green', 'greens'],
  fringe: ['fringe', 'fringes'],
  approach: ['approach', 'approaches'],
  fairway: ['fairway', 'fairways'],
  lightRough: ['area of light rough', 'areas of light rough'],
  heavyRough: ['area of heavy rough', 'areas of heavy rough'],
  bare: ['area of bare ground', 'areas of bare ground'],
  bunker: ['bunker', 'bunkers'],
  penaltyArea: ['penalty area', 'penalty areas'],
  outOfBounds: ['area out of bounds', 'areas out of bounds'],
  path: ['path', 'paths'],
  tree: ['tree', 'trees'],
  tee: ['tee', 'tees'],
};

const titles: Readonly<Partial<Record<AtlasRecord['type'], Words>>> = {
  hole: ['hole', 'holes'],
  line: ['line', 'lines'],
  spotHeight: ['spot height', 'spot heights'],
  slopeReading: ['slope reading', 'slope readings'],
  planeByEye: ['plane by eye', 'planes by eye'],
  elevationGrid: ['elevation grid', 'elevation grids'],
  holeLocation: ['hole location', 'hole locations'],
  ballPosition: ['ball position', 'ball positions'],
  landmark: ['landmark', 'landmarks'],
};
const unknownWords: Words = ['outline of unknown kind', 'outlines of unknown kind'];

/** "1 bunker", "3 bunkers": so many records of a kind in words. */
export function countWords(record: AtlasRecord, count: number, asKind?: AreaKind): string {
  const words =
    record.type === 'area'
      ? areaTitles[asKind ?? record.kind]
      : (titles[record.type] ?? [record.type, record.type]);
  return `${String(count)} ${words[count === 1 ? 0 : 1]}`;
}

export interface GroupEntry {
  readonly record: AtlasRecord;
  readonly how: string;
  /** What in the file says so, such as `golf=bunker`. */
  readonly from?: string;
  readonly unknown?: boolean;
}

/**
 * Records gathered into groups: areas by kind and by what in the file says so, the rest by type; outlines of unknown kind
 * apart. A kind that comes from one tag alone has the plain key.
 */
export function grouped(entries: readonly GroupEntry[]): readonly ImportGroup[] {
  const groups = new Map<
    string,
    { plain: string; words: Words; from: string; how: Set<string>; records: AtlasRecord[] }
  >();
  for (const { record, how, from = '', unknown } of entries) {
    const plain =
      record.type !== 'area' ? record.type : unknown === true ? 'area:unknown' : `area:${record.kind}`;
    const words =
      record.type !== 'area'
        ? (titles[record.type] ?? ([record.type, record.type] as const))
        : unknown === true
          ? unknownWords
          : areaTitles[record.kind];
    const key = `${plain}:${from}`;
    const group = groups.get(key) ?? { plain, words, from, how: new Set<string>(), records: [] };
    group.how.add(how);
    group.records.push(record);
    groups.set(key, group);
  }
  const list = [...groups.values()];
  return list.map(({ plain, words, from, how, records }) => ({
    key: list.filter((other) => other.plain === plain).length === 1 ? plain : `${plain}:${from}`,
    title: words[records.length === 1 ? 0 : 1],
    from,
    how: [...how].join(' '),
    records,
  }));
}
