import { contours } from 'd3-contour';
import { planePoint } from '../../../shared/geometry/points.ts';
import type { PlanePoint, PlaneRing } from '../../../shared/geometry/points.ts';
import type { ReliefDrawing } from '../../../shared/plate/relief.ts';
import { everyKind, heightAt } from './complex.ts';

const cellM = 0.25;
const count = 128;
const origin = -16;
const plane = ([x = 0, y = 0]: readonly number[]): PlanePoint =>
  planePoint(origin + (x - 0.5) * cellM, origin + (y - 0.5) * cellM);

const grid = (value: (east: number, north: number) => number): number[] =>
  Array.from({ length: count * count }, (_, i) =>
    value(origin + (i % count) * cellM, origin + Math.floor(i / count) * cellM),
  );

const gradient = (e: number, n: number): readonly [number, number] => [
  (heightAt(e + 0.05, n) - heightAt(e - 0.05, n)) / 0.1,
  (heightAt(e, n + 0.05) - heightAt(e, n - 0.05)) / 0.1,
];

/** The relief of the invented complex, from its analytic surface. */
export function analyticRelief(): ReliefDrawing {
  const heights = grid(heightAt);
  const slopes = grid((e, n) => 100 * Math.hypot(...gradient(e, n)));
  const rise = contours().size([count, count]);
  const steeper = (from: number): PlaneRing[] =>
    rise
      .thresholds([from])(slopes)
      .flatMap((level) => level.coordinates.flat())
      .map((ring) => ring.slice(1).map(plane));
  const arrows: { at: PlanePoint; downhillBearingDeg: number; slopePct: number }[] = [];
  for (let e = -12; e <= 12; e += 3.6) {
    for (let n = -12; n <= 12; n += 3.6) {
      const [ge, gn] = gradient(e, n);
      arrows.push({
        at: planePoint(e, n),
        downhillBearingDeg: (Math.atan2(-ge, -gn) * 180) / Math.PI,
        slopePct: 100 * Math.hypot(ge, gn),
      });
    }
  }
  return {
    greens: everyKind.filter((a) => a.kind === 'green').map((a) => a.polygon),
    slopeClasses: [1, 2, 3, 4].map((fromPct) => ({ fromPct, rings: steeper(fromPct) })),
    contours: Array.from({ length: 16 }, (_, i) => 12 + i * 0.05).map((heightM, i) => ({
      heavy: i % 2 === 0,
      label: heightM.toFixed(1),
      unsure: false,
      lines: rise
        .thresholds([heightM])(heights)
        .flatMap((level) => level.coordinates.flat())
        .map((ring) => ring.map(plane)),
    })),
    arrows,
    lines: [
      { kind: 'tierEdge', points: [-11, -8, -4, 0, 4, 8, 10].map((e) => planePoint(e, 3.4 + 0.12 * e)) },
    ],
    downhillAt: ({ eastM, northM }) => {
      const [ge, gn] = gradient(eastM, northM);
      return (Math.atan2(-ge, -gn) * 180) / Math.PI;
    },
  };
}
