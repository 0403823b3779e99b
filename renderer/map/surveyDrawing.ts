import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { Box as PlaneBox } from '../../shared/geometry/ring.ts';
import { element, group } from '../../shared/plate/element.ts';
import { barLengthM } from '../../shared/plate/frame.ts';
import { drawGround, paintOrder } from '../../shared/plate/ground.ts';
import { LastMade } from '../../shared/plate/lastMade.ts';
import { drawLabel, labelClearance, placeLabels, textWidth } from '../../shared/plate/labels.ts';
import { drawMarks, markBoxes, type Marks } from '../../shared/plate/marks.ts';
import { drawMeasurements, type Measurements } from '../../shared/plate/measurements.ts';
import { nameRequests } from '../../shared/plate/names.ts';
import { closedPath, openPath, segment } from '../../shared/plate/pathData.ts';
import { drawRelief, type ReliefDrawing } from '../../shared/plate/relief.ts';
import { seedOf } from '../../shared/plate/scatter.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import {
  type Box,
  grown,
  overlaps,
  type PlateView,
  projection,
  projectionKey,
} from '../../shared/plate/view.ts';
import { landmarkMark } from './landmarkMark.ts';
import type { TerrainArea } from '../../shared/terrain/terrainInput.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

export interface SurveyDrawing {
  /** Areas any part of which may lie in a box: thousands of others cost nothing. */
  readonly areasIn: (box: PlaneBox) => readonly TerrainArea[];
  /** Lines that the surface does not draw itself: contours, walls, lines of play. */
  readonly lines: readonly {
    readonly id: string;
    readonly kind: 'contour' | 'wall' | 'play';
    readonly points: readonly PlanePoint[];
    readonly text: string;
  }[];
  readonly relief: ReliefDrawing | null;
  /** Readings in a box, and where another would help most. */
  readonly measurementsIn: (box: PlaneBox) => Measurements;
  readonly marks: Marks;
  readonly landmarks: readonly { readonly id: string; readonly at: PlanePoint; readonly name: string }[];
  readonly base: 'lightRough' | 'blank';
  readonly grid: boolean;
  /** A picture lies under the ground: areas let it show. */
  readonly overPicture: boolean;
  readonly units: UnitsPreference;
}

/** More areas or readings than these in sight are drawn plainly: it is the whole that is looked at, and at once. */
const MANY_AREAS = 150;
const MANY_READINGS = 500;
const MOST_READINGS = 3000;

interface OverGround {
  readonly node: SvgNode;
  readonly clear: readonly Box[];
}

/** The part of the plane that a box of the drawing shows. */
function planeBox(view: PlateView, { x, y, width, height }: Box): PlaneBox {
  const { toPlane } = projection(view);
  const [northWest, southEast] = [toPlane([x, y]), toPlane([x + width, y + height])];
  return {
    westM: northWest.eastM,
    southM: southEast.northM,
    eastM: southEast.eastM,
    northM: northWest.northM,
  };
}

/** Measurements, flags, balls and names, kept inside the visible part. */
export function drawSurveyOver(
  whole: PlateView,
  visible: Box,
  style: PlateStyle,
  drawing: SurveyDrawing,
): OverGround {
  const view = { ...whole, box: visible };
  const own = markBoxes(view, style, drawing.marks);
  const { shown, boxes: readings } = legible(
    view,
    style,
    drawing.measurementsIn(planeBox(view, grown(view.box, 60))),
    own,
  );
  const seen = drawing.areasIn(planeBox(view, view.box));
  const requests = seen.length > MANY_AREAS ? [] : nameRequests(view, style, seen, 'all');
  const placed = placeLabels(requests, [...own, ...readings], view.box);
  return {
    node: group(
      'over',
      shown.heights.length > MANY_READINGS
        ? group(
            'measurements',
            crosses(view, style, shown.heights),
            drawMeasurements(view, style, {
              ...shown,
              heights: shown.heights.filter(({ doubtful }) => doubtful),
            }),
          )
        : drawMeasurements(view, style, shown),
      group(
        'landmarks',
        ...drawing.landmarks.map(({ at, name }) => landmarkMark(projection(view).toDrawing(at), name, style)),
      ),
      drawMarks(view, style, drawing.marks),
      group('labels', ...placed.map((label) => drawLabel(label, style))),
    ),
    clear: [...own, ...readings, ...placed.map(labelClearance)],
  };
}

/** The measurements in sight, those whose figures would run into others without them: crosses stay where they are. */
function legible(
  view: PlateView,
  style: PlateStyle,
  { heights, slopes, measureHere }: Measurements,
  taken: readonly Box[],
): { readonly shown: Measurements; readonly boxes: readonly Box[] } {
  const { toDrawing } = projection(view);
  const size = Math.max(13.5 * style.symbolScale, style.leastText);
  // So many that hardly one could be read: all as crosses, save those in doubt.
  if (heights.length > MOST_READINGS)
    return {
      shown: {
        slopes,
        heights: heights.map((one) => (one.doubtful ? { ...one, text: '' } : one)),
        measureHere,
      },
      boxes: [],
    };
  const boxes = [...taken];
  // A height is no longer than "1234.56", so a cell of that width holds all that could meet it.
  const cells = new Map<string, Box[]>();
  const free = (box: Box): boolean => {
    if (taken.some((other) => overlaps(box, other))) return false;
    const [column, row] = [Math.floor(box.x / CELL), Math.floor(box.y / CELL)];
    for (let i = -1; i <= 1; i += 1)
      for (let j = -1; j <= 1; j += 1)
        if (
          cells.get(`${String(column + i)},${String(row + j)}`)?.some((other) => overlaps(box, other)) ===
          true
        )
          return false;
    const cell = `${String(column)},${String(row)}`;
    cells.set(cell, [...(cells.get(cell) ?? []), box]);
    boxes.push(box);
    return true;
  };
  const fit = <T extends { readonly at: PlanePoint; readonly text: string }>(
    list: readonly T[],
    rise: number,
    onLeft: (one: T) => boolean,
  ): T[] =>
    list.flatMap((one) => {
      const [x, y] = toDrawing(one.at);
      const box = {
        x: onLeft(one) ? x - textWidth(one.text, size, 'sans', 600) - 8 : x - 5,
        y: y - size * rise,
        width: textWidth(one.text, size) + 12,
        height: size * (rise + 0.55),
      };
      return [free(box) ? one : { ...one, text: '' }];
    });
  // A reading that falls to the right of the sheet has its figure on the left.
  const slopesShown = fit(slopes, 1.3, (one) => Math.sin((one.downhillBearingDeg * Math.PI) / 180) > 0.5);
  const doubtfulFirst = heights.toSorted((a, b) => Number(b.doubtful) - Number(a.doubtful));
  return {
    shown: { slopes: slopesShown, heights: fit(doubtfulFirst, 0.55, () => false), measureHere },
    boxes: boxes.slice(taken.length),
  };
}
const CELL = 70;

/** Crosses are drawn in so many lots, and after an edit only the lot it is about. */
const lots = Array.from({ length: 64 }, () => ({}));
const lotsBefore = new LastMade<object, SvgNode>();

/** Spot heights too many to read: one small cross each. */
function crosses(view: PlateView, style: PlateStyle, heights: Measurements['heights']): SvgNode {
  const { toDrawing } = projection(view);
  const arm = 2.4 * style.symbolScale;
  const of = lots.map((): PlanePoint[] => []);
  for (const { id, at } of heights) of[seedOf(id) & (lots.length - 1)]?.push(at);
  const place = projectionKey(view);
  return element(
    'g',
    { 'data-part': 'crosses', stroke: style.inks.ink, 'stroke-width': 1 },
    ...lots.map((lot, i) => {
      const places = of[i] ?? [];
      return lotsBefore.get(lot, [place, style, ...places], () => {
        const d = places.map((at) => {
          const [x, y] = toDrawing(at);
          return segment(x - arm, y, x + arm, y) + segment(x, y - arm, x, y + arm);
        });
        return element('path', { d: d.join('') });
      });
    }),
  );
}

/** The ground with its lines, contours and grid. */
export function drawSurveyUnder(
  view: PlateView,
  style: PlateStyle,
  drawing: SurveyDrawing,
  clear: readonly Box[],
): SvgNode {
  const { relief, overPicture } = drawing;
  const areas = drawing.areasIn(planeBox(view, view.box));
  const base = overPicture ? 'blank' : drawing.base;
  const ground =
    areas.length > MANY_AREAS
      ? plainGround(view, style, areas, base)
      : drawGround(view, style, { areas, base, keepClear: clear });
  return group(
    'under',
    overPicture ? null : element('rect', { ...view.box, fill: style.inks.sheet }),
    element('g', overPicture ? { opacity: 0.62 } : {}, ground),
    drawing.grid ? grid(view, style, drawing.units) : null,
    relief === null ? null : drawRelief(view, style, relief, clear),
    group('lines', ...drawing.lines.map((line) => drawLine(view, style, line))),
  );
}

/** From far off, where patterns would be no more than dirt: one shape for each kind, in the order of cover. */
function plainGround(
  view: PlateView,
  style: PlateStyle,
  areas: readonly TerrainArea[],
  base: SurveyDrawing['base'],
): SvgNode {
  const { toDrawing } = projection(view);
  const { inks, symbolScale } = style;
  const place = projectionKey(view);
  const pathOf = ({ polygon }: TerrainArea): string =>
    pathsBefore.get(polygon, [place], () => closedPath(polygon.map((ring) => ring.map(toDrawing))));
  return group(
    'ground',
    base === 'blank' ? null : element('rect', { ...view.box, fill: inks.fills.lightRough }),
    ...kindKeys.map(({ kind, key }) => {
      const own = areas.filter((area) => area.kind === kind);
      if (own.length === 0) return null;
      return kindsBefore.get(key, [place, style, ...own], () =>
        element('path', {
          'data-kind': kind,
          d: own.map(pathOf).join(''),
          fill: inks.fills[kind],
          'fill-rule': 'evenodd',
          stroke: kind === 'green' || kind === 'bunker' ? inks.ink : inks.tall,
          'stroke-width': 0.8 * symbolScale,
        }),
      );
    }),
  );
}
const pathsBefore = new LastMade<TerrainArea['polygon'], string>();
const kindsBefore = new LastMade<object, SvgNode>();
const kindKeys = paintOrder.map((kind) => ({ kind, key: {} }));

/** Squares of a yard or metre, every fifth line heavier; left out where they would crowd. */
function grid(view: PlateView, style: PlateStyle, units: UnitsPreference): SvgNode {
  const heavyM = barLengthM(units);
  const { toDrawing, toPlane } = projection(view);
  const { x, y, width, height } = view.box;
  const [northWest, southEast] = [toPlane([x, y]), toPlane([x + width, y + height])];
  const lines = (stepM: number): string => {
    if (stepM * view.unitsPerM < 7) return '';
    const d: string[] = [];
    for (let e = Math.ceil(northWest.eastM / stepM); e * stepM <= southEast.eastM; e += 1) {
      const [at] = toDrawing({ eastM: e * stepM, northM: 0 });
      d.push(segment(at, y, at, y + height));
    }
    for (let n = Math.ceil(southEast.northM / stepM); n * stepM <= northWest.northM; n += 1) {
      const [, at] = toDrawing({ eastM: 0, northM: n * stepM });
      d.push(segment(x, at, x + width, at));
    }
    return d.join('');
  };
  return group(
    'grid',
    element('path', {
      d: lines(heavyM / 5),
      stroke: 'var(--rule)',
      'stroke-width': 0.7,
      'stroke-opacity': 0.55,
    }),
    element('path', { d: lines(heavyM), stroke: 'var(--rule)', 'stroke-width': 1.2 * style.symbolScale }),
  );
}

function drawLine(view: PlateView, style: PlateStyle, line: SurveyDrawing['lines'][number]): SvgNode {
  const { inks, symbolScale: k } = style;
  const d = openPath(line.points.map(projection(view).toDrawing));
  const stroke = (ink: string, width: number, dash?: string): SvgNode =>
    element('path', {
      d,
      fill: 'none',
      stroke: ink,
      'stroke-width': width * k,
      'stroke-linejoin': 'round',
      'stroke-dasharray': dash,
    });
  const parts =
    line.kind === 'wall'
      ? [stroke(inks.ink, 6), stroke(inks.sheet, 3.6), stroke(inks.ink, 3.6, '1.4 8')]
      : line.kind === 'contour'
        ? [stroke(inks.halo, 4), stroke(inks.contourHeavy, 1.8, '9 3')]
        : [stroke(inks.halo, 4), stroke(inks.ink2, 1.4, '12 5 2 5')];
  return element('g', { 'data-part': 'line', 'data-kind': line.kind, 'data-id': line.id }, ...parts);
}
