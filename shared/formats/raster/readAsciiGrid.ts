import { InputProblem } from '../../words/inputProblem.ts';
import { latin1Text } from '../decodedText.ts';
import type { ImportOptions } from '../import/importPreview.ts';
import { emptyFile, MOST_GRID_BYTES, refuseLarge } from '../import/limits.ts';
import { systemNamed, systemOfWkt } from './coordinateSystem.ts';
import { type ElevationRaster, METRES_PER_UNIT } from './elevationRaster.ts';

const MOST_VALUES = 25_000_000;

/**
 * ESRI ASCII grid: a header of names and numbers, then rows from the north. The projection comes from the .prj text beside
 * it or from the options. Throws InputProblem.
 */
export function readAsciiGrid(
  content: Uint8Array,
  fileName: string,
  projection: string | undefined,
  options: ImportOptions,
): ElevationRaster {
  if (content.length === 0) throw emptyFile(fileName);
  refuseLarge(content.length, fileName, MOST_GRID_BYTES);
  const { header, end } = headerOf(content);
  const number = (...names: readonly string[]): number => {
    for (const name of names) {
      const value = header.get(name);
      if (value !== undefined && Number.isFinite(value)) return value;
    }
    throw new InputProblem(
      'grid-header',
      `its header has no ${names.join(' or ')}.`,
      fileName,
      'Export the grid again as an ESRI ASCII grid.',
    );
  };
  const columns = number('ncols');
  const rows = number('nrows');
  if (
    !Number.isInteger(columns) ||
    !Number.isInteger(rows) ||
    columns < 2 ||
    rows < 2 ||
    columns * rows > MOST_VALUES
  )
    throw new InputProblem(
      'grid-size',
      `its header says ${String(columns)} columns and ${String(rows)} rows.`,
      fileName,
      `Cut out the ground of the course: between 2 x 2 and ${String(MOST_VALUES / 1e6)} million cells can be read.`,
    );
  const cellX = header.has('dx') ? number('dx') : number('cellsize');
  const cellY = header.has('dy') ? number('dy') : number('cellsize');
  if (!(cellX > 0) || !(cellY > 0))
    throw new InputProblem(
      'grid-header',
      'its cell size is not positive.',
      fileName,
      'Export the grid again.',
    );
  // A corner is that of the lower left cell, a centre its middle, where the height stands.
  const x = header.has('xllcenter') ? number('xllcenter') : number('xllcorner') + cellX / 2;
  const y = header.has('yllcenter') ? number('yllcenter') : number('yllcorner') + cellY / 2;
  const system =
    options.crs !== undefined
      ? systemNamed(options.crs, fileName)
      : projection !== undefined && projection.trim() !== ''
        ? systemOfWkt(projection, fileName)
        : null;
  if (system === null)
    throw new InputProblem(
      'missing-projection',
      'nothing says which map projection its numbers are in.',
      fileName,
      'Put its .prj file beside it under the same name, or say which it is, such as EPSG:27700.',
    );
  const values = valuesOf(content, end, columns * rows, header.get('nodata_value') ?? -9999, fileName);
  const inFeet = /UNIT\s*\[\s*"[^"]*(foot|feet)/i.test(projection ?? '');
  return {
    format: 'ESRI ASCII grid',
    columns,
    rows,
    affine: [x, cellX, 0, y + cellY * (rows - 1), 0, -cellY],
    system,
    metresPerUnit: METRES_PER_UNIT[options.heightUnit ?? 'm'],
    unitStated: options.heightUnit !== undefined,
    positionsInFeet: inFeet,
    warnings: [],
    read: ({ left, top, right, bottom }) => {
      const out = new Float64Array((right - left) * (bottom - top));
      for (let row = top; row < bottom; row += 1)
        out.set(values.subarray(row * columns + left, row * columns + right), (row - top) * (right - left));
      return Promise.resolve(out);
    },
  };
}

function headerOf(content: Uint8Array): { header: ReadonlyMap<string, number>; end: number } {
  const text = latin1Text(content.subarray(0, 4096));
  const header = new Map<string, number>();
  const line = /[ \t]*([A-Za-z_]+)[ \t]+(\S+)[ \t]*(?:\r?\n|\r|$)/y;
  let end = 0;
  for (;;) {
    const found = line.exec(text);
    if (found === null) return { header, end };
    header.set((found[1] ?? '').toLowerCase(), Number((found[2] ?? '').replace(',', '.')));
    end = line.lastIndex;
  }
}

/** All heights, read byte by byte: a text of two million numbers takes a fifth of a second. */
function valuesOf(
  content: Uint8Array,
  from: number,
  count: number,
  noData: number,
  fileName: string,
): Float64Array {
  const values = new Float64Array(count);
  let found = 0;
  let i = from;
  const size = content.length;
  while (i < size) {
    while (i < size && (content[i] as number) <= 32) i += 1;
    if (i >= size) break;
    const start = i;
    while (i < size && (content[i] as number) > 32) i += 1;
    const text = latin1Text(content.subarray(start, i));
    const value = Number(text.includes(',') ? text.replace(',', '.') : text);
    if (found >= count || (!Number.isFinite(value) && !/^[+-]?nan$/i.test(text)))
      throw new InputProblem(
        'grid-values',
        found >= count
          ? `it holds more than the ${String(count)} heights its header says.`
          : `"${text.slice(0, 20)}" is not a height.`,
        `${fileName}, value ${String(found + 1)}`,
        'Export the grid again.',
      );
    values[found] = value === noData ? NaN : value;
    found += 1;
  }
  if (found < count)
    throw new InputProblem(
      'file-truncated',
      `it holds ${String(found)} of the ${String(count)} heights its header says.`,
      fileName,
      'It was cut short while being copied or saved: use another copy.',
    );
  return values;
}
