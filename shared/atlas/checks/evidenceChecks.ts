import type { PlanePoint } from '../../geometry/points.ts';
import { distanceM, pointInPolygon } from '../../geometry/ring.ts';
import { recordsOf } from '../document.ts';
import { removeRecords } from '../edits.ts';
import type { SpotHeight } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { inBox, type Survey } from './survey.ts';

/** Neighbours are looked for this far, and so many at most are used. */
const REACH_M = 10;
const NEIGHBOURS = 10;
const FEWEST = 6;
/**
 * A height is doubted when it misses its neighbours' plane by this much and by so many times what they themselves do. A
 * green is mown smooth; banks and dips round it bend by tens of centimetres between readings, so that only blunders show.
 */
const LEAST_MISS_ON_GREEN_M = 0.08;
const LEAST_MISS_M = 0.8;
const TIMES_USUAL = 4;
const SAME_PLACE_M = 0.05;

interface Reading {
  readonly record: SpotHeight;
  readonly at: PlanePoint;
  readonly onGreen: boolean;
}

export function evidenceChecks(survey: Survey): readonly Finding[] {
  const greens = survey.areas.filter(({ record }) => record.kind === 'green');
  const readings = recordsOf(survey.document, 'spotHeight').map((record) => {
    const at = survey.frame.toPlane(record.at);
    const onGreen = greens.some(({ box, polygon }) => inBox(at, box) && pointInPolygon(at, polygon));
    return { record, at, onGreen };
  });
  const grid = gridOf(readings);
  return readings.flatMap((reading) => [
    ...samePlace(survey, grid, reading),
    ...disagreement(survey, grid, reading),
  ]);
}

function disagreement(survey: Survey, grid: Grid, reading: Reading): readonly Finding[] {
  const miss = missOfPlane(reading, nearest(grid, reading));
  const least = reading.onGreen ? LEAST_MISS_ON_GREEN_M : LEAST_MISS_M;
  if (miss === null || Math.abs(miss) < least) return [];
  // Their own misses are worked out without this one, which would spoil them all.
  const around = nearest(grid, reading)
    .map((other) => missOfPlane(other, nearest(grid, other, reading)))
    .filter((value) => value !== null)
    .map((value) => Math.abs(value))
    .sort((a, b) => a - b);
  const usual = around[Math.floor(around.length / 2)] ?? 0;
  if (Math.abs(miss) < TIMES_USUAL * (usual + reading.record.accuracyM)) return [];
  const { record } = reading;
  return [
    finding('height-disagrees', 'warning', [record.id], {
      place: placeOf(survey, record),
      at: record.at,
      what: `It stands ${(Math.abs(miss) * 100).toFixed(0)} cm ${miss > 0 ? 'above' : 'below'} its neighbours.`,
      remedy: 'Measure it again, or take it out.',
      mend: removeRecords('took out a doubtful height', [record.id]),
    }),
  ];
}

/** Two readings at one place are reported once, on the later id. */
function samePlace(survey: Survey, grid: Grid, { record, at }: Reading): readonly Finding[] {
  const twin = cellsAround(grid, at).find(
    (other) => other.record.id < record.id && distanceM(other.at, at) < SAME_PLACE_M,
  );
  if (twin === undefined) return [];
  const apart = Math.abs(twin.record.heightM - record.heightM);
  return [
    finding('duplicate-height', apart > 0.03 ? 'warning' : 'note', [twin.record.id, record.id], {
      place: placeOf(survey, record),
      at: record.at,
      what:
        apart > 0.03
          ? `Two heights at one place differ by ${(apart * 100).toFixed(0)} cm.`
          : 'The height was read twice at one place.',
      remedy: 'Keep the one you trust.',
      mend: removeRecords('took out a height read twice', [record.id]),
    }),
  ];
}

function placeOf(survey: Survey, record: SpotHeight): string {
  const hole = survey.near(record.at);
  const words = `spot height ${record.heightM.toFixed(2)} (${record.id})`;
  return hole === '' ? words : `${hole}, ${words}`;
}

/** Height less that of the plane through the neighbours, least squares weighted by 1/distance^2; null where none fits. */
function missOfPlane({ record, at }: Reading, neighbours: readonly Reading[]): number | null {
  if (neighbours.length < FEWEST) return null;
  let [w, wx, wy, wz, wxx, wxy, wyy, wxz, wyz] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (const other of neighbours) {
    const x = other.at.eastM - at.eastM;
    const y = other.at.northM - at.northM;
    const z = other.record.heightM - record.heightM;
    const weight = 1 / (x * x + y * y + 0.25);
    w += weight;
    wx += weight * x;
    wy += weight * y;
    wz += weight * z;
    wxx += weight * x * x;
    wxy += weight * x * y;
    wyy += weight * y * y;
    wxz += weight * x * z;
    wyz += weight * y * z;
  }
  const mx = wx / w;
  const my = wy / w;
  const spread = (wxx + wyy) / w;
  // Neighbours all on one side would have to be carried on past their end.
  if (mx * mx + my * my > 0.4 * spread) return null;
  const mz = wz / w;
  const xx = wxx / w - mx * mx;
  const xy = wxy / w - mx * my;
  const yy = wyy / w - my * my;
  const determinant = xx * yy - xy * xy;
  // Neighbours in a row say nothing across it.
  if (determinant < 0.02 * xx * yy) return null;
  const xz = wxz / w - mx * mz;
  const yz = wyz / w - my * mz;
  const slopeX = (xz * yy - yz * xy) / determinant;
  const slopeY = (yz * xx - xz * xy) / determinant;
  return slopeX * mx + slopeY * my - mz;
}

type Grid = ReadonlyMap<string, readonly Reading[]>;

const cell = (metres: number): number => Math.floor(metres / REACH_M);

function gridOf(readings: readonly Reading[]): Grid {
  const grid = new Map<string, Reading[]>();
  for (const reading of readings) {
    const key = `${String(cell(reading.at.eastM))},${String(cell(reading.at.northM))}`;
    const here = grid.get(key);
    if (here === undefined) grid.set(key, [reading]);
    else here.push(reading);
  }
  return grid;
}

function cellsAround(grid: Grid, { eastM, northM }: PlanePoint): readonly Reading[] {
  const found: Reading[] = [];
  for (let i = -1; i <= 1; i += 1)
    for (let j = -1; j <= 1; j += 1)
      found.push(...(grid.get(`${String(cell(eastM) + i)},${String(cell(northM) + j)}`) ?? []));
  return found;
}

function nearest(grid: Grid, reading: Reading, without: Reading = reading): readonly Reading[] {
  return cellsAround(grid, reading.at)
    .filter((other) => other !== reading && other !== without && other.onGreen === reading.onGreen)
    .map((other) => ({ other, distance: distanceM(other.at, reading.at) }))
    .filter(({ distance }) => distance < REACH_M && distance > SAME_PLACE_M)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, NEIGHBOURS)
    .map(({ other }) => other);
}
