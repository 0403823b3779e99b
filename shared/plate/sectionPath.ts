import { planePoint } from '../geometry/points.ts';
import type { PlanOption } from '../planner/plan.ts';
import type { SectionGround } from '../terrain/section.ts';
import type { LineAxis } from './sectionLine.ts';
import type { XY } from './view.ts';

/** A path seen from the side: [metres along the line, height above datum] at each of its points. */
export interface SidePath {
  readonly pointsM: readonly XY[];
  /** The flight alone, ending where it lands; empty for a roll. */
  readonly flightM: readonly XY[];
  /** Index of the landing; undefined for a roll. */
  readonly firstDown: number | undefined;
  /** Index from which the ball rolls. */
  readonly rollFrom: number;
  readonly rolled: boolean;
}

/**
 * The path of an option over the line of a section. It runs beside that line, over ground a little higher or lower: each
 * stretch of it is shifted by what the ground differs at its two ends, so that it leaves, touches and follows the ground
 * that is drawn.
 */
export function sidePath(
  option: PlanOption,
  ground: SectionGround,
  axis: LineAxis,
  groundAt: (alongM: number) => number,
): SidePath {
  const out = new Float64Array(4);
  const count = Math.floor(option.path.pointsM.length / 3);
  const rolled = option.landing === null;
  const path = Array.from({ length: count }, (_, i) => {
    const east = option.path.pointsM[3 * i] ?? 0;
    const north = option.path.pointsM[3 * i + 1] ?? 0;
    ground.sample(Float64Array.of(east, north), out);
    const alongM = axis.along(planePoint(east, north));
    return { alongM, heightM: option.path.pointsM[3 * i + 2] ?? 0, shiftM: groundAt(alongM) - (out[0] ?? 0) };
  });
  const firstDown = rolled ? undefined : option.path.touchdowns[0];
  const flightM =
    firstDown === undefined
      ? []
      : path.slice(0, firstDown + 1).map(({ alongM, heightM }, i, all): XY => {
          const t = all.length > 1 ? i / (all.length - 1) : 1;
          const from = all[0]?.shiftM ?? 0;
          return [alongM, heightM + from + ((all[all.length - 1]?.shiftM ?? 0) - from) * t];
        });
  const pointsM = path.map(({ alongM, heightM, shiftM }, i): XY => {
    const flown = flightM[i];
    if (flown !== undefined) return flown;
    return [alongM, rolled ? groundAt(alongM) : Math.max(heightM + shiftM, groundAt(alongM))];
  });
  const rollFrom = rolled ? 0 : Math.min(option.path.rollFrom, Math.max(0, count - 1));
  return { pointsM, flightM, firstDown, rollFrom, rolled };
}
