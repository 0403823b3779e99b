import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { AtlasChecks, checkAtlas } from '../../../shared/atlas/checkAtlas.ts';
import type { Finding } from '../../../shared/atlas/checks/finding.ts';
import {
  atlasDocument,
  findRecord,
  frameOf,
  planePolygon,
  recordsOf,
} from '../../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords } from '../../../shared/atlas/edits.ts';
import { moveRecords } from '../../../shared/atlas/moving.ts';
import type { AtlasDocument, AtlasRecord, RecordOf } from '../../../shared/atlas/records.ts';
import { readAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { type LonLat, planePoint } from '../../../shared/geometry/points.ts';
import { insideDistanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';

const sample = readAtlasFile(
  readFileSync(resolve(import.meta.dirname, '../../../sample-course/ossel-down.geojson'), 'utf8'),
  'ossel-down.geojson',
);
const frame = frameOf(sample);

function get<T extends AtlasRecord['type']>(type: T, id: string): RecordOf<T> {
  const record = findRecord(sample, type, id);
  if (record === undefined) throw new Error(`the sample has no ${id}`);
  return record;
}

const withRecords = (...records: readonly AtlasRecord[]): AtlasDocument =>
  putRecords('test', records).apply(sample);
const at = (eastM: number, northM: number) => frame.toLonLat(planePoint(eastM, northM));

function eastward(position: LonLat): LonLat {
  const { eastM, northM } = frame.toPlane(position);
  return at(eastM + 3, northM);
}

const checked = new AtlasChecks();
/** What is found of a document, looking only at what is different from the one before: a test below holds it to a fresh look. */
const look = (document: AtlasDocument): readonly Finding[] => checked.check(document);

/** The one finding there is, which its mend (if it has one) must clear without leaving another. */
function only(document: AtlasDocument): Finding {
  const found = look(document);
  expect(found.map(({ id }) => id)).toHaveLength(1);
  const [one] = found;
  if (one === undefined) throw new Error('nothing found');
  if (one.mend !== null) {
    expect(one.mend.annotation).not.toBe('');
    expect(look(one.mend.apply(document))).toEqual([]);
  }
  expect(one.what).toMatch(/^[A-Z].*\.$/);
  expect(one.remedy).toMatch(/^[A-Z].*\.$/);
  return one;
}

describe('checks', () => {
  it('find nothing in the sample', () => {
    expect(checkAtlas(sample)).toEqual([]);
  });

  it('find a crossing outline, at the place, and untangle it', () => {
    const bunker = get('area', 'h4-bunker-3');
    const [ring = []] = bunker.rings;
    const [a, b, ...rest] = ring;
    if (a === undefined || b === undefined) throw new Error('too few corners');
    const found = only(withRecords({ ...bunker, rings: [[b, a, ...rest]] }));
    expect(found).toMatchObject({
      id: 'self-crossing:h4-bunker-3',
      severity: 'error',
      place: 'Hole 4, bunker West pot',
    });
    expect(found.at?.[0]).toBeCloseTo(a[0], 4);
  });

  it('keep the larger part of a crossing outline, whatever the order of its corners, and the holes in it', () => {
    // The eastern part is the larger; each has a hole.
    const ring = [at(500, 500), at(516, 484), at(516, 500), at(500, 492)];
    const square = (east: number, north: number) =>
      [0, 1, 2, 3].map((i) => at(east + (i === 1 || i === 2 ? 0.5 : 0), north + (i > 1 ? 0.5 : 0)));
    for (let turn = 0; turn < ring.length; turn += 1) {
      const rings = [[...ring.slice(turn), ...ring.slice(0, turn)], square(514, 492), square(501, 495)];
      const { mend } = only(withRecords({ ...get('area', 'h4-bunker-3'), id: 'x', rings }));
      const mended = mend?.apply(withRecords()).records.get('x');
      if (mended?.type !== 'area') throw new Error('no area');
      const [outer = [], ...holes] = planePolygon(frame, mended.rings);
      expect(Math.min(...outer.map(({ eastM }) => eastM))).toBeGreaterThan(504);
      expect(Math.max(...outer.map(({ eastM }) => eastM))).toBeCloseTo(516, 2);
      expect(holes.map((hole) => hole.length)).toEqual([4]);
    }
  });

  it('keep every part that trimming leaves of a green', () => {
    const [ring = []] = planePolygon(frame, get('area', 'h2-green').rings);
    const norths = ring.map(({ northM }) => northM);
    const middle = ring.reduce((sum, { northM }) => sum + northM, 0) / ring.length;
    const east = ring.reduce((sum, { eastM }) => sum + eastM, 0) / ring.length;
    const bar = (from: number, to: number) => [
      at(east - 1, from),
      at(east + 1, from),
      at(east + 1, to),
      at(east - 1, to),
    ];
    const [south, north] = [Math.min(...norths), Math.max(...norths)];
    expect(middle).toBeLessThan(north);
    const second = {
      ...get('area', 'h2-green'),
      id: 'x-green',
      name: 'Bar',
      rings: [bar(south - 4, north + 9)],
    };
    const document = withRecords(second);
    const greens = recordsOf(only(document).mend?.apply(document) ?? document, 'area').filter(({ id }) =>
      id.startsWith('x-green'),
    );
    const lengths = greens.map(({ rings }) => {
      const box = planePolygon(frame, rings)[0]?.map(({ northM }) => northM) ?? [];
      return Math.max(...box) - Math.min(...box);
    });
    expect(greens.map(({ id }) => id)).toEqual(['x-green', 'x-green-2']);
    expect(lengths[0]).toBeGreaterThan(8.9);
    expect(lengths[1]).toBeGreaterThan(3.9);
  });

  it('find overlapping greens and trim one', () => {
    const green = get('area', 'h2-green');
    const second = { ...green, id: 'x-green', name: 'Second', rings: [green.rings[0]?.map(eastward) ?? []] };
    const found = only(withRecords(second));
    expect(found).toMatchObject({ id: 'overlapping-greens:h2-green,x-green', severity: 'error' });
    expect(found.mend).not.toBeNull();
  });

  it('find a bunker without a lip and a tree without a height', () => {
    expect(only(withRecords({ ...get('area', 'h4-bunker-1'), lipHeightM: null }))).toMatchObject({
      check: 'bunker-without-lip',
      severity: 'warning',
      place: 'Hole 4, bunker Back right',
    });
    expect(only(withRecords({ ...get('area', 'h4-tree-1'), treeHeightM: null })).check).toBe(
      'tree-without-height',
    );
    expect(only(withRecords({ ...get('area', 'h4-tree-1'), canopyBaseM: 12 })).check).toBe(
      'crown-above-tree',
    );
  });

  it('find a green without elevation, or with little', () => {
    const readings = [...sample.records.keys()].filter((id) => /^h7-(spot|slope)/.test(id));
    expect(only(removeRecords('test', readings).apply(sample))).toMatchObject({
      id: 'green-without-elevation:h7-green',
      severity: 'error',
      place: 'Hole 7, green',
    });
    expect(only(removeRecords('test', readings.slice(4)).apply(sample)).check).toBe(
      'green-with-few-readings',
    );
  });

  it('find a hole without a flag, a ball or a green', () => {
    const flags = recordsOf(sample, 'holeLocation').filter(({ holeId }) => holeId === 'h2');
    expect(
      only(
        removeRecords(
          'test',
          flags.map(({ id }) => id),
        ).apply(sample),
      ),
    ).toMatchObject({
      id: 'hole-without-flag:h2',
      severity: 'error',
      place: 'Hole 2',
    });
    const balls = recordsOf(sample, 'ballPosition').filter(({ holeId }) => holeId === 'h2');
    expect(
      only(
        removeRecords(
          'test',
          balls.map(({ id }) => id),
        ).apply(sample),
      ).severity,
    ).toBe('note');
    expect(only(withRecords({ ...get('hole', 'h2'), greenId: null })).id).toBe('hole-without-green:h2');
  });

  it('find a flag off the green or nearer its edge than four paces, and move it in', () => {
    const flag = get('holeLocation', 'h4-flag-b');
    const off = only(withRecords({ ...flag, at: at(0, -16) }));
    expect(off).toMatchObject({ id: 'flag-off-green:h4-flag-b', severity: 'error', place: 'Hole 4, flag B' });
    expect(only(withRecords({ ...flag, at: at(0, -10.5) })).check).toBe('flag-near-edge');
    const moved = off.mend?.apply(sample).records.get('h4-flag-b');
    if (moved?.type !== 'holeLocation') throw new Error('no flag');
    const green = planePolygon(frame, get('area', 'h4-green').rings);
    expect(insideDistanceM(frame.toPlane(moved.at), green)).toBeGreaterThan(4 * 0.9144);
  });

  it.each([
    ['h4-tree-1', 'ball-in-tree', 'warning'],
    ['h4-penaltyArea-1', 'ball-in-penaltyArea', 'warning'],
    ['h4-outOfBounds-1', 'ball-in-outOfBounds', 'error'],
  ])('find a ball in %s', (areaId, check, severity) => {
    const [ring = []] = planePolygon(frame, get('area', areaId).rings);
    const inside = planePoint(
      ring.reduce((sum, q) => sum + q.eastM, 0) / ring.length,
      ring.reduce((sum, q) => sum + q.northM, 0) / ring.length,
    );
    const found = only(withRecords({ ...get('ballPosition', 'h4-ball-8'), at: frame.toLonLat(inside) }));
    expect(found).toMatchObject({
      check,
      severity,
      place: 'Hole 4, ball 8',
      recordIds: ['h4-ball-8', areaId],
    });
  });

  it('move a ball out of two trees into none, nor out of bounds', () => {
    const disc = (east: number, north: number, radius: number) =>
      Array.from({ length: 24 }, (_, k) =>
        at(east + radius * Math.cos((k * Math.PI) / 12), north + radius * Math.sin((k * Math.PI) / 12)),
      );
    const tree = get('area', 'h4-tree-1');
    const document = withRecords(
      { ...tree, id: 'x-tree-1', rings: [disc(300, 300, 4)] },
      { ...tree, id: 'x-tree-2', rings: [disc(305, 300, 4)] },
      { ...get('area', 'h4-outOfBounds-1'), id: 'x-out', rings: [disc(300, 306, 3)] },
      { ...get('ballPosition', 'h4-ball-8'), at: at(302, 300.5) },
    );
    const found = look(document);
    expect(found.map(({ check }) => check)).toEqual(['ball-in-tree', 'ball-in-tree']);
    for (const { mend } of found) expect(look(mend?.apply(document) ?? document)).toEqual([]);
  });

  it('doubt a height that stands half a foot from its neighbours on a green, and no other', () => {
    const green = planePolygon(frame, get('area', 'h4-green').rings);
    const inner = recordsOf(sample, 'spotHeight').filter(
      ({ at: place }) =>
        pointInPolygon(frame.toPlane(place), green) && insideDistanceM(frame.toPlane(place), green) > 4,
    );
    expect(inner.length).toBeGreaterThan(8);
    const found = inner.map((spot) =>
      look(withRecords({ ...spot, heightM: spot.heightM + 0.3 })).map(({ id }) => id),
    );
    const itself = found.filter((ids, i) => ids.includes(`height-disagrees:${inner[i]?.id ?? ''}`));
    expect(itself.length / inner.length).toBeGreaterThan(0.9);
    expect(found.flat().length - itself.length).toBeLessThan(inner.length / 2);
  });

  it('find things drawn twice', () => {
    const bunker = get('area', 'h2-bunker-2');
    expect(only(withRecords({ ...bunker, id: 'z-bunker' })).id).toBe('duplicate-area:h2-bunker-2,z-bunker');
    const spot = get('spotHeight', 'h2-spot-005');
    expect(only(withRecords({ ...spot, id: 'z-spot' })).severity).toBe('note');
    const apart = withRecords({ ...spot, id: 'z-spot', heightM: spot.heightM + 0.05 });
    expect(only(apart).what).toContain('differ by 5\u00a0cm');
    const [inYards] = new AtlasChecks({ system: 'yards', paceM: 0.9 }).check(apart);
    expect(inYards?.what).toContain('differ by 2\u00a0in');
    expect(only(withRecords({ ...get('holeLocation', 'h2-flag-a'), label: 'B' })).id).toBe(
      'duplicate-flag-label:h2-flag-a,h2-flag-b',
    );
    expect(only(withRecords({ ...get('hole', 'h7'), label: '4' })).check).toBe('duplicate-hole-label');
    expect(only(withRecords({ ...get('hole', 'h7'), line: null })).what).toContain('played up the sheet');
  });

  it('find lines, flags, balls, landmarks and slopes put down twice, unless they say something else', () => {
    const [line] = recordsOf(sample, 'line');
    const [slope] = recordsOf(sample, 'slopeReading');
    const ball = get('ballPosition', 'h4-ball-8');
    const flag = get('holeLocation', 'h2-flag-a');
    if (line === undefined || slope === undefined) throw new Error('the sample has no line or slope');
    expect(only(withRecords({ ...line, id: 'z', positions: line.positions.toReversed() })).id).toBe(
      `duplicate-line:${line.id},z`,
    );
    expect(only(withRecords({ ...flag, id: 'z', label: 'Z' })).id).toBe('duplicate-flag:h2-flag-a,z');
    expect(look(withRecords({ ...flag, id: 'z', label: 'Z', sheet: 'Sunday' }))).toEqual([]);
    expect(only(withRecords({ ...ball, id: 'z', label: '99' })).id).toBe('duplicate-ball:h4-ball-8,z');
    expect(look(withRecords({ ...ball, id: 'z', label: '99', lie: 'buried' }))).toEqual([]);
    expect(only(withRecords({ ...slope, id: 'z' })).id).toBe(`duplicate-slope:${slope.id},z`);
    const post = { type: 'landmark', name: 'Post', at: at(0, 30) } as const;
    expect(only(withRecords({ ...post, id: 'y' }, { ...post, id: 'z' })).id).toBe('duplicate-landmark:y,z');
  });

  it('find an outline left open and a line that almost meets itself', () => {
    const arc = (from: number, to: number, count: number) =>
      Array.from({ length: count }, (_, k) => {
        const angle = from + ((to - from) * k) / (count - 1);
        return at(300 + 9 * Math.cos(angle), 300 + 9 * Math.sin(angle));
      });
    const bunker = { ...get('area', 'h4-bunker-1'), id: 'x' };
    expect(only(withRecords({ ...bunker, rings: [arc(0, 4.5, 30)] })).id).toBe('unclosed-outline:x');
    expect(look(withRecords({ ...bunker, rings: [arc(0, 6.1, 30)] }))).toEqual([]);
    const contour = { type: 'line', id: 'x', kind: 'contour', name: '', heightM: 40 } as const;
    expect(only(withRecords({ ...contour, positions: arc(0, 6.2, 30) })).id).toBe('unclosed-line:x');
    expect(look(withRecords({ ...contour, positions: arc(0, 4.5, 30) }))).toEqual([]);
  });

  it('find ids that name nothing', () => {
    const dangling = atlasDocument([
      ...sample.records.values(),
      {
        type: 'choice',
        id: 'c1',
        ballId: 'h4-ball-1',
        flagId: 'h4-ball-2',
        playerId: 'player-corin',
        optionId: 'putt:putter',
        note: '',
      },
    ]);
    expect(only(dangling).id).toBe('unknown-reference:c1,h4-ball-2');
  });

  it('want one player and one day in use', () => {
    const none = withRecords(...recordsOf(sample, 'player').map((player) => ({ ...player, inUse: false })));
    expect(only(none).id).toBe('player-in-use:');
    const both = withRecords(...recordsOf(sample, 'conditions').map((day) => ({ ...day, inUse: true })));
    expect(only(both).what).toBe('More than one day is in use.');
  });

  it('look after an edit only at what it touched, and find what a fresh look finds', () => {
    const areas = Array.from({ length: 1500 }, (_, i) => {
      const [east, north] = [(i % 50) * 12 - 300, Math.floor(i / 50) * 12 + 500];
      return {
        ...get('area', 'h4-bunker-1'),
        id: `many-${String(i)}`,
        rings: [
          Array.from({ length: 12 }, (__, k) =>
            at(east + 4 * Math.cos(k / 1.92), north + 4 * Math.sin(k / 1.92)),
          ),
        ],
      };
    });
    const checks = new AtlasChecks();
    const lookAt = (
      document: AtlasDocument,
    ): { readonly breaths: number; readonly found: readonly Finding[] } => {
      const steps = checks.steps(document);
      for (let breaths = 0; ; breaths += 1) {
        const { done, value } = steps.next();
        if (done === true) return { breaths, found: value };
      }
    };
    const facts = (found: readonly Finding[]) => found.map(({ mend: _, ...rest }) => rest);
    const large = withRecords(...areas);
    const first = lookAt(large);
    expect(first.found).toEqual([]);
    expect(first.breaths).toBeGreaterThan(40);
    const spot = get('spotHeight', 'h4-spot-005');
    const edits: readonly Edit[] = [
      putRecords('onto its neighbour', [{ ...get('area', 'h4-bunker-1'), id: 'twin' }]),
      putRecords('without a lip', [{ ...get('area', 'h4-bunker-2'), lipHeightM: null }]),
      putRecords('a blunder', [{ ...spot, heightM: spot.heightM + 0.5 }]),
      moveRecords('the green', ['h4-green'], 1, 0),
      removeRecords('the twin', ['h4-bunker-1']),
      putRecords('another label', [{ ...get('hole', 'h7'), label: '4' }]),
      moveRecords('a bunker far off', ['many-700'], 12, 0),
    ];
    const states = [large];
    for (const edit of edits) states.push(edit.apply(states.at(-1) ?? large));
    // On and back again, as with undo.
    for (const state of [...states.slice(1), ...states.toReversed().slice(1)]) {
      const { breaths, found } = lookAt(state);
      expect(facts(found)).toEqual(facts(checkAtlas(state)));
      expect(breaths).toBeLessThan(12);
    }
    expect(lookAt(states.at(-1) ?? large).found.length).toBeGreaterThan(3);
  });
});
