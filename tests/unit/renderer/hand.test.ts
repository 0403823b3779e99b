import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { Hand } from '../../../renderer/survey/hand.ts';
import type { Spot } from '../../../renderer/survey/handState.ts';
import { handDrawing } from '../../../renderer/survey/handView.ts';
import { sketchFacts } from '../../../renderer/survey/sketch.ts';
import { keyWords, toolForKey, tools } from '../../../renderer/survey/tools.ts';
import { newAtlas } from '../../../renderer/store/newAtlas.ts';
import { frameOf, planePolygon, recordsOf, sameDocument } from '../../../shared/atlas/document.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { writeAtlasFile } from '../../../shared/formats/writeAtlasFile.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { polygonAreaM2 } from '../../../shared/geometry/ring.ts';
import { METRES_PER_YARD } from '../../../shared/units/conversions.ts';

/** A hand over a sheet of its own, every step it makes written down. */
class Bench {
  document: AtlasDocument = newAtlas();
  readonly steps: string[] = [];
  readonly hand = new Hand();
  readOnly = false;
  #ids = 0;

  constructor() {
    this.hand.attach(() => ({
      document: this.document,
      holeId: 'hole-1',
      units: { system: 'yards', paceM: 0.9 },
      readOnly: this.readOnly,
      edit: ({ annotation, apply }) => {
        const after = apply(this.document);
        if (after === this.document) return;
        this.document = after;
        this.steps.push(annotation);
      },
      newId: () => {
        this.#ids += 1;
        return `id-${String(this.#ids)}`;
      },
      middle: () => planePoint(0, 0),
      metresPerPx: () => 0.05,
    }));
  }

  spot(east: number, north: number): Spot {
    return { at: planePoint(east, north), metresPerPx: 0.05, alt: false };
  }

  click(east: number, north: number): void {
    this.hand.press(this.spot(east, north));
    this.hand.release(this.spot(east, north));
  }

  drag(from: readonly [number, number], ...to: readonly (readonly [number, number])[]): void {
    this.hand.press(this.spot(...from));
    for (const point of to) this.hand.dragTo(this.spot(...point));
    this.hand.release(this.spot(...(to.at(-1) ?? from)));
  }

  keys(...keys: readonly string[]): void {
    for (const key of keys) {
      const shift = key.startsWith('Shift+');
      this.hand.key(shift ? key.slice(6) : key, { shift, onPlate: true });
    }
  }

  areas(): readonly { readonly kind: string; readonly areaM2: number }[] {
    return recordsOf(this.document, 'area').map(({ kind, rings }) => ({
      kind,
      areaM2: polygonAreaM2(planePolygon(frameOf(this.document), rings)),
    }));
  }
}

it('traces by clicks, closes on the first corner, and gives the hole its green in the same step', () => {
  const bench = new Bench();
  bench.keys('g');
  for (const [east, north] of [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
    [0.2, 0.2],
  ] as const)
    bench.click(east, north);
  expect(bench.steps).toEqual(['traced a green']);
  expect(bench.areas()).toEqual([{ kind: 'green', areaM2: expect.closeTo(100, 2) as number }]);
  expect(recordsOf(bench.document, 'hole')[0]?.greenId).toBe(recordsOf(bench.document, 'area')[0]?.id);
});

it('keeps what the keyboard walked, takes a typed side exactly, and takes corners back', () => {
  const bench = new Bench();
  bench.keys('f', 'Shift+ArrowRight', 'Enter', ...Array<string>(6).fill('Shift+ArrowRight'), 'Enter');
  bench.hand.type('side', '2 yd 1 ft 6');
  bench.hand.type('bearing', '0');
  bench.hand.putSide();
  const corners = bench.hand.state.sketch?.corners ?? [];
  expect(corners).toHaveLength(3);
  expect((corners[1]?.eastM ?? NaN) - (corners[0]?.eastM ?? NaN)).toBeCloseTo(6 * METRES_PER_YARD, 12);
  expect((corners[2]?.northM ?? NaN) - (corners[1]?.northM ?? NaN)).toBeCloseTo(2.5 * METRES_PER_YARD, 12);
  bench.keys('Backspace');
  expect(bench.hand.state.sketch?.corners).toHaveLength(2);
  bench.hand.type('side', 'far');
  bench.hand.putSide();
  expect(bench.hand.state.trouble).toMatchObject({ field: 'This side' });
  expect(bench.hand.state.sketch?.corners).toHaveLength(2);
  expect(bench.steps).toEqual([]);
});

it('makes one step of a stroke, thinned, and takes the whole stroke back at once', () => {
  const bench = new Bench();
  const round = Array.from({ length: 120 }, (_, i): readonly [number, number] => [
    8 * Math.cos((i * Math.PI) / 60),
    8 * Math.sin((i * Math.PI) / 60),
  ]);
  bench.keys('g');
  bench.drag([8, 0], ...round, [8, 0]);
  expect(bench.steps).toEqual(['traced a green']);
  expect(bench.areas()[0]?.areaM2).toBeCloseTo(64 * Math.PI, -1);
  // 22 chords are the fewest that keep within 8 cm of this circle; halving keeps at most twice as many of the 121 points.
  expect(recordsOf(bench.document, 'area')[0]?.rings[0]?.length).toBeLessThanOrEqual(44);
  bench.keys('r');
  bench.drag([20, 0], [22, 0], [24, 1], [25, 3]);
  expect(bench.hand.state.sketch?.corners.length).toBeGreaterThan(1);
  bench.keys('Backspace');
  expect(bench.hand.state.sketch).toBeNull();
});

it('sets a height down with a click and a number, the next click keeping it', () => {
  const bench = new Bench();
  bench.keys('1');
  bench.click(1, 1);
  bench.hand.type('value', '12 ft 6');
  bench.click(2, 2);
  expect(bench.steps).toEqual(['added a spot height']);
  // Not a number: it stays in hand with the reason, and the next click does not lose it.
  bench.hand.type('value', 'high');
  bench.click(3, 3);
  expect(bench.hand.state.waiting?.at).toEqual(planePoint(2, 2));
  expect(bench.hand.state.trouble).not.toBeNull();
  bench.keys('Escape');
  expect(bench.hand.state.waiting).toBeNull();
  expect(recordsOf(bench.document, 'spotHeight').map(({ heightM }) => heightM)).toEqual([
    expect.closeTo(12.5 * 0.3048, 9),
  ]);
});

it('snaps to a neighbour, and drags corners and bodies in one step each', () => {
  const bench = new Bench();
  bench.keys('a');
  for (const corner of [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ] as const) {
    const [east, north] = corner;
    bench.click(east, north);
  }
  bench.keys('Enter', 'w');
  bench.click(10.3, 0.2);
  expect(bench.hand.state.sketch?.corners[0]?.eastM).toBeCloseTo(10, 3);
  bench.keys('Escape', 's');
  bench.click(5, 5);
  bench.drag([10, 10], [11, 11], [13, 13]);
  bench.drag([5, 5], [6, 5], [8, 5]);
  expect(bench.steps).toEqual(['traced an approach', 'moved a corner of the approach', 'moved the approach']);
  bench.drag([8, 0], [8, -1], [8, -4]);
  expect(bench.steps.at(-1)).toMatch(/^(put a corner in|moved) the approach$/);
});

it('sets a landmark down, names it, and the file keeps it', () => {
  const bench = new Bench();
  bench.keys('5');
  bench.click(4, 3);
  expect(bench.steps).toEqual(['set a landmark']);
  const kept = readAtlasFile(writeAtlasFile(bench.document), 'kept.geojson');
  expect(sameDocument(kept, bench.document)).toBe(true);
  expect(recordsOf(kept, 'landmark')).toHaveLength(1);
});

it('changes nothing in an atlas that is only to be read', () => {
  const bench = new Bench();
  bench.readOnly = true;
  bench.keys('g', '1', 'Delete', 'ArrowUp');
  bench.click(0, 0);
  bench.drag([0, 0], [5, 5], [9, 0]);
  bench.keys('Enter', 'Enter');
  expect(bench.steps).toEqual([]);
});

const place = fc.tuple(fc.integer({ min: -12, max: 12 }), fc.integer({ min: -12, max: 12 }));
const action = fc.oneof(
  place.map((at) => ({ do: 'click' as const, at })),
  fc.tuple(place, place, place).map((path) => ({ do: 'drag' as const, path })),
  fc
    .constantFrom(
      'g',
      'b',
      't',
      'c',
      '1',
      '3',
      '4',
      's',
      'm',
      'Enter',
      'Backspace',
      'Escape',
      'ArrowUp',
      'Shift+ArrowLeft',
      '[',
      '.',
      'Delete',
      ' ',
    )
    .map((key) => ({ do: 'key' as const, key })),
);

it('makes at most one step of any one thing a person does, and none of a gesture given up', () => {
  fc.assert(
    fc.property(fc.array(action, { maxLength: 40 }), (actions) => {
      const bench = new Bench();
      for (const one of actions) {
        const before = bench.steps.length;
        if (one.do === 'click') bench.click(...one.at);
        else if (one.do === 'drag') bench.drag(...one.path);
        else bench.keys(one.key);
        // A move by keys rests until the next thing is done, which then makes two: the move and itself.
        expect(bench.steps.length - before).toBeLessThanOrEqual(2);
      }
      bench.keys('Escape', 'Escape', 'Escape', 'Escape', 'Escape', 's');
      const settled = bench.document;
      bench.hand.press(bench.spot(1, 1));
      bench.hand.dragTo(bench.spot(6, 6));
      bench.keys('Escape');
      bench.hand.release(bench.spot(6, 6));
      bench.keys('b');
      bench.click(20, 20);
      bench.click(22, 20);
      bench.drag([22, 22], [20, 23], [19, 22]);
      bench.keys('Escape', 'Escape');
      expect(bench.document).toBe(settled);
      expect(bench.hand.state).toMatchObject({ sketch: null, drag: null, waiting: null });
    }),
    { numRuns: 150 },
  );
});

it('tells the side, the way round and the area as they would be with the next corner', () => {
  const corners: readonly PlanePoint[] = [planePoint(0, 0), planePoint(3, 0)];
  const facts = sketchFacts({ corners, next: planePoint(3, 4), along: [], stroke: null, runs: [1, 1] }, true);
  expect(facts).toEqual({ sideM: 4, sideBearingDeg: 0, aroundM: 12, areaM2: 6 });
  expect(
    sketchFacts({ corners, next: planePoint(3, 4), along: [], stroke: null, runs: [1, 1] }, false)?.aroundM,
  ).toBe(7);
  expect(sketchFacts({ corners: [], next: null, along: [], stroke: null, runs: [] }, true)).toBeNull();
});

it('holds several things, moves, copies and takes them out together, each as one step', () => {
  const bench = new Bench();
  const square = (east: number): void => {
    bench.keys('b');
    for (const [e, n] of [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ] as const)
      bench.click(east + e, n);
    bench.keys('Enter', 's');
  };
  for (const east of [0, 10, 20]) square(east);
  bench.keys('5');
  bench.click(31, 1);
  bench.keys('s', 'Escape');
  const before = bench.document;
  bench.steps.length = 0;
  const shifted = (east: number, north: number): Spot => ({ ...bench.spot(east, north), shift: true });
  // A frame round two of them, a click with Shift on the third, and one more to let go of the first again.
  bench.hand.press(shifted(-1, -1));
  bench.hand.dragTo(shifted(13, 3));
  bench.hand.release(shifted(13, 3));
  expect([bench.hand.state.heldId, ...bench.hand.state.others]).toHaveLength(2);
  for (const east of [21, 31, 1]) {
    bench.hand.press(shifted(east, 1));
    bench.hand.release(shifted(east, 1));
  }
  expect(bench.steps).toEqual([]);
  bench.drag([11, 1], [11, 4]);
  expect(bench.steps).toEqual(['moved 3 things']);
  const east = (document: AtlasDocument): readonly string[] =>
    recordsOf(document, 'area').map(({ rings }) => {
      const { eastM, northM } = frameOf(document).toPlane(rings[0]?.[0] ?? frameOf(document).anchor);
      return `${eastM.toFixed(1)} ${northM.toFixed(1)}`;
    });
  expect(east(bench.document)).toEqual(['0.0 0.0', '10.0 3.0', '20.0 3.0']);
  bench.keys('ArrowUp', 'ArrowUp', 'Enter');
  expect(bench.steps.at(-1)).toBe('moved 3 things');
  bench.hand.copy();
  expect(recordsOf(bench.document, 'area')).toHaveLength(5);
  expect(recordsOf(bench.document, 'landmark')).toHaveLength(2);
  bench.keys('Delete');
  expect(bench.steps.slice(1)).toEqual(['moved 3 things', 'copied 3 things', 'took out 3 things']);
  expect(recordsOf(bench.document, 'area')).toHaveLength(3);
  // All of a kind, then another kind for all of them.
  bench.click(1, 1);
  bench.hand.holdAllLike();
  bench.hand.changeKinds('bare');
  expect(bench.steps.at(-1)).toBe('made 3 bunkers bare ground');
  expect(new Set(bench.areas().map(({ kind }) => kind))).toEqual(new Set(['bare']));
  bench.keys('Escape');
  expect(bench.hand.state.heldId).toBeNull();
  expect(before.records.size).toBe(bench.document.records.size);
});

it('follows an outline between two places on it, the shorter way or the other, and closes along it', () => {
  const bench = new Bench();
  const click = (places: readonly (readonly [number, number])[]): void => {
    for (const [east, north] of places) bench.click(east, north);
  };
  bench.keys('g');
  click([
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ]);
  bench.keys('Enter', 'a');
  // From the left side to the right one, then round below and back: along the top, 30 m in all.
  click([
    [0, 5],
    [10, 5],
  ]);
  expect(bench.hand.state.sketch?.corners).toHaveLength(4);
  bench.keys('Backspace');
  expect(bench.hand.state.sketch?.corners).toHaveLength(1);
  bench.hand.hover(bench.spot(10, 4));
  expect(bench.hand.state.sketch?.along.map(({ northM }) => Math.round(northM))).toEqual([0, 0]);
  bench.keys('x');
  expect(bench.hand.state.sketch?.along.map(({ northM }) => Math.round(northM))).toEqual([10, 10]);
  bench.keys('x');
  expect(bench.hand.state.sketch?.along).toEqual([]);
  bench.keys('x', 'Escape', 'a');
  click([
    [0, 5],
    [-5, 5],
    [-5, -5],
    [5, -5],
    [5, 0],
  ]);
  // Closed on its first corner along the green: no gap and no overlap.
  bench.click(0, 5);
  expect(bench.steps.at(-1)).toBe('traced an approach');
  expect(bench.areas().at(-1)).toEqual({ kind: 'approach', areaM2: expect.closeTo(75, 2) as number });
});

it('makes a path of its middle and a width, and keeps the width for the next', () => {
  const bench = new Bench();
  bench.keys('h');
  bench.hand.type('width', '2 m');
  for (const [east, north] of [
    [0, 0],
    [10, 0],
    [10, 10],
  ] as const)
    bench.click(east, north);
  bench.keys('Enter');
  // Two arms of 10 m, a round end to each, and a round bend.
  const [path] = bench.areas();
  expect(path?.kind).toBe('path');
  expect(Math.abs((path?.areaM2 ?? 0) - (40 + Math.PI - 1 + Math.PI / 4))).toBeLessThan(0.3);
  expect(bench.hand.state.typed).toEqual({ width: '2 m' });
  expect(bench.steps).toEqual(['traced a path']);
  bench.hand.type('width', 'wide');
  bench.click(20, 0);
  bench.click(20, 10);
  bench.keys('Enter');
  expect(bench.hand.state.trouble).toMatchObject({ field: 'Width' });
  expect(bench.hand.state.sketch?.corners).toHaveLength(2);
});

it('has a name and a key of its own for every tool', () => {
  expect(new Set(tools.map(({ name }) => name)).size).toBe(tools.length);
  // Capitals need Shift; keys of the hand itself are nobody's.
  expect(new Set([...tools.map(({ key }) => key), ...'nx[],.<>'.split('')]).size).toBe(tools.length + 8);
  for (const { key, name } of tools) {
    expect(name).toMatch(/^[A-Z]/);
    expect(keyWords(key)).toMatch(/^\+?[A-Z0-9]$/);
    expect(toolForKey(key)?.name).toBe(name);
  }
});

it.each(tools.map((tool) => [tool.name, tool] as const))(
  '%s: Escape gives up, Enter finishes, Backspace takes a corner back',
  (_, { id, group, key }) => {
    const bench = new Bench();
    const shown = /[A-Z]/.test(key) ? `Shift+${key}` : key;
    const corners = (): number => bench.hand.state.sketch?.corners.length ?? 0;
    const clickRound = (): void => {
      for (const [east, north] of [
        [0, 0],
        [5, 0],
        [5, 5],
      ] as const)
        bench.click(east, north);
    };
    bench.keys(shown);
    expect(bench.hand.state.tool).toBe(id);
    if (id === 'tree') {
      bench.hand.press(bench.spot(0, 0));
      bench.hand.dragTo(bench.spot(3, 0));
      bench.keys('Escape');
      bench.hand.release(bench.spot(3, 0));
      expect(bench.steps).toEqual([]);
      bench.keys(shown, 'ArrowUp', 'Enter');
      expect(bench.steps).toEqual(['traced a tree']);
    } else if (group === 'area' || group === 'line' || id === 'measure') {
      clickRound();
      bench.keys('Backspace');
      expect(corners()).toBe(2);
      bench.keys('Escape');
      expect(corners()).toBe(0);
      expect(bench.hand.state.tool).toBe(id);
      clickRound();
      bench.keys('Enter');
      expect(bench.hand.state.sketch).toBeNull();
      if (id === 'measure') expect(bench.hand.state.measured?.corners).toHaveLength(3);
      else expect(bench.steps).toHaveLength(1);
    } else if (group === 'point') {
      bench.keys('Escape');
      expect(bench.hand.state.tool).toBe('select');
      bench.keys(shown, 'ArrowUp', 'Enter');
      if (bench.hand.state.waiting !== null) {
        bench.keys('Escape');
        expect(bench.steps).toEqual([]);
        bench.keys('Enter');
        bench.hand.type('value', '2');
        bench.hand.type('bearing', 'N');
        bench.hand.keepWaiting();
      }
      expect(bench.steps).toHaveLength(1);
    } else {
      bench.keys('g');
      clickRound();
      bench.keys('Enter', 'Escape', 'Escape', shown, '.');
      expect(bench.hand.state.heldId).not.toBeNull();
      bench.keys('ArrowUp', 'Escape', 'Escape', 'Escape', 'Escape');
      expect(bench.hand.state).toMatchObject({ heldId: null, drag: null, tool: 'select' });
      expect(bench.steps).toEqual(['traced a green']);
    }
  },
);

it('snaps what the keys draw to shared edges, and walks on from the free place', () => {
  const bench = new Bench();
  const step = METRES_PER_YARD;
  const edge = 2.3 * step;
  bench.keys('a');
  for (const [east, north] of [
    [edge, -9],
    [20, -9],
    [20, 9],
    [edge, 9],
  ] as const)
    bench.click(east, north);
  bench.keys('Enter', 'w', 'Shift+ArrowLeft', 'Enter');
  bench.keys(...Array<string>(3).fill('Shift+ArrowRight'));
  // Positions are kept to a tenth of a millimetre.
  expect(bench.hand.state.snap?.eastM).toBeCloseTo(edge, 3);
  bench.keys('Enter');
  const corner = bench.hand.state.sketch?.corners.at(-1);
  expect([corner?.eastM, corner?.northM]).toEqual([expect.closeTo(edge, 3), expect.closeTo(0, 3)]);
  // The next step goes on from where the keys were, a yard apart; from the edge it would be 3.3 yd.
  bench.keys('Shift+ArrowRight');
  expect(bench.hand.state.cursor?.eastM).toBeCloseTo(3 * step, 9);
  expect(bench.hand.state.snap).toBeNull();
  // Walked back to its first corner, an outline is closed there.
  bench.keys('Backspace', 'Shift+ArrowUp', 'Enter', ...Array<string>(4).fill('Shift+ArrowLeft'), 'Enter');
  bench.keys('Shift+ArrowDown', 'Enter');
  expect(bench.steps).toEqual(['traced an approach', 'traced a fairway']);
});

it('tells the side in the units and the paces of the person, clear of what is drawn', () => {
  const bench = new Bench();
  bench.keys('g');
  bench.click(0, 0);
  bench.click(9.144, 0);
  bench.hand.hover(bench.spot(9.144, 4.572));
  const units = { system: 'yards', paceM: 0.9144 } as const;
  const shown = handDrawing(bench.hand.state, bench.document, units, null, null, false);
  expect(shown.label?.lines).toEqual([
    '5.0\u00a0yd, 5\u00a0paces, at 0°',
    'around 26.2\u00a0yd, area 25\u00a0yd²',
  ]);
});
