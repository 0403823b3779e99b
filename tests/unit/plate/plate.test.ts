import { describe, expect, it } from 'vitest';
import { planePoint } from '../../../shared/geometry/points.ts';
import { element } from '../../../shared/plate/element.ts';
import { escapeMarkup, markup } from '../../../shared/plate/markup.ts';
import type { MapContent } from '../../../shared/plate/plate.ts';
import { drawMapLayers, drawPlate, mapBox } from '../../../shared/plate/plate.ts';
import { drawGround, paintOrder } from '../../../shared/plate/ground.ts';
import { barLengthM, footHeight } from '../../../shared/plate/frame.ts';
import { paperStyle, screenStyle } from '../../../shared/plate/style.ts';
import type { PlateStyle } from '../../../shared/plate/style.ts';
import type { SvgNode } from '../../../shared/plate/svgNode.ts';
import type { PlateView } from '../../../shared/plate/view.ts';
import { fitView, overlaps, paperUnitsPerM, projection } from '../../../shared/plate/view.ts';
import { areaKinds } from '../../../shared/words/vocabulary.ts';
import { chipBall, chipFlag, chipOption } from './chip.ts';
import { area, everyKind } from './complex.ts';
import { analyticRelief } from './relief.ts';

const layout = { width: 774, height: 562, footHeight: 54 };
const relief = analyticRelief();

const content = (): MapContent => ({
  areas: everyKind,
  base: 'lightRough',
  relief,
  marks: {
    balls: [
      { id: 'b2', label: '2', at: planePoint(-15.5, -4), chosen: false },
      { id: 'b3', label: '3', at: chipBall, chosen: true },
    ],
    flags: [
      { id: 'fA', label: 'A', at: planePoint(3, -8), chosen: false },
      { id: 'fB', label: 'B', at: chipFlag, chosen: true },
    ],
  },
  measurements: {
    heights: [{ id: 'h1', at: planePoint(-5, -5), text: '12.71', doubtful: true }],
    slopes: [{ id: 's1', at: planePoint(3, 4), downhillBearingDeg: 200, text: '3.7 %' }],
    measureHere: [planePoint(-9, -2)],
  },
  shots: [
    {
      option: chipOption(),
      ball: chipBall,
      flag: chipFlag,
      role: 'proposed',
      coarse: false,
      aimText: 'aim 3 ft right',
      landText: 'land 2 paces on',
    },
  ],
});

const viewOf = (style: PlateStyle): PlateView => ({
  centre: planePoint(0, 0),
  unitsPerM: 12,
  upBearingDeg: 0,
  box: mapBox(layout, style),
});

const foot = {
  title: 'Long Withy',
  subtitle: 'Hole 4',
  units: { system: 'yards', paceM: 0.9 },
  placed: true,
  slopeLegend: true,
} as const;

function* nodes(node: SvgNode): Generator<SvgNode> {
  yield node;
  for (const child of node.children) if (typeof child !== 'string') yield* nodes(child);
}

const withPart = (root: SvgNode, part: string): SvgNode[] =>
  [...nodes(root)].filter((node) => node.attributes['data-part'] === part);

describe('markup', () => {
  it('makes any name harmless in text and in attributes', () => {
    const hostile = `</text><script>alert("1")</script>&'\u0000`;
    const written = markup(element('text', { 'aria-label': hostile }, hostile));
    expect(written).not.toContain('<script');
    expect(written.match(/</g)).toHaveLength(2);
    expect(written).toContain('&lt;script&gt;alert(&quot;1&quot;)');
    expect(escapeMarkup(hostile)).not.toContain('\u0000');
  });

  it('refuses element and attribute names that could break out', () => {
    expect(() => markup({ tag: 'a onload=x', attributes: {}, children: [] })).toThrow(/cannot name/);
    expect(() => markup({ tag: 'a', attributes: { 'x" y': 1 }, children: [] })).toThrow(/cannot name/);
  });
});

describe('projection', () => {
  it('turns the sheet so that the given bearing points up, and comes back to the same point', () => {
    const view: PlateView = {
      centre: planePoint(3, -2),
      unitsPerM: 10,
      upBearingDeg: 90,
      box: { x: 0, y: 0, width: 200, height: 100 },
    };
    const { toDrawing, toPlane } = projection(view);
    const [x, y] = toDrawing(planePoint(4, -2));
    expect(x).toBeCloseTo(100, 9);
    expect(y).toBeCloseTo(40, 9);
    const back = toPlane(toDrawing(planePoint(-7.5, 11)));
    expect(back.eastM).toBeCloseTo(-7.5, 9);
    expect(back.northM).toBeCloseTo(11, 9);
  });

  it('fits points inside the box with the margin', () => {
    const box = { x: 10, y: 20, width: 300, height: 200 };
    const points = [planePoint(0, 0), planePoint(30, 4), planePoint(12, -9)];
    const { toDrawing } = projection(fitView(points, box, { upBearingDeg: 37, marginUnits: 25 }));
    for (const [x, y] of points.map(toDrawing)) {
      expect(x).toBeGreaterThan(10 + 24.9);
      expect(x).toBeLessThan(310 - 24.9);
      expect(y).toBeGreaterThan(20 + 24.9);
      expect(y).toBeLessThan(220 - 24.9);
    }
  });
});

describe('ground', () => {
  it('draws every kind with strokes of its own, so that none depends on its tint', () => {
    const style = paperStyle('t');
    const patterns = new Map<string, string>();
    for (const kind of areaKinds) {
      const square = [planePoint(-8, -8), planePoint(8, -8), planePoint(8, 8), planePoint(-8, 8)];
      const green = area('g', 'green', '', [
        planePoint(-4, -4),
        planePoint(4, -4),
        planePoint(4, 4),
        planePoint(-4, 4),
      ]);
      const areas = kind === 'fringe' ? [area('a', kind, '', square), green] : [area('a', kind, '', square)];
      const drawn = drawGround(viewOf(style), style, { areas, base: 'blank', keepClear: [] });
      const own = [...nodes(drawn)].find((node) => node.attributes['data-kind'] === kind);
      if (own === undefined) throw new Error(`${kind} is not drawn`);
      patterns.set(
        kind,
        own.children.map((child) => (typeof child === 'string' ? '' : markup(child))).join('\n'),
      );
    }
    expect(new Set(patterns.values()).size).toBe(areaKinds.length);
    for (const kind of areaKinds) {
      const strokes = patterns.get(kind)?.match(/stroke-width/g) ?? [];
      // A green is blank but for its edge, a path but for its lines.
      expect(strokes.length, kind).toBeGreaterThanOrEqual(1);
    }
  });

  it('covers in the order in which a ball meets the ground, tree crowns over all', () => {
    expect([...paintOrder].sort()).toEqual([...areaKinds].sort());
    const style = screenStyle('t');
    const drawn = drawGround(viewOf(style), style, { areas: everyKind, base: 'lightRough', keepClear: [] });
    const kinds = [...nodes(drawn)].flatMap((node) => {
      const kind = node.attributes['data-kind'];
      return typeof kind === 'string' ? [kind] : [];
    });
    const ranks = kinds.map((kind) => paintOrder.findIndex((k) => k === kind));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it('keeps the size of its patterns when the map is drawn larger', () => {
    const style = screenStyle('t');
    const spacing = (unitsPerM: number): number => {
      const view = { ...viewOf(style), unitsPerM };
      const drawn = drawGround(view, style, {
        areas: [
          area('a', 'approach', '', [
            planePoint(-30, -30),
            planePoint(30, -30),
            planePoint(30, 30),
            planePoint(-30, 30),
          ]),
        ],
        base: 'blank',
        keepClear: [],
      });
      const dashes = [...nodes(drawn)]
        .map((n) => String(n.attributes['d'] ?? ''))
        .find((d) => d.split('M').length > 50);
      const rows = [
        ...new Set([...(dashes ?? '').matchAll(/M[\d.-]+ ([\d.-]+)/g)].map((m) => Number(m[1]))),
      ].sort((a, b) => a - b);
      return (rows[1] ?? 0) - (rows[0] ?? 0);
    };
    expect(spacing(12)).toBeCloseTo(spacing(31), 1);
  });

  it('stays small however far the map is drawn out', () => {
    const style = screenStyle('t');
    const vast = [planePoint(-4e3, -4e3), planePoint(4e3, -4e3), planePoint(4e3, 4e3), planePoint(-4e3, 4e3)];
    const drawn = drawGround({ ...viewOf(style), unitsPerM: 40 }, style, {
      areas: [area('a', 'heavyRough', '', vast), area('b', 'bunker', '', vast)],
      base: 'lightRough',
      keepClear: [],
    });
    expect(markup(drawn).length).toBeLessThan(3e6);
  });
});

describe('plate', () => {
  it('comes out the same every time', () => {
    const style = screenStyle('t');
    const draw = (): string => markup(drawPlate(layout, viewOf(style), style, content(), foot, 'Map'));
    expect(draw()).toBe(draw());
  });

  it('prints in black and white alone', () => {
    const style = paperStyle('t');
    const written = markup(drawPlate(layout, viewOf(style), style, content(), foot, 'Map'));
    const colours = [...written.matchAll(/(?:fill|stroke|color)="([^"]*)"/g)].map((m) => m[1]);
    expect(new Set(colours)).toEqual(new Set(['#000', '#fff', 'none']));
    expect(written).not.toContain('fill-opacity');
    expect(written).not.toContain('var(');
  });

  it('keeps its texts at 8 points and more in print', () => {
    const style = paperStyle('t');
    const plate = drawPlate(layout, viewOf(style), style, content(), foot, 'Map');
    const sizes = [...nodes(plate)]
      .filter((node) => node.tag === 'text')
      .map((node) => Number(node.attributes['font-size']));
    expect(sizes.length).toBeGreaterThan(8);
    // Sizes are written to hundredths of a drawing unit.
    expect(Math.min(...sizes) * 0.75).toBeGreaterThan(7.99);
  });

  it('draws the bars of its frame and its scale to the scale of the map', () => {
    const style = paperStyle('t');
    const view = { ...viewOf(style), unitsPerM: paperUnitsPerM(480) };
    // 5 yd at 1:480 is 3/8 in, and 96 units make an inch (clarification 4.3a/1 gives the same ratio; found).
    expect(barLengthM(foot.units) * view.unitsPerM).toBeCloseTo(0.375 * 96, 9);
    const plate = drawPlate(layout, view, style, content(), foot, 'Map');
    const scale = withPart(plate, 'scale')[0];
    const bars = scale?.children.flatMap((c) =>
      typeof c !== 'string' && c.tag === 'rect' ? [c.attributes['width']] : [],
    );
    expect(bars).toEqual([36, 36]);
    const frame = String(withPart(plate, 'bars')[0]?.attributes['d'] ?? '');
    const lengths = [...frame.matchAll(/M([\d.-]+) [\d.-]+L([\d.-]+) /g)].map(
      (m) => Number(m[2]) - Number(m[1]),
    );
    const whole = lengths.filter((l) => l > 30);
    expect(whole.length).toBeGreaterThan(10);
    for (const length of whole) expect(length).toBeCloseTo(36, 1);
  });

  it('sets no text over another, over a mark or over the path of a shot', () => {
    for (const style of [screenStyle('t'), screenStyle('t', 1.35), paperStyle('t')]) {
      const { placed } = drawMapLayers(viewOf(style), style, content());
      expect(placed.map((label) => label.request.text)).toContain('aim 3 ft right');
      placed.forEach((a, i) => {
        for (const b of placed.slice(i + 1)) expect(overlaps(a.box, b.box)).toBe(false);
      });
    }
  });

  it('leaves tints and legend out where nothing is tinted, and says "sheet up" where north is not known', () => {
    const paper = paperStyle('t');
    expect(
      withPart(drawPlate(layout, viewOf(paper), paper, content(), foot, 'Map'), 'slope-legend'),
    ).toHaveLength(0);
    const style = screenStyle('t');
    const placed = drawPlate(layout, viewOf(style), style, content(), foot, 'Map');
    expect(withPart(placed, 'slope-legend')).toHaveLength(1);
    const unplaced = drawPlate(
      { ...layout, footHeight: footHeight(style) },
      viewOf(style),
      style,
      content(),
      { ...foot, placed: false },
      'Map',
    );
    expect(markup(unplaced)).toContain('sheet up');
  });

  it('points the way of play in the foot, where "sheet up" gives way to it on a narrow plate', () => {
    const style = screenStyle('t');
    const parts = (width: number, placed: boolean): string => {
      const narrow = { ...layout, width, footHeight: footHeight(style) };
      const words = { ...foot, placed, playBearingDeg: 300 };
      const plate = drawPlate(narrow, viewOf(style), style, content(), words, 'Map');
      return ['north', 'play'].filter((part) => withPart(plate, part).length > 0).join(' ');
    };
    const wide = drawPlate({ ...layout, width: 1200 }, viewOf(style), style, content(), foot, 'Map');
    expect(withPart(wide, 'play')).toHaveLength(0);
    expect(parts(1200, false)).toBe('north play');
    const widths = Array.from({ length: 90 }, (_, i) => 300 + 10 * i);
    expect(widths.map((width) => parts(width, false))).toContain('play');
    expect(widths.map((width) => parts(width, true))).not.toContain('play');
  });

  it('marks finishes in trouble with crosses and the others with dots', () => {
    const style = screenStyle('t');
    const shot = content().shots[0];
    if (shot === undefined) throw new Error('no shot');
    const dots = (codes: Uint8Array): number => {
      const plate = drawMapLayers(viewOf(style), style, {
        ...content(),
        shots: [{ ...shot, option: { ...shot.option, finishCodes: codes } }],
      });
      const finishes = withPart(plate.shots, 'finishes')[0];
      const d = finishes?.children.map((c) => (typeof c === 'string' ? '' : String(c.attributes['d'] ?? '')));
      return (d?.[0]?.match(/h0/g) ?? []).length;
    };
    const count = shot.option.finishCodes.length;
    expect(dots(new Uint8Array(count))).toBe(count);
    expect(dots(new Uint8Array(count).fill(255))).toBe(0);
    expect(dots(new Uint8Array(count).fill(254))).toBe(0);
  });
});
