import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { contourLines } from '../terrain/contourLines.ts';
import { fallArrows } from '../terrain/fallArrows.ts';
import { slopeAt } from '../terrain/slope.ts';
import { slopeClasses } from '../terrain/slopeClasses.ts';
import type { Surface } from '../terrain/surface.ts';
import { feetFromMetres } from '../units/conversions.ts';
import { decimals } from '../units/numerals.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { usualContourM } from './contourSteps.ts';
import { smoothedRing } from './shape.ts';
import type { ReliefDrawing } from './relief.ts';

export interface ReliefOptions {
  readonly units: UnitsPreference;
  /** Spacing of the fall arrows, metres. */
  readonly arrowSpacingM: number;
  /** Leave out the thin lines between: large type, and greens so steep that they would crowd. */
  readonly heavyOnly: boolean;
  /** Heights between contours, metres; `usualContourM` unless said otherwise. Every second one is heavy and carries its height. */
  readonly contourM?: number;
}

/**
 * What a fitted surface has to show on its greens. It does not depend on the view, so it can be kept while the ground
 * stays the same. Contour heights are told in the reader's unit, feet or metres, to one decimal.
 */
export function groundRelief(
  surface: Surface,
  greens: readonly PlanePolygon[],
  lines: ReliefDrawing['lines'],
  options: ReliefOptions,
): ReliefDrawing {
  const everyM = options.contourM ?? usualContourM(options.units);
  const cuts = greens.map((green) => green.map(smoothedRing));
  const perGreen = cuts.map((green) => slopeClasses(surface, green));
  const classes = (perGreen[0] ?? []).map(({ fromPct }, i) => ({
    fromPct,
    rings: perGreen.flatMap((list) => list[i]?.rings ?? []),
  }));
  const byHeight = new Map<number, PlanePoint[][]>();
  for (const green of cuts) {
    for (const { heightM, points, closed } of contourLines(surface, everyM, green)) {
      const step = Math.round(heightM / everyM);
      const first = points[0];
      const line = closed && first !== undefined ? [...points, first] : [...points];
      byHeight.set(step, [...(byHeight.get(step) ?? []), line]);
    }
  }
  const contours = [...byHeight]
    .sort(([a], [b]) => a - b)
    .map(([step, drawn]) => ({
      heavy: step % 2 === 0,
      label: step % 2 === 0 ? contourLabel(step * everyM, options.units, everyM) : '',
      lines: drawn,
      unsure: false,
    }))
    .filter((contour) => contour.heavy || !options.heavyOnly);
  return {
    greens,
    slopeClasses: classes,
    contours,
    arrows: greens.flatMap((green) => fallArrows(surface, green, options.arrowSpacingM)),
    lines,
    downhillAt: (at) => slopeAt(surface, at).downhillBearingDeg,
  };
}

/** Close contours in metres need the second decimal to be told apart. */
const contourLabel = (heightM: number, units: UnitsPreference, everyM: number): string =>
  units.system === 'yards'
    ? decimals(feetFromMetres(heightM), 1)
    : decimals(heightM, everyM < usualContourM(units) ? 2 : 1);
