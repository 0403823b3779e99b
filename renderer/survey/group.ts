import { joinAreas, lineWords } from '../../shared/atlas/shaping.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type { AreaRecord, AtlasDocument } from '../../shared/atlas/records.ts';
import { type PlanePoint, planePoint } from '../../shared/geometry/points.ts';
import { type Box, boundingBox } from '../../shared/geometry/ring.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import type { AreaKind } from '../../shared/words/vocabulary.ts';
import { indexOf, isThing, planeShape, type Thing } from './planeShapes.ts';
import { thingWords } from './words.ts';

/** The things of these ids that are still there. */
export const thingsOf = (document: AtlasDocument, ids: readonly string[]): readonly Thing[] =>
  ids.map((id) => document.records.get(id)).filter(isThing);

/** Inside a sentence: the thing itself, or "3 bunkers", "5 things". */
export function groupWords(things: readonly Thing[]): string {
  const [first] = things;
  if (first === undefined) return 'nothing';
  if (things.length === 1) return thingWords(first);
  const [only, ...others] = countsOf(things);
  return only === undefined || others.length > 0 ? `${String(things.length)} things` : countWords(only);
}

export interface KindCount {
  /** As one of them is called, or several. */
  readonly kind: string;
  readonly count: number;
}

/** How many of each kind, in the order in which they were taken. */
export function countsOf(things: readonly Thing[]): readonly KindCount[] {
  const counts = new Map<string, number>();
  for (const thing of things) {
    const kind = kindOf(thing);
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return [...counts].map(([kind, count]) => ({ kind: count === 1 ? kind : plural(kind), count }));
}

export const countWords = ({ kind, count }: KindCount): string => `${String(count)} ${kind}`;

const uncounted: ReadonlySet<AreaKind> = new Set(['lightRough', 'heavyRough', 'bare', 'outOfBounds']);
const pointWords: Readonly<Record<Exclude<Thing['type'], 'area' | 'line'>, string>> = {
  spotHeight: 'spot height',
  slopeReading: 'slope reading',
  holeLocation: 'flag',
  ballPosition: 'ball',
  landmark: 'landmark',
};

function kindOf(thing: Thing): string {
  if (thing.type === 'line') return lineWords[thing.kind];
  if (thing.type !== 'area') return pointWords[thing.type];
  return uncounted.has(thing.kind) ? `area of ${kindWords[thing.kind]}` : kindWords[thing.kind];
}

const plural = (kind: string): string =>
  kind.startsWith('area of ')
    ? kind.replace('area', 'areas')
    : kind.endsWith('ch')
      ? `${kind}es`
      : `${kind}s`;

/** The box round things. */
export function groupBox(document: AtlasDocument, things: readonly Thing[]): Box | null {
  const corners = things.flatMap((thing) => {
    const { box } = planeShape(document, thing);
    return [planePoint(box.westM, box.southM), planePoint(box.eastM, box.northM)];
  });
  return boundingBox(corners);
}

export function groupCentre(document: AtlasDocument, things: readonly Thing[]): PlanePoint {
  const box = groupBox(document, things);
  return box === null
    ? planePoint(0, 0)
    : planePoint((box.westM + box.eastM) / 2, (box.southM + box.northM) / 2);
}

/** Everything that lies wholly within a frame pulled from one corner to the other. */
export function idsWithin(document: AtlasDocument, from: PlanePoint, to: PlanePoint): readonly string[] {
  const frame = boundingBox([from, to]);
  if (frame === null) return [];
  const index = indexOf(document);
  return [...index.areasIn(frame), ...index.linesIn(frame), ...index.pointsIn(frame)]
    .filter(
      ({ record, box }) =>
        isThing(record) &&
        box.westM >= frame.westM &&
        box.eastM <= frame.eastM &&
        box.southM >= frame.southM &&
        box.northM <= frame.northM,
    )
    .map(({ record }) => record.id)
    .sort();
}

/** Everything of the same kind as a thing. */
export function idsLike(document: AtlasDocument, thing: Thing): readonly string[] {
  return indexOf(document)
    .of(thing.type)
    .filter(
      ({ record }) =>
        !(record.type === 'area' || record.type === 'line') ||
        ((thing.type === 'area' || thing.type === 'line') && record.kind === thing.kind),
    )
    .map(({ record }) => record.id);
}

export const areasOf = (things: readonly Thing[]): readonly AreaRecord[] =>
  things.filter((thing) => thing.type === 'area');

/** Makes every area held one kind of ground. */
export const changeKind = (things: readonly Thing[], kind: AreaKind): Edit =>
  putRecords(
    `made ${groupWords(things)} ${kindWords[kind]}`,
    areasOf(things).map((area) => ({ ...area, kind })),
  );

export const joinHeld = (document: AtlasDocument, things: readonly Thing[]): Edit =>
  joinAreas(document, areasOf(things));
