import { gridNodes } from '../../atlas/gridNodes.ts';
import type { AtlasDocument, ElevationGrid } from '../../atlas/records.ts';
import { MOST_GRID_NODES } from '../../atlas/schema.ts';
import type { LocalFrame } from '../../geometry/localFrame.ts';
import { type LonLat, planePoint } from '../../geometry/points.ts';
import { type Box, boundingBox, distanceM } from '../../geometry/ring.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { importPlace } from '../import/importPlace.ts';
import type { ImportOptions, ImportPreview, ImportWarning, LeftOut } from '../import/importPreview.ts';
import { clipBoxes, MARGIN_M } from './clipBoxes.ts';
import type { ElevationRaster, RasterWindow } from './elevationRaster.ts';
import { cutTile } from './gridTile.ts';
import { comparedWithSpots, unitWarnings } from './heightDoubts.ts';

/** One standard deviation of airborne laser heights on short grass (common practice: 5 to 15 cm). */
const GRID_ACCURACY_M = 0.1;
/** The surface is fitted on cells of a quarter to half a metre: nodes closer than this are averaged. */
const FINEST_M = 0.5;
/** Tiles no longer than this keep their corners a fair account of all their nodes: 2 mm at most (see gridNodes). */
const TILE_M = 150;
/** Datums that agree this well are one. */
const LEAST_SHIFT_M = 0.005;
/** Without anything traced, a raster longer than this is not taken whole. */
const WHOLE_M = 600;

/** What an elevation model would bring: its heights about each green, thinned and shifted to the atlas's own datum. */
export async function previewGrid(
  document: AtlasDocument,
  fileName: string,
  hash: string,
  raster: ElevationRaster,
  options: ImportOptions,
): Promise<ImportPreview> {
  const outline = ringOf(raster, { left: 0, top: 0, right: raster.columns, bottom: raster.rows });
  if (!outline.every(([lon, lat]) => Number.isFinite(lon) && Number.isFinite(lat)))
    throw new InputProblem(
      'position-out-of-range',
      'its corners are not on the earth in the map projection it names.',
      fileName,
      'Say which projection it is, such as EPSG:32630.',
    );
  const { frame, header } = importPlace(document, outline, fileName);
  const whole = boundingBox(outline.map(frame.toPlane));
  const traced = header === null ? clipBoxes(document, options.marginM ?? MARGIN_M) : [];
  if (
    whole === null ||
    (traced.length === 0 && Math.max(whole.eastM - whole.westM, whole.northM - whole.southM) > WHOLE_M)
  )
    throw new InputProblem(
      'nothing-to-clip-to',
      'The elevation model covers much more than a hole, and nothing is traced yet to say which part is wanted.',
      fileName,
      'Trace or import the greens first.',
    );
  const boxes = traced.length > 0 ? traced : [whole];
  const cellM = cellSize(raster, frame);
  const every = Math.max(1, Math.ceil(FINEST_M / cellM - 0.01));
  const tileCells =
    Math.max(2, Math.min(Math.floor(TILE_M / (cellM * every)), Math.floor(Math.sqrt(MOST_GRID_NODES)))) *
    every;
  const windows = boxes.flatMap((box) => windowsIn(raster, frame, box, tileCells));
  const records: ElevationGrid[] = [];
  let empty = 0;
  for (const [i, window] of windows.entries()) {
    options.progress?.(i, windows.length);
    const tile = await cutTile(raster, window, every);
    if (tile === null) continue;
    if (tile.known === 0) {
      empty += 1;
      continue;
    }
    records.push({
      type: 'elevationGrid',
      id: `f${hash}-${String(window.left)}.${String(window.top)}`,
      name: fileName.slice(0, 200),
      corners: [tile.corners],
      columns: tile.columns,
      rows: tile.rows,
      heightsM: tile.heightsM,
      datumShiftM: 0,
      accuracyM: options.accuracyM ?? GRID_ACCURACY_M,
    });
  }
  options.progress?.(windows.length, windows.length);
  if (records.length === 0) throw elsewhere(empty, fileName);
  refuseImpossible(records, fileName);

  const nodes = records.flatMap((record) => gridNodes(record, frame));
  const comparison = comparedWithSpots(document, frame, nodes, 1.5 * cellM * every);
  const doubts = unitWarnings(document, frame, nodes, comparison, raster);
  const wanted = (options.matchDatum ?? true) && comparison.pairs > 0 && doubts.length === 0;
  const shift = wanted && Math.abs(comparison.shiftM) >= LEAST_SHIFT_M ? comparison.shiftM : 0;
  const fresh = records.filter(({ id }) => !document.records.has(id));
  const shifted = fresh.map((record) => ({ ...record, datumShiftM: Math.round(shift * 1e4) / 1e4 }));
  const warnings: ImportWarning[] = [...raster.warnings, ...doubts];
  if (fresh.length < records.length)
    warnings.push({
      code: 'already-imported',
      text: `${String(records.length - fresh.length)} pieces of this file are in the atlas already, and stay as they are there.`,
    });
  if (shift !== 0)
    warnings.push({
      code: 'datum-shift',
      text: `The grid is ${shift > 0 ? 'raised' : 'lowered'} by ${Math.abs(shift).toFixed(2)} m to meet the ${String(comparison.pairs)} spot heights on the same ground.`,
    });
  if (raster.system.uncertainM > 0)
    warnings.push({
      code: 'uncertain-position',
      text: `Positions in ${raster.system.name} may be up to ${String(raster.system.uncertainM)} m out: its grid of shifts is not used.`,
    });
  if (cellM > 5)
    warnings.push({
      code: 'coarse-grid',
      text: `Its cells are ${cellM.toFixed(0)} m wide: that shows hills, but not the slopes of a green.`,
    });
  const leftOut: LeftOut[] = [
    {
      ...(traced.length > 0
        ? {
            what: 'ground away from the greens',
            why: `Heights are kept about each green with a margin of ${String(options.marginM ?? MARGIN_M)} m.`,
          }
        : { what: 'cells without a height', why: 'The file has none there.' }),
      count: raster.columns * raster.rows - every * every * nodes.length,
      places: [],
    },
  ];
  const spacing = (cellM * every).toFixed(2);
  return {
    fileName,
    format: raster.format,
    groups: [
      {
        key: 'elevationGrid',
        title: shifted.length === 1 ? 'elevation grid' : 'elevation grids',
        from: '',
        how: `${String(nodes.length)} heights every ${spacing} m, from ${raster.system.name}${every > 1 ? `, each the mean of ${String(every)} x ${String(every)} cells` : ''}.`,
        records: shifted,
      },
    ],
    leftOut: leftOut.filter(({ count }) => count > 0),
    warnings,
    source: {
      type: 'source',
      id: `source-${hash}`,
      name: fileName.slice(0, 200),
      attribution: '',
      licence: '',
    },
    header,
  };
}

function ringOf(raster: ElevationRaster, { left, top, right, bottom }: RasterWindow): readonly LonLat[] {
  const [x, xc, xr, y, yc, yr] = raster.affine;
  const at = (c: number, r: number): LonLat =>
    raster.system.toLonLat(x + xc * c + xr * r, y + yc * c + yr * r);
  return [at(left, top), at(right - 1, top), at(right - 1, bottom - 1), at(left, bottom - 1)];
}

function cellSize(raster: ElevationRaster, frame: LocalFrame): number {
  const [a, b] = ringOf(raster, { left: 0, top: 0, right: 2, bottom: 2 }).map(frame.toPlane);
  return a === undefined || b === undefined ? NaN : distanceM(a, b);
}

/** The windows of a box, as tiles; one cell more than the box on every side. */
function windowsIn(
  raster: ElevationRaster,
  frame: LocalFrame,
  box: Box,
  tileCells: number,
): readonly RasterWindow[] {
  const [x, xc, xr, y, yc, yr] = raster.affine;
  const determinant = xc * yr - xr * yc;
  const cells = [
    planePoint(box.westM, box.southM),
    planePoint(box.eastM, box.southM),
    planePoint(box.eastM, box.northM),
    planePoint(box.westM, box.northM),
  ].map((corner) => {
    const [px, py] = raster.system.fromLonLat(frame.toLonLat(corner));
    return [
      ((px - x) * yr - (py - y) * xr) / determinant,
      ((py - y) * xc - (px - x) * yc) / determinant,
    ] as const;
  });
  const span = (axis: 0 | 1, size: number): readonly [number, number] => [
    Math.max(0, Math.floor(Math.min(...cells.map((cell) => cell[axis]))) - 1),
    Math.min(size, Math.ceil(Math.max(...cells.map((cell) => cell[axis]))) + 2),
  ];
  const [left, right] = span(0, raster.columns);
  const [top, bottom] = span(1, raster.rows);
  const windows: RasterWindow[] = [];
  for (const [t, b] of parts(top, bottom, tileCells))
    for (const [l, r] of parts(left, right, tileCells))
      windows.push({ left: l, top: t, right: r, bottom: b });
  return windows;
}

/** A span cut into parts of at most `most`, as even as can be. */
function parts(from: number, to: number, most: number): readonly (readonly [number, number])[] {
  const count = Math.ceil((to - from) / most);
  return Array.from({ length: Math.max(0, count) }, (_, i) => [
    from + Math.floor(((to - from) * i) / count),
    from + Math.floor(((to - from) * (i + 1)) / count),
  ]);
}

function elsewhere(empty: number, fileName: string): InputProblem {
  return empty > 0
    ? new InputProblem(
        'grid-empty-here',
        'it has no heights about the greens, only cells without data.',
        fileName,
        'Choose the file of this ground.',
      )
    : new InputProblem(
        'grid-elsewhere',
        'it does not cover any of the greens.',
        fileName,
        'Choose the file of this ground, or check its map projection.',
      );
}

function refuseImpossible(records: readonly ElevationGrid[], fileName: string): void {
  for (const { heightsM } of records)
    for (const height of heightsM)
      if (height !== null && (height < -500 || height > 9000))
        throw new InputProblem(
          'impossible-height',
          `it holds a height of ${height.toFixed(1)} m.`,
          fileName,
          'Check the unit of its heights, and what it writes where it has none.',
        );
}
