import { expect, it } from 'vitest';
import { atlasDocument, frameOf, planePolygon, recordsOf } from '../../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../../shared/atlas/edits.ts';
import type { AreaRecord, AtlasDocument } from '../../../shared/atlas/records.ts';
import {
  addCollar,
  cutArea,
  insertCorner,
  joinAreas,
  moveCorner,
  newArea,
  removeCorner,
  splitArea,
  turnRecords,
} from '../../../shared/atlas/shaping.ts';
import { lonLat, planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { distanceM, polygonAreaM2 } from '../../../shared/geometry/ring.ts';

// Positions are kept to nine decimals of a degree, 0.11 mm: sides of 10 m give an area to some 2e-3 m2.
const AREA_DIGITS = 2;

const blank = atlasDocument([
  {
    type: 'atlas',
    id: 'atlas',
    name: 'Sheet',
    kind: 'course',
    placed: true,
    anchor: lonLat(-3, 51),
    note: '',
  },
]);

const box = (west: number, south: number, side: number): readonly PlanePoint[] => [
  planePoint(west, south),
  planePoint(west + side, south),
  planePoint(west + side, south + side),
  planePoint(west, south + side),
];

const withAreas = (...areas: readonly AreaRecord[]): AtlasDocument =>
  putRecords('traced', areas).apply(blank);
const area = (id: string, ring: readonly PlanePoint[]): AreaRecord => ({
  ...newArea(blank, id, 'bunker', ring),
  name: 'West pot',
  lipHeightM: 0.6,
});
const only = (document: AtlasDocument, id: string): AreaRecord => {
  const record = document.records.get(id);
  if (record?.type !== 'area') throw new Error(`no area ${id}`);
  return record;
};
const squareMetres = (document: AtlasDocument): readonly number[] =>
  recordsOf(document, 'area').map((record) => polygonAreaM2(planePolygon(frameOf(document), record.rings)));
let ids = 0;
const newId = (): string => {
  ids += 1;
  return `new-${String(ids)}`;
};
const applied = (document: AtlasDocument, edit: Edit): AtlasDocument => {
  const before = new Map(document.records);
  const after = edit.apply(document);
  // Pure: what was there is as it was.
  expect(new Map(document.records)).toEqual(before);
  return after;
};

it('cuts a hole where the shape lies inside, a bite where it crosses the edge', () => {
  const document = withAreas(area('a', box(0, 0, 10)));
  const holed = applied(document, cutArea(document, only(document, 'a'), box(4, 4, 2), newId));
  expect(only(holed, 'a').rings).toHaveLength(2);
  expect(squareMetres(holed)).toEqual([expect.closeTo(96, AREA_DIGITS)]);
  const bitten = applied(document, cutArea(document, only(document, 'a'), box(8, 8, 4), newId));
  expect(only(bitten, 'a').rings).toHaveLength(1);
  expect(squareMetres(bitten)).toEqual([expect.closeTo(96, AREA_DIGITS)]);
  expect(() => cutArea(document, only(document, 'a'), box(-1, -1, 20), newId)).toThrow(
    'Nothing would be left',
  );
});

it('parts an area in two that share what it had, but for the name', () => {
  const document = withAreas(area('a', box(0, 0, 10)));
  const parted = applied(
    document,
    splitArea(document, only(document, 'a'), [planePoint(3, -1), planePoint(3, 11)], newId),
  );
  const [first, second] = recordsOf(parted, 'area');
  expect(squareMetres(parted)).toEqual([expect.closeTo(70, AREA_DIGITS), expect.closeTo(30, AREA_DIGITS)]);
  expect([first?.name, second?.name]).toEqual(['West pot', '']);
  expect([first?.lipHeightM, second?.lipHeightM]).toEqual([0.6, 0.6]);
  expect(() =>
    splitArea(document, only(document, 'a'), [planePoint(30, 0), planePoint(30, 9)], newId),
  ).toThrow('does not part');
});

it('joins areas that meet, and refuses those that stand apart', () => {
  const document = withAreas(area('a', box(0, 0, 10)), area('b', box(8, 0, 10)), area('c', box(40, 0, 5)));
  const joined = applied(document, joinAreas(document, [only(document, 'a'), only(document, 'b')]));
  expect(joined.records.has('b')).toBe(false);
  expect(squareMetres(joined)[0]).toBeCloseTo(180, AREA_DIGITS);
  expect(() => joinAreas(document, [only(document, 'a'), only(document, 'c')])).toThrow('do not touch');
});

it('puts a fringe round a green as an area of its own with the green left out', () => {
  const document = withAreas(area('a', box(0, 0, 10)));
  const ringed = applied(document, addCollar(document, only(document, 'a'), 'fringe', 1, 'f'));
  const band = only(ringed, 'f');
  expect(band.kind).toBe('fringe');
  expect(band.rings).toHaveLength(2);
  // Four sides of 10 m and four quarter discs.
  expect(squareMetres(ringed)[1]).toBeCloseTo(40 + Math.PI, 1);
  expect(() => addCollar(document, only(document, 'a'), 'fringe', 0, 'f')).toThrow('Width');
});

it('moves, puts in and takes out corners of outlines, holes and lines', () => {
  const start = withAreas(area('a', box(0, 0, 10)));
  const document = cutArea(start, only(start, 'a'), box(4, 4, 2), newId).apply(start);
  const at = (d: AtlasDocument, ring: number, corner: number): PlanePoint | undefined =>
    planePolygon(frameOf(d), only(d, 'a').rings)[ring]?.[corner];
  const moved = applied(document, moveCorner(document, only(document, 'a'), 0, 2, planePoint(12, 12)));
  const corners = planePolygon(frameOf(moved), only(moved, 'a').rings)[0] ?? [];
  expect(corners.some(({ eastM, northM }) => Math.abs(eastM - 12) + Math.abs(northM - 12) < 1e-3)).toBe(true);
  const put = applied(document, insertCorner(document, only(document, 'a'), 0, 0, planePoint(5, -1)));
  expect(at(put, 0, 1)?.northM).toBeCloseTo(-1, 3);
  let thinned = document;
  thinned = applied(thinned, removeCorner(thinned, only(thinned, 'a'), 1, 0));
  expect(only(thinned, 'a').rings[1]).toHaveLength(3);
  thinned = applied(thinned, removeCorner(thinned, only(thinned, 'a'), 1, 0));
  expect(only(thinned, 'a').rings).toHaveLength(1);
  thinned = applied(thinned, removeCorner(thinned, only(thinned, 'a'), 0, 0));
  expect(() => removeCorner(thinned, only(thinned, 'a'), 0, 0)).toThrow('three corners');
});

it('turns slope readings with their ground, and a whole turn comes back to where it was', () => {
  const start = putRecords('read', [
    {
      type: 'slopeReading',
      id: 's',
      at: frameOf(blank).toLonLat(planePoint(3, 4)),
      slopePct: 2,
      downhillBearingDeg: 300,
      accuracyPct: 0.3,
    },
  ]).apply(withAreas(area('a', box(0, 0, 10))));
  let document = start;
  for (let i = 0; i < 4; i += 1)
    document = applied(document, turnRecords('turned', ['a', 's'], planePoint(5, 5), 90));
  // Each quarter rounds to the kept decimals: four of them, and half the grid each way.
  const [was, is] = [start, document].map((d) => planePolygon(frameOf(d), only(d, 'a').rings)[0] ?? []);
  is?.forEach((corner, i) => {
    expect(distanceM(corner, was?.[i] ?? planePoint(NaN, NaN))).toBeLessThan(4 * 0.08e-3);
  });
  const quarter = turnRecords('turned', ['s'], planePoint(5, 5), 90).apply(start).records.get('s');
  expect(quarter?.type === 'slopeReading' ? quarter.downhillBearingDeg : null).toBe(30);
});

it('turns a plane judged by eye with its ground', () => {
  const at = frameOf(blank).toLonLat(planePoint(5, 0));
  const start = putRecords('judged', [
    { type: 'planeByEye', id: 'p', at, reachM: 8, slopePct: 2, downhillBearingDeg: 350, accuracyPct: 1 },
  ]).apply(blank);
  const turned = turnRecords('turned', ['p'], planePoint(5, 5), 90).apply(start).records.get('p');
  expect(turned).toMatchObject({ type: 'planeByEye', slopePct: 2, downhillBearingDeg: 80 });
  // South of the centre, a quarter clockwise carries it to the west.
  const placed = turned?.type === 'planeByEye' ? frameOf(blank).toPlane(turned.at) : null;
  expect(distanceM(placed ?? planePoint(NaN, NaN), planePoint(0, 5))).toBeLessThan(1e-3);
});
