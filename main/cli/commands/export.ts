import { frameOf, headerOf } from '../../../shared/atlas/document.ts';
import type { AtlasDocument, RecordOf } from '../../../shared/atlas/records.ts';
import { refuseUnplaced } from '../../../shared/formats/export/mapExport.ts';
import { surfaceGrid } from '../../../shared/formats/export/surfaceGrid.ts';
import { writeAsciiGrid } from '../../../shared/formats/export/writeAsciiGrid.ts';
import { writeEvidenceCsv } from '../../../shared/formats/export/writeCsv.ts';
import { writeContours, writeGeoJson } from '../../../shared/formats/export/writeGeoJson.ts';
import { writeGpx } from '../../../shared/formats/export/writeGpx.ts';
import { writeKml } from '../../../shared/formats/export/writeKml.ts';
import { contourLines } from '../../../shared/terrain/contourLines.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../../shared/protocol/planning.ts';
import { fileProblem } from '../../files/fileProblem.ts';
import { writeAtomic } from '../../files/writeAtomic.ts';
import { choice } from '../choiceArgument.ts';
import type { Command, CommandIo } from '../command.ts';
import { decimalNumber } from '../decimalArgument.ts';
import { findBall, findFlag, findHole } from '../findRecords.ts';
import { fittedHole } from '../fittedHole.ts';
import { wholeNumber } from '../numberArgument.ts';
import { planCsv } from '../planCsv.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas } from '../readInput.ts';
import { UsageProblem } from '../usageProblem.ts';

const formats = ['geojson', 'kml', 'gpx', 'csv', 'plan', 'asc', 'tif', 'contours'] as const;
const INTERVAL_M = 0.1;
const CELL_M = 0.25;

export const exportCommand: Command = {
  name: 'export',
  summary: 'writes an atlas, its evidence, a plan or the fitted ground in an open format',
  help: `swale export: writes an atlas, its evidence, a plan or the fitted ground in an open format

Usage: swale export ATLAS --to FORMAT [--hole HOLE] [--out FILE] [options]

  ATLAS          an atlas file
  --to FORMAT    geojson   areas, lines, holes, flags, balls and spot heights as plain GeoJSON
                 kml       the same as KML
                 gpx       flags and balls as waypoints
                 csv       the evidence: heights and slopes with their accuracy
                 plan      the options of one plan as CSV (with --hole, --ball and --flag)
                 asc       the fitted ground of a hole as an ESRI ASCII grid, with its .prj beside it
                 tif       the same as a GeoTIFF of 32-bit floats
                 contours  contours of a hole as GeoJSON
  --hole HOLE    one hole only, by its label or id; asc, tif, contours and plan need it
  --out FILE     where to write it; standard output if left out (asc and tif need it)
  --grids        csv: the nodes of elevation grids too
  --cell M       asc, tif: metres between heights; ${String(CELL_M)} if left out
  --interval M   contours: metres between them; ${String(INTERVAL_M)} if left out
  --ball, --flag, --shots, --seed    of a plan, as in "swale plan"

Grids are in the UTM zone of the course on WGS 84. An atlas on a blank canvas has no place on any map, so only csv and
plan can be had of it.

Example:
  swale export my-course.geojson --to tif --hole 4 --out hole-4.tif
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['ATLAS'],
      values: ['to', 'hole', 'out', 'cell', 'interval', 'ball', 'flag', 'shots', 'seed'],
      needed: ['to'],
      flags: ['grids'],
    });
    const to = choice(values.get('to'), 'to', formats);
    const document = await readAtlas(positionals[0] ?? '');
    const out = values.get('out');
    const label = values.get('hole');
    const hole = label === undefined ? null : findHole(document, label);
    switch (to) {
      case 'geojson':
        return put(io, out, writeGeoJson(document, hole?.id ?? null));
      case 'kml':
        return put(io, out, writeKml(document, hole?.id ?? null));
      case 'gpx':
        return put(io, out, writeGpx(document, hole?.id ?? null));
      case 'csv':
        return put(io, out, writeEvidenceCsv(document, flags.has('grids')));
      case 'plan':
        return put(io, out, planOf(document, needed(hole), values));
      case 'contours': {
        refuseUnplaced(document, 'GeoJSON');
        const { surface } = fittedHole(document, needed(hole).id);
        const interval = decimalNumber(values.get('interval'), 'interval', 0.01, 10) ?? INTERVAL_M;
        const frame = frameOf(document);
        const lines = contourLines(surface, interval).map(({ heightM, points, closed }) => ({
          heightM,
          positions: [...points, ...(closed ? points.slice(0, 1) : [])].map(frame.toLonLat),
        }));
        return put(io, out, writeContours(document, lines));
      }
      case 'asc':
      case 'tif': {
        refuseUnplaced(document, to === 'asc' ? 'an ASCII grid' : 'GeoTIFF');
        if (out === undefined) throw new UsageProblem(`--out is missing: ${to} is written to a file.`);
        const { plane, surface } = fittedHole(document, needed(hole).id);
        const cellM = decimalNumber(values.get('cell'), 'cell', 0.05, 10) ?? CELL_M;
        const grid = surfaceGrid(plane.frame, surface, plane.input.extent, cellM);
        if (to === 'tif') {
          const { writeGeoTiff } = await import('../../../shared/formats/export/writeGeoTiff.ts');
          return put(io, out, writeGeoTiff(grid));
        }
        const { text, projection } = writeAsciiGrid(grid);
        await put(io, out.replace(/\.[^./\\]*$|$/, '.prj'), projection);
        return put(io, out, text);
      }
    }
  },
};

function needed(hole: RecordOf<'hole'> | null): RecordOf<'hole'> {
  if (hole === null) throw new UsageProblem('--hole is missing.');
  return hole;
}

function planOf(
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
  values: ReadonlyMap<string, string>,
): string {
  const [ballLabel, flagLabel] = [values.get('ball'), values.get('flag')];
  if (ballLabel === undefined || flagLabel === undefined)
    throw new UsageProblem(`--${ballLabel === undefined ? 'ball' : 'flag'} is missing.`);
  const ball = findBall(document, hole, ballLabel);
  const flag = findFlag(document, hole, flagLabel);
  const shotsPerOption = wholeNumber(values.get('shots'), 'shots', USUAL_SHOTS, 1, 20_000);
  const seed = wholeNumber(values.get('seed'), 'seed', USUAL_SEED, 0, 0xffffffff);
  const scene = buildScene(document, hole.id);
  const plan = planBall(scene, { ballId: ball.id, flagId: flag.id, shotsPerOption, seed });
  return planCsv(plan, {
    atlas: headerOf(document).name,
    hole: hole.label,
    ball: ball.label,
    flag: flag.label,
  });
}

async function put(io: CommandIo, out: string | undefined, content: string | Uint8Array): Promise<void> {
  if (out === undefined) {
    io.stdout.write(content);
    return;
  }
  try {
    await writeAtomic(out, content);
  } catch (error) {
    throw fileProblem(error, out);
  }
}
