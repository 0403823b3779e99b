import type { TerrainArea } from '../terrain/terrainInput.ts';
import { element, group } from './element.ts';
import type { FootContent } from './frame.ts';
import { drawFoot, drawFrame, frameMargin } from './frame.ts';
import { drawGround } from './ground.ts';
import type { LabelRequest, PlacedLabel } from './labels.ts';
import { drawLabel, labelClearance, placeLabels } from './labels.ts';
import type { Marks } from './marks.ts';
import { drawMarks, markBoxes } from './marks.ts';
import type { Measurements } from './measurements.ts';
import { drawMeasurements } from './measurements.ts';
import type { NamesShown } from './names.ts';
import { nameRequests } from './names.ts';
import type { LandingLink } from './landingLinks.ts';
import { drawLandingLinks, landingLinkBoxes } from './landingLinks.ts';
import type { ReliefDrawing } from './relief.ts';
import { drawRelief } from './relief.ts';
import type { DrawnShot } from './shotMark.ts';
import { shotBoxes, shotLabels } from './shotLabels.ts';
import { drawShot } from './shotMark.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView } from './view.ts';
import { projection } from './view.ts';

/** Everything on one map. */
export interface MapContent {
  readonly areas: readonly TerrainArea[];
  readonly base: 'lightRough' | 'blank';
  readonly relief: ReliefDrawing | null;
  readonly marks: Marks;
  readonly measurements: Measurements | null;
  /** The proposed option last, so that it lies on top. */
  readonly shots: readonly DrawnShot[];
  /** Every ball's landing spot for one flag, as on a card. */
  readonly links?: readonly LandingLink[];
  /** Which areas carry their names; all when left out. */
  readonly names?: NamesShown;
  /** Boxes the caller draws itself and wants free. */
  readonly keepClear?: readonly Box[];
}

/** The layers of a map, bottom first, for callers that redraw some more often than others. */
export interface MapLayers {
  readonly ground: SvgNode;
  readonly relief: SvgNode;
  readonly measurements: SvgNode;
  readonly shots: SvgNode;
  readonly marks: SvgNode;
  readonly labels: SvgNode;
  readonly placed: readonly PlacedLabel[];
}

export function drawMapLayers(view: PlateView, style: PlateStyle, content: MapContent): MapLayers {
  const own = [...markBoxes(view, style, content.marks), ...(content.keepClear ?? [])];
  const links = content.links ?? [];
  const lines = [
    ...content.shots.flatMap((shot) => shotBoxes(view, style, shot)),
    ...landingLinkBoxes(view, style, links),
  ];
  const requests: LabelRequest[] = [
    ...content.shots.flatMap((shot) => shotLabels(view, style, shot)),
    ...nameRequests(view, style, content.areas, content.names ?? 'all'),
    ...doubtLabels(view, style, content.measurements),
  ];
  const placed = placeLabels(requests, [...own, ...lines], view.box);
  const clear = [...own, ...placed.map(labelClearance)];
  return {
    ground: drawGround(view, style, { areas: content.areas, base: content.base, keepClear: clear }),
    relief:
      content.relief === null
        ? group('relief')
        : drawRelief(view, style, content.relief, [...clear, ...lines]),
    measurements:
      content.measurements === null
        ? group('measurements')
        : drawMeasurements(view, style, content.measurements),
    shots: group(
      'shots',
      drawLandingLinks(view, style, links),
      ...content.shots.map((shot) => drawShot(view, style, shot)),
    ),
    marks: drawMarks(view, style, content.marks),
    labels: group('labels', ...placed.map((label) => drawLabel(label, style))),
    placed,
  };
}

function doubtLabels(view: PlateView, style: PlateStyle, measurements: Measurements | null): LabelRequest[] {
  const { toDrawing } = projection(view);
  return (measurements?.measureHere ?? []).map((at) => ({
    text: 'measure here',
    at: toDrawing(at),
    size: Math.max(13.5 * style.symbolScale, style.leastText),
    face: 'sans',
    weight: 600,
    ink: style.inks.doubt,
    away: 12 * style.symbolScale,
    leader: false,
    priority: 60,
  }));
}

/** The map by itself, clipped to its box. */
export function drawMap(view: PlateView, style: PlateStyle, content: MapContent): SvgNode {
  const layers = drawMapLayers(view, style, content);
  const { x, y, width, height } = view.box;
  return element(
    'svg',
    { x, y, width, height, viewBox: `${x} ${y} ${width} ${height}`, overflow: 'hidden', 'data-part': 'map' },
    element('rect', { x, y, width, height, fill: style.inks.sheet }),
    layers.ground,
    layers.relief,
    layers.measurements,
    layers.shots,
    layers.marks,
    layers.labels,
  );
}

export interface PlateLayout {
  readonly width: number;
  readonly height: number;
  /** Height of the foot below the map; 0 leaves it out. */
  readonly footHeight: number;
}

/** The box left for the map on a plate of this size. */
export function mapBox(layout: PlateLayout, style: PlateStyle): Box {
  const m = frameMargin(style);
  return {
    x: m,
    y: m,
    width: layout.width - 2 * m,
    height: layout.height - 2 * m - layout.footHeight,
  };
}

/** A whole plate: map, double frame and foot, as one svg element with a title for those who do not see it. */
export function drawPlate(
  layout: PlateLayout,
  view: PlateView,
  style: PlateStyle,
  content: MapContent,
  foot: FootContent,
  description: string,
): SvgNode {
  const m = frameMargin(style);
  const { width, height, footHeight } = layout;
  const k = style.symbolScale;
  const area: Box = { x: m, y: height - footHeight, width: width - 2 * m, height: footHeight - 2 * k };
  return element(
    'svg',
    { width, height, viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': description },
    element('title', {}, description),
    element('rect', {
      x: k,
      y: k,
      width: width - 2 * k,
      height: height - 2 * k,
      fill: style.inks.sheet,
      stroke: style.inks.ink,
      'stroke-width': footHeight > 0 ? 2 * k : 0,
    }),
    drawMap(view, style, content),
    drawFrame(view, style, foot.units),
    footHeight > 0 ? drawFoot(area, view, style, foot) : null,
  );
}
