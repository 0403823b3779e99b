import { planePoint } from '../../../shared/geometry/points.ts';
import { groundRelief } from '../../../shared/plate/groundRelief.ts';
import type { ReliefDrawing } from '../../../shared/plate/relief.ts';
import type { Surface } from '../../../shared/terrain/surface.ts';
import { everyKind, heightAt } from './complex.ts';

const cellM = 0.25;
const count = 128;
const origin = -16;

/** The analytic surface of the invented complex on a grid. */
export const analyticSurface: Surface = {
  originEastM: origin,
  originNorthM: origin,
  cellM,
  columns: count,
  rows: count,
  heightsM: Float64Array.from({ length: count * count }, (_, i) =>
    heightAt(origin + (i % count) * cellM, origin + Math.floor(i / count) * cellM),
  ),
  sampleAt: ([east = NaN, north = NaN], out) => analyticSurface.sampleHeight(east, north, out),
  sampleHeight: (east, north, out) => {
    out[0] = heightAt(east, north);
    out[1] = (heightAt(east + 0.05, north) - heightAt(east - 0.05, north)) / 0.1;
    out[2] = (heightAt(east, north + 0.05) - heightAt(east, north - 0.05)) / 0.1;
  },
};

/** The relief of the invented complex. */
export const analyticRelief = (): ReliefDrawing =>
  groundRelief(
    analyticSurface,
    everyKind.filter((a) => a.kind === 'green').map((a) => a.polygon),
    [{ kind: 'tierEdge', points: [-11, -8, -4, 0, 4, 8, 10].map((e) => planePoint(e, 3.4 + 0.12 * e)) }],
    { units: { system: 'metres', paceM: 0.9 }, arrowSpacingM: 2.6, heavyOnly: false },
  );
