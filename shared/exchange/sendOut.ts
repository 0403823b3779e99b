import { findRecord, frameOf, headerOf } from '../atlas/document.ts';
import { useRecord } from '../atlas/edits.ts';
import type { AtlasDocument, RecordId } from '../atlas/records.ts';
import { refuseUnplaced } from '../formats/export/mapExport.ts';
import { surfaceGrid } from '../formats/export/surfaceGrid.ts';
import { writeAsciiGrid } from '../formats/export/writeAsciiGrid.ts';
import { csvText, writeEvidenceCsv } from '../formats/export/writeCsv.ts';
import { writeContours, writeGeoJson } from '../formats/export/writeGeoJson.ts';
import { writeGpx } from '../formats/export/writeGpx.ts';
import { writeKml } from '../formats/export/writeKml.ts';
import { planSteps } from '../planner/planBall.ts';
import { planTable } from '../planner/planTable.ts';
import { buildScene } from '../planner/scene.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../protocol/planning.ts';
import { contourLines } from '../terrain/contourLines.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { fittedHole } from './fittedHole.ts';

export const exportFormats = ['geojson', 'kml', 'gpx', 'csv', 'plan', 'asc', 'tif', 'contours'] as const;
export type ExportFormat = (typeof exportFormats)[number];

/** Formats of one hole: of its fitted ground, or of a plan. */
export const needsHole: ReadonlySet<ExportFormat> = new Set(['plan', 'asc', 'tif', 'contours']);
/** Formats that say where on the earth things lie. */
export const needsPlace: ReadonlySet<ExportFormat> = new Set([
  'geojson',
  'kml',
  'gpx',
  'asc',
  'tif',
  'contours',
]);

export const USUAL_CELL_M = 0.25;
export const USUAL_INTERVAL_M = 0.1;

export interface ExportRequest {
  readonly to: ExportFormat;
  readonly holeId: RecordId | null;
  /** Of a plan. */
  readonly ballId?: RecordId;
  readonly flagId?: RecordId;
  readonly shotsPerOption?: number;
  readonly seed?: number;
  /** Conditions and player, instead of those in use. */
  readonly dayId?: RecordId;
  readonly playerId?: RecordId;
  /** Evidence: with the nodes of elevation grids. */
  readonly withGrids?: boolean;
  readonly cellM?: number;
  readonly intervalM?: number;
}

/** One file that is made: its ending tells what it is. */
export interface MadeFile {
  readonly ending: string;
  readonly content: string | Uint8Array;
  /** What it holds, in a few words for people. */
  readonly holds: string;
}

const words: Readonly<Record<ExportFormat, string>> = {
  geojson: 'GeoJSON',
  kml: 'KML',
  gpx: 'GPX',
  csv: 'CSV',
  plan: 'CSV',
  asc: 'an ASCII grid',
  tif: 'GeoTIFF',
  contours: 'GeoJSON',
};

/**
 * An atlas, its evidence, a plan or the fitted ground in an open format: the file, and with an ASCII grid the .prj that
 * belongs beside it. In steps, each with the share that is done.
 *
 * @throws InputProblem for an atlas on a blank canvas where the format needs a place, and for what the request lacks
 */
export function* sendOutSteps(
  given: AtlasDocument,
  request: ExportRequest,
): Generator<number, Promise<readonly MadeFile[]>> {
  const document = inUse(given, request);
  const { to, holeId } = request;
  if (needsPlace.has(to)) refuseUnplaced(document, words[to]);
  const file = (ending: string, content: string | Uint8Array, holds: string): MadeFile => ({
    ending,
    content,
    holds,
  });
  switch (to) {
    case 'geojson': {
      const text = writeGeoJson(document, holeId);
      return Promise.resolve([file('geojson', text, counted(text, '"type":"Feature",', 'feature'))]);
    }
    case 'kml': {
      const text = writeKml(document, holeId);
      return Promise.resolve([file('kml', text, counted(text, '<Placemark>', 'placemark'))]);
    }
    case 'gpx': {
      const text = writeGpx(document, holeId);
      return Promise.resolve([file('gpx', text, counted(text, '<wpt ', 'waypoint'))]);
    }
    case 'csv': {
      const text = writeEvidenceCsv(document, request.withGrids ?? false);
      return Promise.resolve([file('csv', text, counted(text, '\r\n', 'reading', -1))]);
    }
    case 'plan': {
      const text = yield* planText(document, request);
      return Promise.resolve([file('csv', text, counted(text, '\r\n', 'option', -1))]);
    }
    case 'contours': {
      const { surface } = fittedHole(document, neededHole(holeId));
      const frame = frameOf(document);
      const lines = contourLines(surface, request.intervalM ?? USUAL_INTERVAL_M).map(
        ({ heightM, points, closed }) => ({
          heightM,
          positions: [...points, ...(closed ? points.slice(0, 1) : [])].map(frame.toLonLat),
        }),
      );
      const many = `${String(lines.length)} ${lines.length === 1 ? 'contour' : 'contours'}`;
      return Promise.resolve([file('geojson', writeContours(document, lines), many)]);
    }
    case 'asc':
    case 'tif': {
      const { plane, surface } = fittedHole(document, neededHole(holeId));
      yield 0.5;
      const grid = surfaceGrid(plane.frame, surface, plane.input.extent, request.cellM ?? USUAL_CELL_M);
      const holds = `${String(grid.columns)} × ${String(grid.rows)} heights, ${grid.system.name}`;
      if (to === 'tif') return geoTiff(grid).then((content) => [file('tif', content, holds)]);
      const { text, projection } = writeAsciiGrid(grid);
      return Promise.resolve([file('asc', text, holds), file('prj', projection, 'its map projection')]);
    }
  }
}

/** The same in one go. */
export async function sendOut(
  document: AtlasDocument,
  request: ExportRequest,
  progress: (share: number) => void = () => undefined,
): Promise<readonly MadeFile[]> {
  const steps = sendOutSteps(document, request);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    progress(step.value);
  }
}

async function geoTiff(grid: ReturnType<typeof surfaceGrid>): Promise<Uint8Array> {
  const { writeGeoTiff } = await import('../formats/export/writeGeoTiff.ts');
  return writeGeoTiff(grid);
}

function* planText(document: AtlasDocument, request: ExportRequest): Generator<number, string> {
  const { ballId = '', flagId = '', shotsPerOption = USUAL_SHOTS, seed = USUAL_SEED } = request;
  const hole = findRecord(document, 'hole', neededHole(request.holeId));
  const ball = findRecord(document, 'ballPosition', ballId);
  const flag = findRecord(document, 'holeLocation', flagId);
  if (hole === undefined || ball === undefined || flag === undefined)
    throw new InputProblem(
      'plan-request',
      'A plan is of one ball to one flag.',
      '',
      'Say which ball and flag.',
    );
  const plan = yield* planSteps(buildScene(document, hole.id), { ballId, flagId, shotsPerOption, seed });
  const { headings, rows } = planTable(plan, {
    atlas: headerOf(document).name,
    hole: hole.label,
    ball: ball.label,
    flag: flag.label,
  });
  return csvText(headings, rows);
}

function inUse(document: AtlasDocument, { dayId, playerId }: ExportRequest): AtlasDocument {
  const day = dayId === undefined ? document : useRecord('day', 'conditions', dayId).apply(document);
  return playerId === undefined ? day : useRecord('player', 'player', playerId).apply(day);
}

function neededHole(holeId: RecordId | null): RecordId {
  if (holeId !== null) return holeId;
  throw new InputProblem('hole-missing', 'This is made of one hole.', '', 'Say which hole.');
}

/** "3 features": how often a mark of the format stands in a text. */
function counted(text: string, mark: string, one: string, less = 0): string {
  const count = text.split(mark).length - 1 + less;
  return `${String(count)} ${one}${count === 1 ? '' : 's'}`;
}
