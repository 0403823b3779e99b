import { frameOf, headerOf, recordsOf } from '../../atlas/document.ts';
import { gridNodes } from '../../atlas/gridNodes.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import type { LonLat } from '../../geometry/points.ts';

export type CsvCell = string | number | null;

/** Rows as CSV after RFC 4180; empty cells for null. A text that a spreadsheet would run as a formula is set off. */
export function csvText(headings: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [headings, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

/**
 * All evidence of heights and slopes: places in metres of the atlas's plane, and in degrees where the atlas is placed on the
 * earth. Importing it reads the spot heights and slope readings again.
 */
export function writeEvidenceCsv(document: AtlasDocument, withGrids = false): string {
  const frame = frameOf(document);
  const { placed } = headerOf(document);
  const fixed = (value: number, digits: number): number => Number(value.toFixed(digits));
  const place = (at: LonLat): readonly CsvCell[] => {
    const { eastM, northM } = frame.toPlane(at);
    return [...(placed ? at : []), fixed(eastM, 4), fixed(northM, 4)];
  };
  const headings = [
    ...['kind', 'id', ...(placed ? ['lon', 'lat'] : []), 'east_m', 'north_m'],
    ...['height_m', 'slope_pct', 'downhill_bearing_deg', 'accuracy'],
  ];
  const rows: (readonly CsvCell[])[] = [
    ...recordsOf(document, 'spotHeight').map((one) => [
      ...['spot height', one.id, ...place(one.at)],
      ...[one.heightM, null, null, one.accuracyM],
    ]),
    ...recordsOf(document, 'slopeReading').map((one) => [
      ...['slope reading', one.id, ...place(one.at)],
      ...[null, one.slopePct, one.downhillBearingDeg, one.accuracyPct],
    ]),
    ...recordsOf(document, 'planeByEye').map((one) => [
      ...['plane by eye', one.id, ...place(one.at)],
      ...[null, one.slopePct, one.downhillBearingDeg, one.accuracyPct],
    ]),
    ...recordsOf(document, 'line').flatMap((line) =>
      line.kind === 'contour'
        ? line.positions.map((at) => ['contour', line.id, ...place(at), line.heightM, null, null, null])
        : [],
    ),
    ...(withGrids ? recordsOf(document, 'elevationGrid') : []).flatMap((grid) =>
      gridNodes(grid, frame).map(({ at, heightM }) => [
        ...['grid', grid.id, ...place(frame.toLonLat(at))],
        ...[fixed(heightM, 4), null, null, grid.accuracyM],
      ]),
    ),
  ];
  return csvText(headings, rows);
}

function cellText(value: CsvCell): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
