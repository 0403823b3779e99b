import { planePoint } from '../geometry/points.ts';
import type { PlanOption } from '../planner/plan.ts';
import { element } from './element.ts';
import { openPath } from './pathData.ts';
import type { LineAxis } from './sectionLine.ts';
import type { PlateStyle } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

/** The band that holds four landings in five: the drawn flight scaled to their near and far ends. */
export function flightBand(
  option: PlanOption,
  flightM: readonly XY[],
  axis: LineAxis,
  groundAt: (alongM: number) => number,
  toDrawing: (point: XY) => XY,
  style: PlateStyle,
): SvgNode | null {
  const first = flightM[0];
  const last = flightM[flightM.length - 1];
  const n = Math.floor(option.landingsM.length / 2);
  if (first === undefined || last === undefined || n < 10) return null;
  const carries = Array.from({ length: n }, (_, i) =>
    axis.along(planePoint(option.landingsM[2 * i] ?? 0, option.landingsM[2 * i + 1] ?? 0)),
  ).sort((a, b) => a - b);
  const carry = last[0] - first[0];
  if (!(carry > 0.2)) return null;
  const near = Math.max(0.2, (carries[Math.floor(n * 0.1)] ?? carry) / carry);
  const far = Math.max(near, (carries[Math.ceil(n * 0.9) - 1] ?? carry) / carry);
  // Same launch at another speed: a flight scales as a whole about where it starts, and ends on the ground there.
  const scaledBy = (f: number): XY[] => {
    const endM = groundAt(first[0] + carry * f);
    const missM = endM - (first[1] + (last[1] - first[1]) * f);
    return flightM.map(([alongM, heightM], i): XY => {
      const x = first[0] + (alongM - first[0]) * f;
      const t = flightM.length > 1 ? i / (flightM.length - 1) : 1;
      const y = first[1] + (heightM - first[1]) * f + missM * t;
      return toDrawing([x, y]);
    });
  };
  const { inks } = style;
  return element('path', {
    'data-part': 'flight-band',
    d: `${openPath([...scaledBy(near), ...scaledBy(far).reverse()])}Z`,
    fill: style.mono ? 'none' : inks.proposeWash,
    stroke: inks.propose,
    'stroke-width': style.mono ? 0.5 : 0.7 * style.symbolScale,
    'stroke-opacity': style.mono ? undefined : 0.35,
  });
}
