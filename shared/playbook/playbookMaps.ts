import type { PlateStyle } from '../plate/style.ts';
import { paperStyle } from '../plate/style.ts';
import type { PlateLayout, MapContent } from '../plate/plate.ts';
import { contourStepWords, usualContourM } from '../plate/contourSteps.ts';
import { drawPlate, mapBox } from '../plate/plate.ts';
import { element } from '../plate/element.ts';
import { northArrow } from '../plate/footArrows.ts';
import { barLengthM, footHeight, scaleBar } from '../plate/frame.ts';
import { anyBallBeyond, markBoxes } from '../plate/marks.ts';
import { markup } from '../plate/markup.ts';
import type { SvgNode } from '../plate/svgNode.ts';
import type { Box, PlateView } from '../plate/view.ts';
import { fitView, grown, overlaps, paperUnitsPerM, projection } from '../plate/view.ts';
import type { SafeHtml } from './html.ts';
import { trusted } from './html.ts';
import type { PlaybookFlag, PlaybookHole, PlaybookModel } from './model.ts';
import { smallestScaleDenominator } from './sizeRules.ts';

/** A map laid on a page, with its scale. */
export interface PageMap {
  readonly svg: SafeHtml;
  readonly denominator: number;
  /** Some ball lies beyond the map and stands dashed at its edge. */
  readonly ballBeyond: boolean;
}

const guideWidth = 695;

/** What a letter sheet leaves beside the tables of flags and balls: they stand below the map on the same sheet. */
const overviewHeight = (hole: PlaybookHole): number =>
  Math.max(360, Math.min(570, 830 - 38 * Math.max(hole.balls.length, hole.flags.length)));

/** The whole complex of a hole for the guide: every ball, every flag, as large as the sheet allows. */
export function overviewMap(model: PlaybookModel, hole: PlaybookHole): PageMap {
  const style = paperStyle(`m${safeId(hole.id)}`, 0.8);
  const layout = { width: guideWidth, height: overviewHeight(hole), footHeight: footHeight(style) };
  const content: MapContent = {
    areas: hole.areas,
    base: 'lightRough',
    relief: hole.relief,
    marks: {
      balls: hole.balls.map((ball) => ball.mark),
      flags: hole.flags.map((flag) => ({ ...flag.mark, chosen: false })),
    },
    measurements: null,
    shots: [],
    names: 'all',
  };
  const description = `Map of hole ${hole.label}, ${hole.name}: ${String(hole.balls.length)} ball positions and ${String(hole.flags.length)} hole locations round the green.`;
  return guideMap(model, hole, style, layout, content, description);
}

/** One flag's map for the guide: every ball with its landing spot, beside the list of balls. */
export function flagMap(
  model: PlaybookModel,
  hole: PlaybookHole,
  flag: PlaybookFlag,
  height: number,
): PageMap {
  const style = paperStyle(`m${safeId(hole.id)}-${safeId(flag.mark.id)}`);
  const layout = { width: 430, height, footHeight: 0 };
  return guideMap(model, hole, style, layout, flagContent(hole, flag), flagDescription(hole, flag));
}

function guideMap(
  model: PlaybookModel,
  hole: PlaybookHole,
  style: PlateStyle,
  layout: PlateLayout,
  content: MapContent,
  description: string,
): PageMap {
  const box = mapBox(layout, style);
  const points = [...hole.greenPoints, ...hole.balls.map((ball) => ball.mark.at)];
  const view = fitView(points, box, { upBearingDeg: hole.playBearingDeg, marginUnits: 20, maxUnitsPerM: 20 });
  const inset = layout.footHeight > 0 ? null : insetBox(view, style, model, content);
  const plate = drawPlate(
    layout,
    view,
    style,
    inset === null ? content : { ...content, keepClear: [inset] },
    {
      title: hole.name,
      subtitle: `contours ${contourStepWords(usualContourM(model.units), model.units)} apart, heights in ${model.units.system === 'yards' ? 'feet' : 'metres'}`,
      units: model.units,
      placed: model.placed,
      slopeLegend: false,
    },
    description,
  );
  const whole = inset === null ? plate : withInset(plate, inset, view, style, model);
  return { svg: trusted(markup(whole)), denominator: denominatorOf(view), ballBeyond: false };
}

/** Width of a card inside its margins: 4.25 in less twice 0.16 in. */
export const cardWidth = (4.25 - 2 * 0.16) * 96;

/** One flag's map for the card: 1:480 whatever the ground, centred on the green and as many balls as fit. */
export function cardMap(
  model: PlaybookModel,
  hole: PlaybookHole,
  flag: PlaybookFlag,
  height: number,
): PageMap {
  const style = paperStyle(`c${safeId(hole.id)}-${safeId(flag.mark.id)}`);
  const layout = { width: cardWidth, height, footHeight: 0 };
  const view = cardView(hole, style, layout);
  const content = flagContent(hole, flag);
  const inset = insetBox(view, style, model, content);
  const plate = drawPlate(
    layout,
    view,
    style,
    { ...content, keepClear: [inset] },
    { title: hole.name, subtitle: '', units: model.units, placed: model.placed, slopeLegend: false },
    flagDescription(hole, flag),
  );
  return {
    svg: trusted(markup(withInset(plate, inset, view, style, model))),
    denominator: denominatorOf(view),
    ballBeyond: anyBallBeyond(
      view,
      style,
      hole.balls.map((ball) => ball.mark),
    ),
  };
}

/** Ground kept round the green on a card, drawing units: its fringe. */
const greenRim = 14;

/** True scale first: the green whole, then moved toward the balls as far as the green stays whole. */
function cardView(hole: PlaybookHole, style: PlateStyle, layout: PlateLayout): PlateView {
  const box = mapBox(layout, style);
  const unitsPerM = paperUnitsPerM(smallestScaleDenominator);
  const green: PlateView = {
    ...fitView(hole.greenPoints, box, { upBearingDeg: hole.playBearingDeg }),
    unitsPerM,
  };
  const { toDrawing, toPlane } = projection(green);
  const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
  const shift = (axis: 0 | 1, size: number): number => {
    const greenAt = hole.greenPoints.map((p) => toDrawing(p)[axis]);
    const allAt = [...greenAt, ...hole.balls.map((ball) => toDrawing(ball.mark.at)[axis])];
    const slack = Math.max(0, (size - (Math.max(...greenAt) - Math.min(...greenAt))) / 2 - greenRim);
    const wanted = (Math.max(...allAt) + Math.min(...allAt)) / 2 - middle[axis];
    return Math.max(-slack, Math.min(slack, wanted));
  };
  return { ...green, centre: toPlane([middle[0] + shift(0, box.width), middle[1] + shift(1, box.height)]) };
}

function flagContent(hole: PlaybookHole, flag: PlaybookFlag): MapContent {
  return {
    areas: hole.areas,
    base: 'lightRough',
    relief: hole.relief,
    marks: { balls: hole.balls.map((ball) => ball.mark), flags: [flag.mark] },
    measurements: null,
    shots: [],
    links: flag.rows.map((row) => row.link),
    names: 'penalties',
  };
}

const flagDescription = (hole: PlaybookHole, flag: PlaybookFlag): string =>
  `Map of the green of hole ${hole.label} with flag ${flag.mark.label}: a dashed line from each ball to the ring where it should land. The table says the same in figures.`;

const denominatorOf = (view: PlateView): number => paperUnitsPerM(1) / view.unitsPerM;

/**
 * The small box with scale, and north where it is known, in the corner of a map without a foot where it hides fewest
 * balls, flags and landing spots; the lower right one where that is free.
 */
function insetBox(view: PlateView, style: PlateStyle, model: PlaybookModel, content: MapContent): Box {
  const width = 2 * barLengthM(model.units) * view.unitsPerM + 42 + (model.placed ? 18 : 0);
  const height = 26;
  const { box } = view;
  const { toDrawing } = projection(view);
  const marks = [
    ...markBoxes(view, style, content.marks),
    ...(content.links ?? []).map(({ landing }) => {
      const [x, y] = toDrawing(landing);
      return grown({ x, y, width: 0, height: 0 }, 5 * style.symbolScale);
    }),
  ];
  const right = box.x + box.width - width;
  const bottom = box.y + box.height - height;
  const corners = [
    { x: right, y: bottom },
    { x: box.x, y: bottom },
    { x: right, y: box.y },
    { x: box.x, y: box.y },
  ].map((at) => ({ ...at, width, height }));
  const hidden = corners.map((corner) => marks.filter((mark) => overlaps(mark, corner)).length);
  return corners[hidden.indexOf(Math.min(...hidden))] ?? { x: right, y: bottom, width, height };
}

function withInset(
  plate: SvgNode,
  inset: Box,
  view: PlateView,
  style: PlateStyle,
  model: PlaybookModel,
): SvgNode {
  const bar = inset.x + 10 + (model.placed ? 18 : 0);
  const node = element(
    'g',
    { 'data-part': 'inset' },
    element('rect', { ...inset, fill: style.inks.sheet, stroke: style.inks.ink, 'stroke-width': 0.9 }),
    model.placed ? northArrow([inset.x + 12, inset.y + 17], style, view.upBearingDeg, true) : null,
    scaleBar([bar, inset.y + inset.height - 6], view, style, model.units),
  );
  return { ...plate, children: [...plate.children, node] };
}

/** Ids may hold anything; what goes into a reference inside the drawing is kept to letters and digits. */
const safeId = (id: string): string => id.replace(/[^a-zA-Z0-9]/g, (c) => `_${c.charCodeAt(0).toString(16)}`);
