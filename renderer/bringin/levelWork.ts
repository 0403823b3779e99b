import { findRecord, frameOf, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import { type LevelLoop, reduceLevels, type StaffReading } from '../../shared/atlas/levelBook.ts';
import type { AtlasDocument, SpotHeight } from '../../shared/atlas/records.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { centroid } from '../../shared/geometry/ring.ts';
import { yardsFromMetres } from '../../shared/units/conversions.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';

/** One line of the book as it is typed. */
export interface LevelRow {
  readonly point: string;
  readonly back: string;
  readonly between: string;
  readonly fore: string;
  readonly east: string;
  readonly north: string;
}

export interface LevelDraft {
  readonly rows: readonly LevelRow[];
  /** What the staff is marked in. */
  readonly staff: 'm' | 'ft';
  readonly firstHeight: string;
  readonly lastHeight: string;
}

export const emptyRow: LevelRow = { point: '', back: '', between: '', fore: '', east: '', north: '' };
export const emptyDraft: LevelDraft = {
  rows: [{ ...emptyRow, point: 'BM' }, emptyRow, emptyRow],
  staff: 'm',
  firstHeight: '',
  lastHeight: '',
};

/** One standard deviation of a height by level and staff over sights of some tens of metres. */
const LEVELLED_ACCURACY_M = 0.005;

export interface LevelWork {
  readonly loop: LevelLoop;
  /** Heights that have a place, each once. */
  readonly placed: readonly { readonly point: string; readonly at: PlanePoint; readonly heightM: number }[];
  readonly unplaced: readonly string[];
}

/** The middle of the green that places are counted from; the beginning of the sheet's grid where there is none. */
export function levelOrigin(document: AtlasDocument, holeId: string | null): PlanePoint {
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);
  const green =
    hole === undefined || hole.greenId === null ? undefined : findRecord(document, 'area', hole.greenId);
  return green === undefined
    ? planePoint(0, 0)
    : centroid((green.rings[0] ?? []).map(frameOf(document).toPlane));
}

const lengthTyped = (
  typed: string,
  bare: 'm' | 'ft' | 'yd',
  units: UnitsPreference,
  place: string,
): number | null => (typed.trim() === '' ? null : parseLength(typed, bare, units.paceM, place));

/** Where each row's point lies: as typed, or at the landmark of its name. Throws InputProblem. */
export function placesOf(
  document: AtlasDocument,
  holeId: string | null,
  rows: readonly LevelRow[],
  units: UnitsPreference,
): readonly (PlanePoint | null)[] {
  const origin = levelOrigin(document, holeId);
  const { toPlane } = frameOf(document);
  const landmarks = new Map(
    recordsOf(document, 'landmark').map(({ name, at }) => [name.toLowerCase(), toPlane(at)]),
  );
  const flat = units.system === 'yards' ? 'yd' : 'm';
  return rows.map(({ point, east, north }, i) => {
    const eastM = lengthTyped(east, flat, units, `Row ${String(i + 1)}, east`);
    const northM = lengthTyped(north, flat, units, `Row ${String(i + 1)}, north`);
    return eastM === null || northM === null
      ? (landmarks.get(point.trim().toLowerCase()) ?? null)
      : planePoint(origin.eastM + eastM, origin.northM + northM);
  });
}

/** A row with the place that was shown on the map, as it would be typed. */
export function withPlace(
  document: AtlasDocument,
  holeId: string | null,
  row: LevelRow,
  at: PlanePoint,
  units: UnitsPreference,
): LevelRow {
  const origin = levelOrigin(document, holeId);
  const typed = (metres: number): string => {
    const length = units.system === 'yards' ? yardsFromMetres(metres) : metres;
    return String(Number(length.toFixed(2)));
  };
  return { ...row, east: typed(at.eastM - origin.eastM), north: typed(at.northM - origin.northM) };
}

/** The book reduced. Throws InputProblem naming the row, for what cannot be read, followed or closed. */
export function levelWork(
  document: AtlasDocument,
  holeId: string | null,
  { rows, staff, firstHeight, lastHeight }: LevelDraft,
  units: UnitsPreference,
): LevelWork {
  const filled = rows.filter(({ back, between, fore }) => `${back}${between}${fore}`.trim() !== '');
  if (filled.length < 2)
    throw new InputProblem(
      'level-book-short',
      'A round needs two readings at least.',
      '',
      'Type the back sight on the benchmark, then the next point.',
    );
  const length = (typed: string, bare: 'm' | 'ft', place: string): number | null =>
    lengthTyped(typed, bare, units, place);
  const readings = filled.map(({ point, back, between, fore }, i): StaffReading => ({
    point: point.trim() === '' ? `row ${String(i + 1)}` : point.trim(),
    backM: length(back, staff, `Row ${String(i + 1)}, back sight`),
    betweenM: length(between, staff, `Row ${String(i + 1)}, sight between`),
    foreM: length(fore, staff, `Row ${String(i + 1)}, fore sight`),
  }));
  const heightUnit = units.system === 'yards' ? 'ft' : 'm';
  const known = new Map<string, number>();
  const first = length(firstHeight, heightUnit, 'Height of the first point');
  const last = length(lastHeight, heightUnit, 'Height of the last point');
  const [start, end] = [readings[0], readings.at(-1)];
  if (start !== undefined && first !== null) known.set(start.point, first);
  if (end !== undefined && last !== null && end.point !== start?.point) known.set(end.point, last);
  const loop = reduceLevels(readings, known);

  const places = new Map<string, PlanePoint>();
  placesOf(document, holeId, filled, units).forEach((at, i) => {
    const point = readings[i]?.point ?? '';
    if (at !== null && !places.has(point)) places.set(point, at);
  });
  const heights = new Map<string, number>();
  for (const { point, heightM } of loop.heights) if (!heights.has(point)) heights.set(point, heightM);
  const all = [...heights].map(([point, heightM]) => ({ point, heightM, at: places.get(point) }));
  return {
    loop,
    placed: all.flatMap(({ point, heightM, at }) => (at === undefined ? [] : [{ point, heightM, at }])),
    unplaced: all.flatMap(({ point, at }) => (at === undefined ? [point] : [])),
  };
}

/** The heights of a round as spot heights, in one step. */
export function levelEdit(document: AtlasDocument, { placed }: LevelWork, newId: () => string): Edit {
  const { toLonLat } = frameOf(document);
  return putRecords(
    `put in ${String(placed.length)} ${placed.length === 1 ? 'height' : 'heights'} of a level book`,
    placed.map(({ at, heightM }): SpotHeight => ({
      type: 'spotHeight',
      id: newId(),
      at: toLonLat(at),
      heightM: Math.round(heightM * 1e5) / 1e5,
      accuracyM: LEVELLED_ACCURACY_M,
    })),
  );
}
