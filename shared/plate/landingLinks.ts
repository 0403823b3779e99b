import type { PlanePoint } from '../geometry/points.ts';
import { group, round2 } from './element.ts';
import { landingRing } from './marks.ts';
import { segment } from './pathData.ts';
import { dashes, strokes } from './pattern.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, PlateView } from './view.ts';
import { projection } from './view.ts';

/** From a ball to the spot where its shot should land, or along a putt's start line. */
export interface LandingLink {
  readonly ball: PlanePoint;
  readonly landing: PlanePoint;
  /** A putt has no landing: its line is solid and ends where it is aimed. */
  readonly rolled: boolean;
}

/** All shots of a flag on one map: dashes for the flight, a ring where it lands. */
export function drawLandingLinks(view: PlateView, style: PlateStyle, links: readonly LandingLink[]): SvgNode {
  const { toDrawing } = projection(view);
  const k = style.symbolScale;
  const ink = style.inks.propose;
  return group(
    'landing-links',
    ...links.flatMap(({ ball, landing, rolled }) => {
      const [x1, y1] = toDrawing(ball);
      const [x2, y2] = toDrawing(landing);
      const d = segment(x1, y1, x2, y2);
      return [
        strokes(d, style.inks.halo, 5 * k, { 'stroke-opacity': 0.9 }),
        strokes(d, ink, 2 * k, rolled ? {} : { 'stroke-dasharray': dashes(style, 6.5, 3.5) }),
      ];
    }),
    ...links.filter((link) => !link.rolled).map((link) => landingRing(toDrawing(link.landing), ink, style)),
  );
}

/** Boxes along the links and round their rings, for texts to keep clear of. */
export function landingLinkBoxes(view: PlateView, style: PlateStyle, links: readonly LandingLink[]): Box[] {
  const { toDrawing } = projection(view);
  const half = 5 * style.symbolScale;
  return links.flatMap(({ ball, landing }) => {
    const [x1, y1] = toDrawing(ball);
    const [x2, y2] = toDrawing(landing);
    const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / (3 * half)));
    return Array.from({ length: steps + 1 }, (_, i) => ({
      x: round2(x1 + ((x2 - x1) * i) / steps - half),
      y: round2(y1 + ((y2 - y1) * i) / steps - half),
      width: 2 * half,
      height: 2 * half,
    }));
  });
}
