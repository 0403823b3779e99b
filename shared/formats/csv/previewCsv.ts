import { frameOf } from '../../atlas/document.ts';
import { type LevelLoop, reduceLevels, type StaffReading } from '../../atlas/levelBook.ts';
import type { AtlasDocument, AtlasRecord } from '../../atlas/records.ts';
import { lonLat, type LonLat, planePoint } from '../../geometry/points.ts';
import { percentFromDegrees } from '../../units/slope.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { grouped } from '../import/groupRecords.ts';
import { importPlace, isNear } from '../import/importPlace.ts';
import type { ImportOptions, ImportPreview, ImportWarning } from '../import/importPreview.ts';
import { leftOutList } from '../import/leftOutList.ts';
import { textOf } from '../import/limits.ts';
import { type CoordinateSystem, systemNamed } from '../raster/coordinateSystem.ts';
import { METRES_PER_UNIT } from '../raster/elevationRaster.ts';
import { csvColumns, type CsvRole } from './csvColumns.ts';
import { readCsvTable } from './csvTable.ts';

/** One standard deviation where none is given: level and staff, or a receiver with corrections; a digital level 0.6 m long. */
const HEIGHT_ACCURACY_M = 0.02;
const LEVELLED_ACCURACY_M = 0.005;
const SLOPE_ACCURACY_PCT = 0.3;

/**
 * A list of points: heights, slopes with the bearing they fall in, or a level book whose back and fore sights are reduced.
 * Places are longitude and latitude, or metres east and north of the anchor or in a named projection.
 */
export function previewCsv(
  document: AtlasDocument,
  fileName: string,
  hash: string,
  content: Uint8Array,
  options: ImportOptions,
): ImportPreview {
  const table = readCsvTable(textOf(content, fileName), fileName);
  const columns = csvColumns(table.headings, options.columns ?? {}, fileName);
  const has = (...roles: readonly CsvRole[]): boolean => roles.every((role) => columns.has(role));
  const refuse = (code: string, what: string, place = fileName): never => {
    throw new InputProblem(
      code,
      what,
      place,
      `Its columns are: ${table.headings.join(', ')}. Say which holds what.`,
    );
  };
  const isBook = has('back', 'fore');
  const geographic = has('lon', 'lat');
  if (!geographic && !has('east', 'north'))
    refuse('csv-without-place', 'no columns give the place of each point.');
  if (!isBook && !has('heightM') && !has('slopePct', 'bearingDeg') && !has('slopeDeg', 'bearingDeg'))
    refuse('csv-without-value', 'no column gives heights, and none a slope with its bearing.');

  const text = (cells: readonly string[], role: CsvRole): string => cells[columns.get(role) ?? -1] ?? '';
  const number = (cells: readonly string[], role: CsvRole, line: number): number | null => {
    const cell = text(cells, role);
    if (cell === '') return null;
    const value = Number(table.decimalComma ? cell.replace(',', '.') : cell);
    if (!Number.isFinite(value))
      throw new InputProblem(
        'bad-number',
        `"${cell.slice(0, 30)}" is not a number.`,
        `${fileName}, line ${String(line)}`,
        'Correct it, or say which column holds what.',
      );
    return value;
  };
  const points = table.rows.map(({ cells, line }) => ({
    cells,
    line,
    x: number(cells, geographic ? 'lon' : 'east', line),
    y: number(cells, geographic ? 'lat' : 'north', line),
  }));
  const system = geographic ? systemNamed('EPSG:4326', fileName) : systemOf(options, fileName);
  const known = points.flatMap(({ x, y }) => (x === null || y === null ? [] : [[x, y] as const]));
  const toLonLat =
    system === null
      ? (x: number, y: number): LonLat => frameOf(document).toLonLat(planePoint(x, y))
      : (x: number, y: number): LonLat => system.toLonLat(x, y);
  if (system === null && known.some(([x, y]) => Math.abs(x) > 50_000 || Math.abs(y) > 50_000))
    throw new InputProblem(
      'missing-projection',
      'its metres are too large to be counted from the anchor of the atlas.',
      fileName,
      'Say which map projection they are in, such as EPSG:32630.',
    );
  const { frame, header } =
    system === null
      ? { frame: frameOf(document), header: null }
      : importPlace(
          document,
          known.map(([x, y]) => (geographic ? lonLat(x, y) : toLonLat(x, y))),
          fileName,
        );

  const perUnit = METRES_PER_UNIT[options.heightUnit ?? (feetHeading(table.headings, columns) ? 'ft' : 'm')];
  const leftOut = leftOutList();
  const warnings: ImportWarning[] = [];
  const book = isBook ? levelled(points, columns, text, number, perUnit) : null;
  if (book !== null) warnings.push(closureOf(book));
  const heightOf = new Map(book?.heights.map(({ point, heightM }) => [point, heightM]));
  const entries: { record: AtlasRecord; how: string }[] = [];
  const put = (line: number, make: (id: string) => AtlasRecord, how: string): void => {
    const suffix = entries.some(({ record }) => record.id === `f${hash}-${String(line)}`) ? '.s' : '';
    const id = `f${hash}-${String(line)}${suffix}`;
    if (document.records.has(id))
      leftOut.add('points already there', 'This very file was imported before.', `line ${String(line)}`);
    else entries.push({ record: make(id), how });
  };
  const levelledOnce = new Set<string>();
  for (const { cells, line, x, y } of points) {
    const place = `line ${String(line)}`;
    const point = text(cells, 'point');
    if (x === null || y === null) {
      leftOut.add('rows without a place', 'They give no position.', place);
      continue;
    }
    const at = toLonLat(x, y);
    if (!isNear(frame, at)) {
      leftOut.add('points far away', 'They lie more than 50 km from the atlas.', place);
      continue;
    }
    const height = book === null ? number(cells, 'heightM', line) : (heightOf.get(point) ?? null);
    const slopePct = slopeOf(cells, line, columns, number);
    const bearing = number(cells, 'bearingDeg', line);
    const given = number(cells, 'accuracy', line);
    if (height !== null && !(book !== null && levelledOnce.has(point))) {
      levelledOnce.add(point);
      const usual = book === null ? HEIGHT_ACCURACY_M : LEVELLED_ACCURACY_M;
      put(
        line,
        (id) => ({
          type: 'spotHeight',
          id,
          at,
          heightM: Math.round(height * (book === null ? perUnit : 1) * 1e5) / 1e5,
          accuracyM: options.accuracyM ?? (slopePct === null && given !== null && given > 0 ? given : usual),
        }),
        book === null
          ? `Rows with a height, in ${perUnit === 1 ? 'metres' : 'feet'}.`
          : 'Heights reduced from the level book.',
      );
    }
    if (slopePct !== null && bearing !== null)
      put(
        line,
        (id) => ({
          type: 'slopeReading',
          id,
          at,
          slopePct: Math.abs(slopePct),
          downhillBearingDeg: (((bearing + (slopePct < 0 ? 180 : 0)) % 360) + 360) % 360,
          accuracyPct: given !== null && given > 0 && height === null ? given : SLOPE_ACCURACY_PCT,
        }),
        'Rows with a slope and the bearing it falls in.',
      );
    else if (height === null)
      leftOut.add('rows without a value', 'They give neither a height nor a slope with its bearing.', place);
  }
  if (entries.length === 0 && leftOut.list().length === 0)
    refuse('csv-without-value', 'there is no point in it.');
  return {
    fileName,
    format: book === null ? 'CSV of points' : 'CSV level book',
    groups: grouped(entries),
    leftOut: leftOut.list(),
    warnings,
    source: {
      type: 'source',
      id: `source-${hash}`,
      name: fileName.slice(0, 200),
      attribution: '',
      licence: '',
    },
    header,
    columns: Object.fromEntries([...columns].map(([role, column]) => [table.headings[column] ?? '', role])),
  };
}

type NumberOf = (cells: readonly string[], role: CsvRole, line: number) => number | null;
type Columns = ReadonlyMap<CsvRole, number>;

function slopeOf(cells: readonly string[], line: number, columns: Columns, number: NumberOf): number | null {
  if (columns.has('slopePct')) return number(cells, 'slopePct', line);
  const degrees = columns.has('slopeDeg') ? number(cells, 'slopeDeg', line) : null;
  return degrees === null ? null : percentFromDegrees(degrees);
}

/** Metres from the anchor unless a projection is named. */
function systemOf(options: ImportOptions, fileName: string): CoordinateSystem | null {
  return options.crs === undefined || options.crs === 'local' ? null : systemNamed(options.crs, fileName);
}

function feetHeading(headings: readonly string[], columns: Columns): boolean {
  const heading = headings[columns.get('heightM') ?? columns.get('back') ?? -1] ?? '';
  return /\b(ft|feet|foot)\b|_ft$/i.test(heading);
}

/** The level book of the file; heights given beside readings fix the points they stand at. */
function levelled(
  points: readonly { readonly cells: readonly string[]; readonly line: number }[],
  columns: Columns,
  text: (cells: readonly string[], role: CsvRole) => string,
  number: NumberOf,
  perUnit: number,
): LevelLoop {
  const known = new Map<string, number>();
  const scaled = (value: number | null): number | null => (value === null ? null : value * perUnit);
  const readings = points.map(({ cells, line }): StaffReading => {
    const point = text(cells, 'point');
    const height = columns.has('heightM') ? scaled(number(cells, 'heightM', line)) : null;
    if (height !== null) known.set(point, height);
    return {
      point,
      backM: scaled(number(cells, 'back', line)),
      betweenM: scaled(number(cells, 'between', line)),
      foreM: scaled(number(cells, 'fore', line)),
    };
  });
  return reduceLevels(readings, known);
}

function closureOf({ misclosureM, setUps, allowedM }: LevelLoop): ImportWarning {
  const millimetres = (m: number): string => `${(m * 1000).toFixed(1)} mm`;
  return misclosureM === null
    ? {
        code: 'level-open',
        text: 'The round does not end on a known height, so nothing shows a slip: close it next time.',
      }
    : {
        code: 'level-closure',
        text: `The round of ${String(setUps)} set-ups closes ${millimetres(misclosureM)} out (${millimetres(allowedM)} would do), shared out by set-ups.`,
      };
}
