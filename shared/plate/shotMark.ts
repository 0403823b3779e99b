import { planePoint } from '../geometry/points.ts';
import type { PlanePoint } from '../geometry/points.ts';
import type { FinishEllipse, PlanOption } from '../planner/plan.ts';
import { element, group, round2 } from './element.ts';
import { holedCode, isTroubleFinish } from './finishCodes.ts';
import { ellipsePoints, pointsEllipse } from './finishEllipse.ts';
import { landingRing } from './marks.ts';
import { openPath, segment } from './pathData.ts';
import { dashes, hatch, strokes } from './pattern.ts';
import { shapeFromRings } from './shape.ts';
import { aimEnd } from './shotLabels.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { PlateView, XY } from './view.ts';
import { projection } from './view.ts';

/** One option drawn on the map. */
export interface DrawnShot {
  readonly option: PlanOption;
  readonly ball: PlanePoint;
  readonly flag: PlanePoint;
  /** A second option is the same drawing in the second ink, without finishes. */
  readonly role: 'proposed' | 'second';
  /** A plan not yet firm is dashed throughout. */
  readonly coarse: boolean;
  /** "aim 3 ft right"; empty for none. */
  readonly aimText: string;
  /** "land 2 paces on", or which of several it is; beside its landing spot, or the end of a roll. Empty for none. */
  readonly landText: string;
}

/** Finishes drawn, at most: enough to see the spread, few enough to count. */
export const drawnFinishes = 160;

export function drawShot(view: PlateView, style: PlateStyle, shot: DrawnShot): SvgNode {
  const { option, role } = shot;
  const { inks } = style;
  const k = style.symbolScale;
  const { toDrawing } = projection(view);
  const ink = role === 'proposed' ? inks.propose : inks.ink2;
  const parts = pathParts(option, toDrawing);
  const dashOf = (normal: string | null): Record<string, string> =>
    shot.coarse
      ? { 'stroke-dasharray': dashes(style, 6, 5) }
      : normal === null
        ? {}
        : { 'stroke-dasharray': normal };
  const cased = (d: string, width: number, more: Record<string, string | number>): (SvgNode | null)[] => [
    strokes(d, inks.halo, (width + 3) * k, { 'stroke-linecap': 'round', 'stroke-opacity': 0.85 }),
    strokes(d, ink, width * k, more),
  ];
  const landing = option.landing === null ? null : toDrawing(option.landing);
  return element(
    'g',
    { 'data-part': 'shot', 'data-role': role, 'data-option': option.id },
    role === 'proposed' ? finishes(option, toDrawing, ink, style) : null,
    aimLine(shot, toDrawing, ink, style),
    landingZone(option, view, ink, style),
    ...cased(parts.flight, 2.5, dashOf(dashes(style, 13, 6))),
    ...cased(parts.hops, 1.9, dashOf(null)),
    ...cased(parts.roll, 3.2, { 'stroke-linecap': 'round', 'stroke-linejoin': 'round', ...dashOf(null) }),
    parts.beads.length === 0
      ? null
      : element('path', {
          d: parts.beads.map(([x, y]) => `M${round2(x)} ${round2(y)}h0`).join(''),
          stroke: ink,
          'stroke-width': 4.4 * k,
          'stroke-linecap': 'round',
          fill: 'none',
        }),
    landing === null ? null : landingRing(landing, ink, style),
  );
}

interface PathParts {
  readonly flight: string;
  readonly hops: string;
  readonly roll: string;
  readonly beads: readonly XY[];
}

function pathParts(option: PlanOption, toDrawing: (p: PlanePoint) => XY): PathParts {
  const { pointsM, touchdowns, rollFrom } = option.path;
  const at = (i: number): XY => toDrawing(planePoint(pointsM[3 * i] ?? 0, pointsM[3 * i + 1] ?? 0));
  const count = Math.floor(pointsM.length / 3);
  const run = (from: number, to: number): XY[] =>
    Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => at(from + i));
  // A putt may skip off the face; it has no landing spot and is drawn as the roll it is.
  const rolled = option.landing === null;
  const firstDown = rolled ? undefined : touchdowns[0];
  const hopStops =
    firstDown === undefined ? [] : [...touchdowns, rollFrom].filter((i, n, all) => i !== all[n - 1]);
  const hops = hopStops.slice(1).map((to, n) => {
    const [x1, y1] = at(hopStops[n] ?? to);
    const [x2, y2] = at(to);
    // A hop bows up the sheet by a sixth of its length: seen from above it would be a line like the roll.
    return `M${round2(x1)} ${round2(y1)}Q${round2((x1 + x2) / 2)} ${round2((y1 + y2) / 2 - Math.hypot(x2 - x1, y2 - y1) * 0.34)} ${round2(x2)} ${round2(y2)}`;
  });
  const roll = run(rolled ? 0 : Math.min(rollFrom, count - 1), count - 1);
  return {
    flight: firstDown === undefined ? '' : openPath(run(0, firstDown)),
    hops: hops.join(''),
    roll: roll.length > 1 ? openPath(roll) : '',
    beads: hopStops.slice(1).map(at),
  };
}

function aimLine(
  shot: DrawnShot,
  toDrawing: (p: PlanePoint) => XY,
  ink: string,
  style: PlateStyle,
): SvgNode | null {
  if (shot.option.playAway && shot.aimText === '') return null;
  const k = style.symbolScale;
  const from = toDrawing(shot.ball);
  const to = toDrawing(aimEnd(shot));
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 12 * k) return null;
  const dx = (to[0] - from[0]) / length;
  const dy = (to[1] - from[1]) / length;
  const wing = (side: number): XY => [
    to[0] - dx * 10 * k - dy * 4.4 * k * side,
    to[1] - dy * 10 * k + dx * 4.4 * k * side,
  ];
  const neck: XY = [to[0] - dx * 10 * k, to[1] - dy * 10 * k];
  return group(
    'aim',
    strokes(segment(from[0], from[1], neck[0], neck[1]), style.inks.halo, 4 * k, { 'stroke-opacity': 0.7 }),
    strokes(segment(from[0], from[1], neck[0], neck[1]), ink, 1.7 * k, {
      'stroke-dasharray': `0 ${round2(4.6 * k)}`,
      'stroke-linecap': 'round',
    }),
    element('path', {
      d: `${openPath([wing(1), to, wing(-1)])}Z`,
      fill: style.inks.sheet,
      stroke: ink,
      'stroke-width': 1.6 * k,
      'stroke-linejoin': 'round',
    }),
  );
}

/** The middle half of the landing spots as a hatched ellipse. */
function landingZone(option: PlanOption, view: PlateView, ink: string, style: PlateStyle): SvgNode | null {
  const ellipse = pointsEllipse(option.landingsM, 1.18);
  if (ellipse === null) return null;
  const { toDrawing } = projection(view);
  const ring = ellipsePoints(ellipse).map(toDrawing);
  const shape = shapeFromRings([ring]);
  const k = style.symbolScale;
  const lines = hatch(
    { shape, style, clip: view.box, origin: [0, 0], seed: 0, keepClear: [], above: [] },
    { angleDeg: 45, spacing: 3.4 * k, dash: Infinity, gap: 0 },
  );
  const outline = `${openPath(ring)}Z`;
  return group(
    'landing-zone',
    strokes(outline, style.inks.halo, 3.6 * k, { 'stroke-opacity': 0.85 }),
    strokes(lines, ink, 0.9 * k, style.mono ? {} : { 'stroke-opacity': 0.6 }),
    strokes(outline, ink, 1.2 * k),
  );
}

function finishes(
  option: PlanOption,
  toDrawing: (p: PlanePoint) => XY,
  ink: string,
  style: PlateStyle,
): SvgNode {
  const k = style.symbolScale;
  const dots: string[] = [];
  const crosses: string[] = [];
  const count = Math.min(drawnFinishes, option.finishCodes.length);
  for (let i = 0; i < count; i += 1) {
    const code = option.finishCodes[i] ?? 0;
    if (code === holedCode) continue;
    const [x, y] = toDrawing(planePoint(option.finishesM[2 * i] ?? 0, option.finishesM[2 * i + 1] ?? 0));
    if (isTroubleFinish(code)) {
      const r = 3 * k;
      crosses.push(segment(x - r, y - r, x + r, y + r), segment(x - r, y + r, x + r, y - r));
    } else dots.push(`M${round2(x)} ${round2(y)}h0`);
  }
  const ellipse = (e: FinishEllipse): string => `${openPath(ellipsePoints(e).map(toDrawing))}Z`;
  const cased = (d: string, width: number, more: Record<string, string>): (SvgNode | null)[] => [
    strokes(d, style.inks.halo, (width + 2) * k, { 'stroke-opacity': 0.7 }),
    strokes(d, ink, width * k, more),
  ];
  return group(
    'finishes',
    strokes(dots.join(''), ink, 2.3 * k, {
      'stroke-linecap': 'round',
      'stroke-opacity': style.mono ? 1 : 0.72,
    }),
    ...cased(ellipse(option.ellipse50), 1.7, {}),
    ...cased(ellipse(option.ellipse90), 1.5, {
      'stroke-dasharray': `0 ${round2(4 * k)}`,
      'stroke-linecap': 'round',
    }),
    strokes(crosses.join(''), style.inks.halo, 4 * k, {}),
    strokes(crosses.join(''), ink, 1.7 * k, {}),
  );
}
