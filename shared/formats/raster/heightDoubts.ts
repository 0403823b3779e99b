import { recordsOf } from '../../atlas/document.ts';
import type { GridNode } from '../../atlas/gridNodes.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import type { LocalFrame } from '../../geometry/localFrame.ts';
import type { PlanePoint } from '../../geometry/points.ts';
import { boundingBox, pointInPolygon } from '../../geometry/ring.ts';
import type { ImportWarning } from '../import/importPreview.ts';

const FEWEST_PAIRS = 4;
/** Pairs whose heights differ by less than this in all say nothing of a unit. */
const LEAST_SPREAD_M = 0.25;
/** Greens are built to 1 to 4 %; tilts twice that can hardly be kept or putted. */
const STEEPEST_GREEN_PCT = 8;

export interface DatumComparison {
  readonly pairs: number;
  /** What the grid must be raised by to meet the atlas's own heights: the median. */
  readonly shiftM: number;
  /** How many metres of the grid go with one metre of the atlas's heights; NaN where those hardly differ. */
  readonly ratio: number;
}

/** The grid beside the spot heights that were measured on the same ground. */
export function comparedWithSpots(
  document: AtlasDocument,
  frame: LocalFrame,
  nodes: readonly GridNode[],
  reachM: number,
): DatumComparison {
  const pairs = recordsOf(document, 'spotHeight').flatMap((spot) => {
    const at = frame.toPlane(spot.at);
    const grid = nearbyMean(nodes, at, reachM);
    return grid === null ? [] : [{ grid, own: spot.heightM }];
  });
  const differences = pairs.map(({ grid, own }) => own - grid).sort((a, b) => a - b);
  const mean = (of: (pair: { grid: number; own: number }) => number): number =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [grid, own] = [mean((p) => p.grid), mean((p) => p.own)];
  const spread = mean((p) => (p.own - own) * (p.own - own));
  const together = mean((p) => (p.own - own) * (p.grid - grid));
  return {
    pairs: pairs.length,
    shiftM: differences[Math.floor(differences.length / 2)] ?? 0,
    ratio: pairs.length >= FEWEST_PAIRS && Math.sqrt(spread) > LEAST_SPREAD_M / 2 ? together / spread : NaN,
  };
}

/** What about the heights looks as if their unit were another than was taken. */
export function unitWarnings(
  document: AtlasDocument,
  frame: LocalFrame,
  nodes: readonly GridNode[],
  comparison: DatumComparison,
  raster: { readonly unitStated: boolean; readonly positionsInFeet: boolean; readonly metresPerUnit: number },
): readonly ImportWarning[] {
  const warnings: ImportWarning[] = [];
  const remedy = 'If they are in feet, say so and import again.';
  const metric = raster.metresPerUnit === 1;
  if (metric && comparison.ratio > 2.5 && comparison.ratio < 4.2)
    warnings.push({
      code: 'suspicious-height-unit',
      text: `The heights rise ${comparison.ratio.toFixed(1)} times as much as those measured on the same ground: they look like feet taken for metres. ${remedy}`,
    });
  else if (metric && !raster.unitStated && raster.positionsInFeet)
    warnings.push({
      code: 'suspicious-height-unit',
      text: `The file gives positions in feet and does not say what its heights are in; they were taken for metres. ${remedy}`,
    });
  else if (metric) {
    const steep = recordsOf(document, 'area')
      .filter(({ kind }) => kind === 'green')
      .flatMap(({ rings }) => {
        const slope = tiltPct(
          nodes,
          rings.map((ring) => ring.map(frame.toPlane)),
        );
        return slope !== null && slope > STEEPEST_GREEN_PCT ? [slope] : [];
      });
    const [first] = steep;
    if (first !== undefined)
      warnings.push({
        code: 'suspicious-height-unit',
        text: `${steep.length === 1 ? 'A green would tilt' : `${String(steep.length)} greens would tilt, one`} by ${first.toFixed(0)} % as a whole, more than any green is built to: the heights may be feet taken for metres, or show treetops instead of the ground. ${remedy}`,
      });
  }
  return warnings;
}

function nearbyMean(nodes: readonly GridNode[], at: PlanePoint, reachM: number): number | null {
  let sum = 0;
  let weight = 0;
  for (const node of nodes) {
    const dx = node.at.eastM - at.eastM;
    const dy = node.at.northM - at.northM;
    const square = dx * dx + dy * dy;
    if (square > reachM * reachM) continue;
    const w = 1 / (square + 1e-4);
    sum += w * node.heightM;
    weight += w;
  }
  return weight === 0 ? null : sum / weight;
}

/** Slope of the plane through the nodes on a green. */
function tiltPct(nodes: readonly GridNode[], polygon: readonly (readonly PlanePoint[])[]): number | null {
  const box = boundingBox(polygon[0] ?? []);
  if (box === null) return null;
  const inside = nodes.filter(
    ({ at }) =>
      at.eastM >= box.westM &&
      at.eastM <= box.eastM &&
      at.northM >= box.southM &&
      at.northM <= box.northM &&
      pointInPolygon(at, polygon),
  );
  if (inside.length < 6) return null;
  const mean = (of: (node: GridNode) => number): number =>
    inside.reduce((sum, node) => sum + of(node), 0) / inside.length;
  const [mx, my, mz] = [mean((n) => n.at.eastM), mean((n) => n.at.northM), mean((n) => n.heightM)];
  const xx = mean((n) => (n.at.eastM - mx) * (n.at.eastM - mx));
  const yy = mean((n) => (n.at.northM - my) * (n.at.northM - my));
  const xy = mean((n) => (n.at.eastM - mx) * (n.at.northM - my));
  const xz = mean((n) => (n.at.eastM - mx) * (n.heightM - mz));
  const yz = mean((n) => (n.at.northM - my) * (n.heightM - mz));
  const determinant = xx * yy - xy * xy;
  if (determinant < 1e-6 * xx * yy) return null;
  const [sx, sy] = [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant];
  return 100 * Math.sqrt(sx * sx + sy * sy);
}
