import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atlasDocument,
  findRecord,
  frameOf,
  planePolygon,
  sameDocument,
} from '../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords, together, useRecord } from '../../shared/atlas/edits.ts';
import { moveRecords, placeAtlas } from '../../shared/atlas/moving.ts';
import {
  addCollar,
  cutArea,
  insertCorner,
  joinAreas,
  splitArea,
  turnRecords,
} from '../../shared/atlas/shaping.ts';
import {
  cancelGesture,
  commit,
  currentState,
  endGesture,
  gestureTo,
  type History,
  historyOf,
  redo,
  undo,
} from '../../shared/atlas/history.ts';
import type { AtlasDocument, AtlasRecord } from '../../shared/atlas/records.ts';
import { AtlasChecks, checkAtlas } from '../../shared/atlas/checkAtlas.ts';
import { readAtlasFile, writeAtlasFile } from '../../shared/formats/atlasFile.ts';
import { bearingDeg, pointAlong } from '../../shared/geometry/bearing.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { lonLat, planePoint } from '../../shared/geometry/points.ts';
import { centroid, distanceM } from '../../shared/geometry/ring.ts';
import { circle } from '../../shared/geometry/turn.ts';
import { areaKinds, lieQualities } from '../../shared/words/vocabulary.ts';

const anchor = lonLat(-30, 45);
const frame = localFrame(anchor);

const empty = atlasDocument([
  { type: 'atlas', id: 'atlas', name: 'Random', kind: 'course', placed: false, anchor, note: '' },
]);

const metres = fc.double({ min: -300, max: 300, noNaN: true });
const place = fc.tuple(metres, metres).map(([eastM, northM]) => frame.toLonLat(planePoint(eastM, northM)));
const names = fc.string({ maxLength: 12, unit: 'grapheme' });
const number = (name: string, most = 6) => fc.nat(most).map((i) => `${name}${String(i)}`);
const measure = fc.double({ min: 0.1, max: 9, noNaN: true });

const holes = fc.record({
  type: fc.constant('hole' as const),
  id: number('hole', 3),
  label: fc.nat(99).map(String),
  order: fc.nat(99),
  name: names,
  par: fc.constantFrom(3, 4, 5, null),
  greenId: fc.constant(null),
  line: fc.option(fc.array(place, { minLength: 2, maxLength: 4 })),
});
/** Star-shaped, hence never crossing itself. */
const areas = fc
  .record({
    id: number('area'),
    kind: fc.constantFrom(...areaKinds),
    name: names,
    middle: fc.tuple(metres, metres),
    radii: fc.array(fc.double({ min: 1, max: 20, noNaN: true }), { minLength: 3, maxLength: 12 }),
    lipHeightM: fc.option(measure),
    clockwise: fc.boolean(),
  })
  .map(({ id, kind, name, middle: [eastM, northM], radii, lipHeightM, clockwise }) => ({
    type: 'area' as const,
    id,
    kind,
    name,
    rings: [
      radii.map((r, i) =>
        frame.toLonLat(
          pointAlong(planePoint(eastM, northM), ((clockwise ? 360 : -360) * i) / radii.length, r),
        ),
      ),
    ],
    lipHeightM,
    treeHeightM: null,
    canopyBaseM: null,
  }));
const points = fc.oneof(
  fc.record({
    type: fc.constant('spotHeight' as const),
    id: number('spot'),
    at: place,
    heightM: fc.double({ min: -100, max: 100, noNaN: true }),
    accuracyM: measure,
  }),
  fc.record({
    type: fc.constant('ballPosition' as const),
    id: number('ball'),
    holeId: number('hole', 3),
    label: fc.nat(9).map(String),
    name: names,
    at: place,
    lie: fc.constantFrom(...lieQualities),
    coverOverride: fc.constant(null),
  }),
  fc.record({
    type: fc.constant('landmark' as const),
    id: number('mark'),
    name: names,
    at: place,
  }),
  fc.record({
    type: fc.constant('line' as const),
    id: number('line'),
    kind: fc.constantFrom('tierEdge', 'ridge', 'contour', 'wall'),
    name: names,
    positions: fc.array(place, { minLength: 2, maxLength: 4 }),
    heightM: fc.option(measure),
  }),
  fc.record(
    {
      type: fc.constant('conditions' as const),
      id: number('day', 2),
      name: names,
      stimpFt: fc.double({ min: 6, max: 14, noNaN: true }),
      firmness: fc.double({ min: 0, max: 1, noNaN: true }),
      moisture: fc.constant('dry' as const),
      windMps: measure,
      windFromDeg: fc.double({ min: 0, max: 360, noNaN: true }),
      inUse: fc.boolean(),
      flagstickIn: fc.boolean(),
      heightAboveSeaM: fc.double({ min: -400, max: 4000, noNaN: true }),
      temperatureC: fc.double({ min: -20, max: 45, noNaN: true }),
    },
    {
      requiredKeys: [
        ...(['type', 'id', 'name', 'stimpFt', 'firmness', 'moisture'] as const),
        ...(['windMps', 'windFromDeg', 'inUse'] as const),
      ],
    },
  ),
);
const records: fc.Arbitrary<AtlasRecord> = fc.oneof(holes, areas, points);
const ids = fc.array(
  fc.oneof(
    number('hole', 3),
    number('area'),
    number('line'),
    number('spot'),
    number('ball'),
    number('mark'),
    fc.constant('atlas'),
  ),
  { minLength: 1, maxLength: 4 },
);

const edits: fc.Arbitrary<Edit> = fc.oneof(
  fc.array(records, { minLength: 1, maxLength: 4 }).map((put) => putRecords('put', put)),
  ids.map((gone) => removeRecords('took out', gone)),
  fc.tuple(ids, metres, metres).map(([moved, east, north]) => moveRecords('moved', moved, east, north)),
  fc
    .tuple(ids, fc.integer({ min: -180, max: 180 }))
    .map(([turned, by]) => turnRecords('turned', turned, planePoint(0, 0), by)),
  // Shapes made of shapes: a hole or a bite, a collar, two parts, one of two; each refuses where it cannot be.
  fc
    .tuple(number('area'), number('area'), fc.constantFrom('cut', 'collar', 'part', 'join', 'corner'))
    .map(([one, other, how]) => orNothing(shapingOf(one, other, how))),
  number('day', 2).map((id) => orNothing(useRecord('chose a day', 'conditions', id))),
  fc
    .tuple(ids, records)
    .map(([gone, put]) => together('swapped', [removeRecords('out', gone), putRecords('in', [put])])),
);

type Shaping = 'cut' | 'collar' | 'part' | 'join' | 'corner';

/** What the hand does to the outline of an area, and to two of them. */
function shapingOf(one: string, other: string, how: Shaping): Edit {
  return {
    annotation: how,
    apply: (document) => {
      const area = findRecord(document, 'area', one);
      const second = findRecord(document, 'area', other);
      if (area === undefined) return document;
      const [outer = []] = planePolygon(frameOf(document), area.rings);
      const middle = centroid(outer);
      const made = {
        cut: () => cutArea(document, area, circle(middle, 0.8), () => 'area5'),
        collar: () => addCollar(document, area, 'fringe', 1, 'area6'),
        part: () =>
          splitArea(
            document,
            area,
            [planePoint(middle.eastM, -900), planePoint(middle.eastM, 900)],
            () => 'area4',
          ),
        join: () => joinAreas(document, second === undefined ? [area] : [area, second]),
        corner: () => insertCorner(document, area, 0, 0, middle),
      }[how]();
      return made.apply(document);
    },
  };
}

/** An edit that refuses leaves the document alone, as the window does with it. */
function orNothing(edit: Edit): Edit {
  return {
    ...edit,
    apply: (document) => {
      try {
        return edit.apply(document);
      } catch {
        return document;
      }
    },
  };
}

type Act = { readonly edit: Edit; readonly how: 'step' | 'drag' | 'cancelled' } | 'undo' | 'redo';
const acts: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ edit: edits, how: fc.constantFrom('step', 'drag', 'cancelled') }) },
  { weight: 2, arbitrary: fc.constantFrom('undo', 'redo') },
);

function act(history: History<AtlasDocument>, one: Act): History<AtlasDocument> {
  if (one === 'undo') return undo(history);
  if (one === 'redo') return redo(history);
  const after = one.edit.apply(currentState(history));
  switch (one.how) {
    case 'step':
      return commit(history, after, one.edit.annotation);
    case 'drag':
      return endGesture(gestureTo(gestureTo(history, empty), after), one.edit.annotation);
    case 'cancelled':
      return cancelGesture(gestureTo(history, after));
  }
}

describe('any sequence of edits', () => {
  it('undone to the start and redone to the end gives equal documents, and passes through equal states', () => {
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 25 }), (sequence) => {
        const done = sequence.reduce(act, historyOf(empty));
        const end = currentState(done);
        const states: AtlasDocument[] = [end];
        let back = done;
        while (back.past.length > 0) {
          back = undo(back);
          states.unshift(currentState(back));
        }
        expect(sameDocument(states[0] ?? end, empty)).toBe(true);
        // Checks that follow the document from step to step find what a fresh look finds.
        const checks = new AtlasChecks();
        for (const state of states)
          expect(checks.check(state).map(({ id, place: where }) => `${id} ${where}`)).toEqual(
            checkAtlas(state).map(({ id, place: where }) => `${id} ${where}`),
          );
        let forth = back;
        for (const state of states.slice(1)) {
          forth = redo(forth);
          expect(sameDocument(currentState(forth), state)).toBe(true);
        }
        expect(sameDocument(currentState(forth), end)).toBe(true);
      }),
      { seed: 41, numRuns: 80 },
    );
  });

  it('leaves earlier documents as they were', () => {
    fc.assert(
      fc.property(fc.array(edits, { maxLength: 8 }), (sequence) => {
        let document = empty;
        for (const edit of sequence) {
          const before = document;
          const copy = { records: structuredClone(new Map(before.records)) };
          document = edit.apply(before);
          expect(sameDocument(before, copy)).toBe(true);
        }
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  it('gives a document whose file reads back equal, and checks that end', () => {
    fc.assert(
      fc.property(fc.array(edits, { maxLength: 12 }), (sequence) => {
        const made = sequence.reduce((document, edit) => edit.apply(document), empty);
        // Balls of holes never put are for the reference check, and refused in a file.
        const dangling = checkAtlas(made).filter(({ check }) => check === 'unknown-reference');
        const document = dangling.reduce((before, { mend }) => mend?.apply(before) ?? before, made);
        expect(checkAtlas(document).filter(({ check }) => check === 'unknown-reference')).toEqual([]);
        const text = writeAtlasFile(document);
        const back = readAtlasFile(text, 'random');
        expect(sameDocument(back, document)).toBe(true);
        expect(writeAtlasFile(back)).toBe(text);
      }),
      { seed: 43, numRuns: 80 },
    );
  });
});

describe('placing on the earth', () => {
  it('keeps every shape to the millimetre and turns it as asked', () => {
    fc.assert(
      fc.property(
        fc.array(areas, { minLength: 1, maxLength: 3 }),
        fc.double({ min: -179, max: 179, noNaN: true }),
        fc.double({ min: -75, max: 75, noNaN: true }),
        fc.integer({ min: -360, max: 360 }),
        (put, lon, lat, turn) => {
          const before = putRecords('put', put).apply(empty);
          const after = placeAtlas('placed', lonLat(lon, lat), turn).apply(before);
          const [from, to] = [frameOf(before), frameOf(after)];
          for (const [id, record] of before.records) {
            const moved = after.records.get(id);
            if (record.type !== 'area' || moved?.type !== 'area') continue;
            const here = (record.rings[0] ?? []).map(from.toPlane);
            const there = (moved.rings[0] ?? []).map(to.toPlane);
            const [a, b] = [here[0], here[1]];
            const [c, d] = [there[0], there[1]];
            if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
            expect(Math.abs(distanceM(a, b) - distanceM(c, d))).toBeLessThan(1e-3);
            if (distanceM(a, b) < 2) continue;
            const turned = bearingDeg(c, d) - bearingDeg(a, b) - turn;
            expect(Math.abs(((turned + 5 * 360 + 180) % 360) - 180)).toBeLessThan(0.02);
          }
        },
      ),
      { seed: 44, numRuns: 60 },
    );
  });
});
