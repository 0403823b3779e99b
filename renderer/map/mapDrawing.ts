import { element, group } from '../../shared/plate/element.ts';
import { drawGround } from '../../shared/plate/ground.ts';
import { pointAlong } from '../../shared/geometry/bearing.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { ApproachLine } from '../../shared/planner/approachLine.ts';
import { drawMeasurements } from '../../shared/plate/measurements.ts';
import { drawLabel, labelClearance, placeLabels } from '../../shared/plate/labels.ts';
import { drawMarks, markBoxes, type Marks } from '../../shared/plate/marks.ts';
import { nameRequests } from '../../shared/plate/names.ts';
import { drawRelief, type ReliefDrawing } from '../../shared/plate/relief.ts';
import { shotBoxes, shotLabels } from '../../shared/plate/shotLabels.ts';
import { drawShot, type DrawnShot } from '../../shared/plate/shotMark.ts';
import type { SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';
import { drawSurrounds } from '../../shared/plate/surroundsLayer.ts';
import type { PlateStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { type Box, type PlateView, projection } from '../../shared/plate/view.ts';
import type { TerrainArea } from '../../shared/terrain/terrainInput.ts';

export interface MapDrawing {
  readonly areas: readonly TerrainArea[];
  readonly relief: ReliefDrawing | null;
  readonly marks: Marks;
  readonly shots: readonly DrawnShot[];
  readonly layer: SurroundsLayer | null;
  /** Where balls are likely to stop, flat pairs; empty for none. */
  readonly likely: Float64Array;
  /** The approach they come from; null for none. */
  readonly approach: Pick<ApproachLine, 'bearingDeg' | 'distanceM' | 'target'> | null;
  /** Where one more height would help most. */
  readonly measureHere: readonly PlanePoint[];
}

/** What stands on the ground, and where its symbols have to leave room. */
interface OverGround {
  readonly node: SvgNode;
  readonly clear: readonly Box[];
  readonly lines: readonly Box[];
}

/** Shots, marks and names, the names kept inside the visible part: redrawn while something moves. */
export function drawOver(whole: PlateView, visible: Box, style: PlateStyle, drawing: MapDrawing): OverGround {
  // Both boxes share their middle, so the plane lies the same on either.
  const view = { ...whole, box: visible };
  const own = [
    ...markBoxes(view, style, drawing.marks),
    ...drawing.measureHere.map((at) => diamondBox(view, style, at)),
  ];
  const lines = drawing.shots.flatMap((shot) => shotBoxes(view, style, shot));
  const requests = [
    ...drawing.shots.flatMap((shot) => shotLabels(view, style, shot)),
    ...nameRequests(view, style, drawing.areas, 'all'),
  ];
  const placed = placeLabels(requests, [...own, ...lines], view.box);
  return {
    node: group(
      'over',
      approachLine(view, style, drawing.approach),
      likelyDots(view, style, drawing.likely),
      group('shots', ...drawing.shots.map((shot) => drawShot(view, style, shot))),
      drawMeasurements(view, style, { heights: [], slopes: [], measureHere: drawing.measureHere }),
      drawMarks(view, style, drawing.marks),
      group('labels', ...placed.map((label) => drawLabel(label, style))),
    ),
    clear: [...own, ...placed.map(labelClearance)],
    lines,
  };
}

/** The ground itself with its slopes and heights: redrawn when it, the zoom or what stands on it has changed. */
export function drawUnder(
  view: PlateView,
  style: PlateStyle,
  drawing: MapDrawing,
  over: Pick<OverGround, 'clear' | 'lines'>,
  visible: Box,
): SvgNode {
  const { areas, relief } = drawing;
  return group(
    'under',
    element('rect', { ...view.box, fill: style.inks.sheet }),
    drawGround(view, style, { areas, base: 'lightRough', keepClear: over.clear }),
    // The layer speaks instead of the slopes: two readings over each other would be neither.
    drawing.layer === null
      ? relief === null
        ? null
        : drawRelief(view, style, relief, [...over.clear, ...over.lines])
      : drawSurrounds(view, style, drawing.layer, over.clear, visible),
  );
}

/** Room a diamond takes. */
function diamondBox(view: PlateView, { symbolScale }: PlateStyle, at: PlanePoint): Box {
  const [x, y] = projection(view).toDrawing(at);
  const r = 10 * symbolScale;
  return { x: x - r, y: y - r, width: 2 * r, height: 2 * r };
}

/** A pencil line from where the approach is played, with an open head at what it is aimed at. */
function approachLine(view: PlateView, style: PlateStyle, approach: MapDrawing['approach']): SvgNode | null {
  if (approach === null) return null;
  const { target, bearingDeg, distanceM } = approach;
  const { toDrawing } = projection(view);
  const [x, y] = toDrawing(target);
  const [fromX, fromY] = toDrawing(pointAlong(target, bearingDeg + 180, distanceM));
  const length = Math.hypot(fromX - x, fromY - y);
  const [ux, uy] = [(fromX - x) / length, (fromY - y) / length];
  const head = 9 * style.symbolScale;
  const barb = (side: number): string =>
    `${String(x + head * (ux - side * 0.5 * uy))} ${String(y + head * (uy + side * 0.5 * ux))}`;
  const stroke = { fill: 'none', stroke: style.inks.ink2, 'stroke-width': 1.2 * style.symbolScale };
  return group(
    'approach',
    element('path', {
      d: `M${String(fromX)} ${String(fromY)}L${String(x)} ${String(y)}`,
      ...stroke,
      'stroke-dasharray': `${String(7 * style.symbolScale)} ${String(5 * style.symbolScale)}`,
    }),
    element('path', { d: `M${barb(1)}L${String(x)} ${String(y)}L${barb(-1)}`, ...stroke }),
  );
}

/** Small open rings, told apart from the dots of a shot's finishes. */
function likelyDots(view: PlateView, style: PlateStyle, likely: Float64Array): SvgNode | null {
  if (likely.length === 0) return null;
  const { toDrawing } = projection(view);
  return group(
    'likely',
    ...Array.from({ length: likely.length / 2 }, (_, i) => {
      const [cx, cy] = toDrawing({ eastM: likely[2 * i] ?? 0, northM: likely[2 * i + 1] ?? 0 });
      return element('circle', {
        cx,
        cy,
        r: 2.2 * style.symbolScale,
        fill: style.inks.sheet,
        stroke: style.inks.ink2,
        'stroke-width': 1.1 * style.symbolScale,
      });
    }),
  );
}
