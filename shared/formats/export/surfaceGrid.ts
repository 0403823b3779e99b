import type { LocalFrame } from '../../geometry/localFrame.ts';
import { planePoint } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { type CoordinateSystem, utmSystemAt } from '../raster/coordinateSystem.ts';

/** Any surface that says its height at a place of the plane. */
export interface HeightField {
  sampleHeight(eastM: number, northM: number, out: Float64Array): void;
}

/** Heights on a grid of the UTM zone of the place, rows from the north; NaN outside the box. */
export interface SurfaceGrid {
  readonly system: CoordinateSystem;
  readonly epsg: number;
  /** Place of the middle of the north-west cell. */
  readonly westX: number;
  readonly northY: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  readonly heightsM: Float64Array;
}

const MOST_CELLS = 4_000_000;

/** Samples a surface at the nodes of a UTM grid that fall in a box of the plane. @throws InputProblem for too fine a grid */
export function surfaceGrid(
  frame: LocalFrame,
  field: HeightField,
  box: { readonly westM: number; readonly southM: number; readonly eastM: number; readonly northM: number },
  cellM: number,
): SurfaceGrid {
  const system = utmSystemAt(frame.anchor);
  const corners = [
    [box.westM, box.southM],
    [box.eastM, box.southM],
    [box.eastM, box.northM],
    [box.westM, box.northM],
  ].map(([east = NaN, north = NaN]) => system.fromLonLat(frame.toLonLat(planePoint(east, north))));
  // Nodes at whole multiples of the cell, so that grids of neighbouring holes fit together.
  const down = (value: number): number => Math.floor(value / cellM) * cellM;
  const westX = down(Math.min(...corners.map(([x]) => x)));
  const southY = down(Math.min(...corners.map(([, y]) => y)));
  const columns = Math.ceil((Math.max(...corners.map(([x]) => x)) - westX) / cellM) + 1;
  const rows = Math.ceil((Math.max(...corners.map(([, y]) => y)) - southY) / cellM) + 1;
  if (!(columns * rows <= MOST_CELLS))
    throw new InputProblem(
      'grid-size',
      `A grid of ${String(columns)} x ${String(rows)} cells is too fine.`,
      '',
      'Choose a larger cell.',
    );
  const northY = southY + cellM * (rows - 1);
  const heightsM = new Float64Array(columns * rows);
  const out = new Float64Array(3);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const { eastM, northM } = frame.toPlane(system.toLonLat(westX + column * cellM, northY - row * cellM));
      const inside = eastM >= box.westM && eastM <= box.eastM && northM >= box.southM && northM <= box.northM;
      if (inside) field.sampleHeight(eastM, northM, out);
      heightsM[row * columns + column] = inside ? (out[0] ?? NaN) : NaN;
    }
  return { system, epsg: system.epsg ?? 0, westX, northY, cellM, columns, rows, heightsM };
}
