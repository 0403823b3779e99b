import { ceilingOver } from './ceiling.ts';
import { highestOf } from './highestOf.ts';
import type { Surface } from './surface.ts';

/** How far beyond its edge a grid's slope is still felt, metres: the ground levels out over about this distance. */
const FADE_M = 20;
/** Numbers kept for a node: height, then the slopes and the twist times the cell size. */
export const PER_NODE = 4;

/** A surface that is wholly in its nodes, so that it can be made again elsewhere, the same to the last bit. */
export interface GridSurface extends Surface {
  /** Height, then the slopes eastward and northward and the twist times the cell size, node by node. */
  readonly nodes: Float64Array;
}

/** Where a grid lies and how fine it is. */
export interface GridShape {
  readonly originEastM: number;
  readonly originNorthM: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
}

/** A box of the plane, metres. */
export interface Box {
  readonly westM: number;
  readonly southM: number;
  readonly eastM: number;
  readonly northM: number;
}

/** The grid that covers a box from its south-west corner in whole cells, at least two nodes each way. */
export function gridOver(box: Box, cellM: number): GridShape {
  return {
    originEastM: box.westM,
    originNorthM: box.southM,
    cellM,
    columns: Math.max(2, Math.ceil((box.eastM - box.westM) / cellM - 1e-9) + 1),
    rows: Math.max(2, Math.ceil((box.northM - box.southM) / cellM - 1e-9) + 1),
  };
}

/**
 * Bicubic Hermite patches over a regular grid from heights and slopes at its nodes: height and slope are continuous
 * everywhere, and anything that is cubic in each direction within a cell is reproduced. The twist at a node is the mean
 * of the two central differences of the slopes. Reading a height allocates nothing.
 *
 * Beyond the grid the ground goes on with the slope of the edge, which fades over `FADE_M`, so no height runs away.
 *
 * @param slopesEast dz/dEast at nodes, row by row from the south-west
 * @param slopesNorth dz/dNorth at nodes
 */
export function hermiteGrid(
  shape: GridShape,
  heightsM: Float64Array,
  slopesEast: Float64Array,
  slopesNorth: Float64Array,
): GridSurface {
  const { cellM, columns, rows } = shape;
  const nodes = new Float64Array(columns * rows * PER_NODE);
  for (let row = 0; row < rows; row += 1) {
    const below = Math.max(row - 1, 0);
    const above = Math.min(row + 1, rows - 1);
    for (let column = 0; column < columns; column += 1) {
      const left = Math.max(column - 1, 0);
      const right = Math.min(column + 1, columns - 1);
      const node = row * columns + column;
      const acrossRows =
        ((slopesEast[above * columns + column] as number) -
          (slopesEast[below * columns + column] as number)) /
        (above - below);
      const acrossColumns =
        ((slopesNorth[row * columns + right] as number) - (slopesNorth[row * columns + left] as number)) /
        (right - left);
      nodes[node * PER_NODE] = heightsM[node] as number;
      nodes[node * PER_NODE + 1] = (slopesEast[node] as number) * cellM;
      nodes[node * PER_NODE + 2] = (slopesNorth[node] as number) * cellM;
      nodes[node * PER_NODE + 3] = 0.5 * (acrossRows + acrossColumns) * cellM;
    }
  }
  return patchesOver(shape, heightsM, nodes);
}

/** The surface of nodes made before (`GridSurface.nodes`). */
export function hermiteGridOf(shape: GridShape, nodes: Float64Array): GridSurface {
  const heightsM = new Float64Array(shape.columns * shape.rows);
  for (let node = 0; node < heightsM.length; node += 1) heightsM[node] = nodes[node * PER_NODE] as number;
  return patchesOver(shape, heightsM, nodes);
}

function patchesOver(shape: GridShape, heightsM: Float64Array, nodes: Float64Array): GridSurface {
  const { originEastM, originNorthM, cellM, columns, rows } = shape;
  const perCell = 1 / cellM;
  const lastColumn = columns - 1;
  const lastRow = rows - 1;
  const stride = columns * PER_NODE;
  const point = new Float64Array(2);
  // In an array, because engines unwrap every fraction that a closure holds.
  const frame = Float64Array.of(originEastM, originNorthM, perCell);

  const sampleAt = (at: Float64Array, out: Float64Array): void => {
    const scale = frame[2] as number;
    const x = ((at[0] as number) - (frame[0] as number)) * scale;
    const y = ((at[1] as number) - (frame[1] as number)) * scale;
    // Written so that NaN takes the slow path too.
    const inside = x >= 0 && x <= lastColumn && y >= 0 && y <= lastRow;
    const cx = inside ? x : Math.min(Math.max(x, 0), lastColumn);
    const cy = inside ? y : Math.min(Math.max(y, 0), lastRow);
    let column = cx | 0;
    let row = cy | 0;
    if (column === lastColumn) column -= 1;
    if (row === lastRow) row -= 1;
    const u = cx - column;
    const v = cy - row;

    // Cubic Hermite weights in u: value at either end, slope at either end, and their derivatives.
    const u1 = u - 1;
    const a1 = u * u * (3 - 2 * u);
    const a0 = 1 - a1;
    const b0 = u * u1 * u1;
    const b1 = u * u * u1;
    const da1 = -6 * u * u1;
    const db0 = u1 * (3 * u - 1);
    const db1 = u * (3 * u - 2);

    const sw = row * stride + column * PER_NODE;
    const se = sw + PER_NODE;
    const nw = sw + stride;
    const ne = nw + PER_NODE;
    const swHeight = nodes[sw] as number;
    const swEast = nodes[sw + 1] as number;
    const swNorth = nodes[sw + 2] as number;
    const swTwist = nodes[sw + 3] as number;
    const seHeight = nodes[se] as number;
    const seEast = nodes[se + 1] as number;
    const seNorth = nodes[se + 2] as number;
    const seTwist = nodes[se + 3] as number;
    const nwHeight = nodes[nw] as number;
    const nwEast = nodes[nw + 1] as number;
    const nwNorth = nodes[nw + 2] as number;
    const nwTwist = nodes[nw + 3] as number;
    const neHeight = nodes[ne] as number;
    const neEast = nodes[ne + 1] as number;
    const neNorth = nodes[ne + 2] as number;
    const neTwist = nodes[ne + 3] as number;

    // Height and northward slope along the south and the north side of the cell, with their east derivatives.
    const south = a0 * swHeight + a1 * seHeight + b0 * swEast + b1 * seEast;
    const southEast = da1 * (seHeight - swHeight) + db0 * swEast + db1 * seEast;
    const southNorth = a0 * swNorth + a1 * seNorth + b0 * swTwist + b1 * seTwist;
    const southTwist = da1 * (seNorth - swNorth) + db0 * swTwist + db1 * seTwist;
    const north = a0 * nwHeight + a1 * neHeight + b0 * nwEast + b1 * neEast;
    const northEast = da1 * (neHeight - nwHeight) + db0 * nwEast + db1 * neEast;
    const northNorth = a0 * nwNorth + a1 * neNorth + b0 * nwTwist + b1 * neTwist;
    const northTwist = da1 * (neNorth - nwNorth) + db0 * nwTwist + db1 * neTwist;

    const v1 = v - 1;
    const c1 = v * v * (3 - 2 * v);
    const c0 = 1 - c1;
    const d0 = v * v1 * v1;
    const d1 = v * v * v1;
    const dc1 = -6 * v * v1;
    const dd0 = v1 * (3 * v - 1);
    const dd1 = v * (3 * v - 2);

    const height = c0 * south + c1 * north + d0 * southNorth + d1 * northNorth;
    const east = (c0 * southEast + c1 * northEast + d0 * southTwist + d1 * northTwist) * scale;
    const up = (dc1 * (north - south) + dd0 * southNorth + dd1 * northNorth) * scale;
    if (inside) {
      out[0] = height;
      out[1] = east;
      out[2] = up;
      return;
    }
    const twist = (dc1 * (northEast - southEast) + dd0 * southTwist + dd1 * northTwist) * perCell * perCell;
    const beyondEast = (x - cx) * cellM;
    const beyondNorth = (y - cy) * cellM;
    const fadeEast = FADE_M / (FADE_M + Math.abs(beyondEast));
    const fadeNorth = FADE_M / (FADE_M + Math.abs(beyondNorth));
    const dx = beyondEast * fadeEast;
    const dy = beyondNorth * fadeNorth;
    out[0] = height + east * dx + up * dy + twist * dx * dy;
    out[1] = (east + twist * dy) * fadeEast * fadeEast;
    out[2] = (up + twist * dx) * fadeNorth * fadeNorth;
  };

  return {
    originEastM,
    originNorthM,
    cellM,
    columns,
    rows,
    heightsM,
    nodes,
    highestM: highestOf(shape, nodes, FADE_M),
    ceiling: ceilingOver(shape, nodes),
    sampleAt,
    sampleHeight(eastM, northM, out) {
      point[0] = eastM;
      point[1] = northM;
      sampleAt(point, out);
    },
  };
}
