import type { AtlasDocument, RecordOf } from '../../../shared/atlas/records.ts';
import {
  exportFormats,
  type ExportRequest,
  needsHole,
  sendOut,
  USUAL_CELL_M,
  USUAL_INTERVAL_M,
} from '../../../shared/exchange/sendOut.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../../shared/protocol/planning.ts';
import { fileProblem } from '../../files/fileProblem.ts';
import { writeAtomic } from '../../files/writeAtomic.ts';
import { choice } from '../choiceArgument.ts';
import type { Command, CommandIo } from '../command.ts';
import { decimalNumber } from '../decimalArgument.ts';
import { findBall, findDay, findFlag, findHole, findPlayer } from '../findRecords.ts';
import { wholeNumber } from '../numberArgument.ts';
import { progressLine } from '../progress.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas } from '../readInput.ts';
import { UsageProblem } from '../usageProblem.ts';

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
                 asc       the fitted ground of a hole as an ESRI ASCII grid, with its .prj
                 tif       the same as a GeoTIFF of 32-bit floats
                 contours  contours of a hole as GeoJSON
  --hole HOLE    one hole only, by its label or id; asc, tif, contours and plan need it
  --out FILE     where to write it; standard output if left out (asc and tif need it)
  --grids        csv: the nodes of elevation grids too
  --cell M       asc, tif: metres between heights; ${String(USUAL_CELL_M)} if left out
  --interval M   contours: metres between them; ${String(USUAL_INTERVAL_M)} if left out
  --ball, --flag, --shots, --seed    of a plan, as in "swale plan"
  --day, --player                    of a plan: by name or id; those in use if left out

Grids are in the UTM zone of the course on WGS 84. An atlas on a blank canvas has no place on any
map, so only csv and plan can be had of it.

Example:
  swale export my-course.geojson --to tif --hole 4 --out hole-4.tif
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['ATLAS'],
      values: [
        ...['to', 'hole', 'out', 'cell', 'interval'],
        ...['ball', 'flag', 'day', 'player', 'shots', 'seed'],
      ],
      needed: ['to'],
      flags: ['grids'],
    });
    const to = choice(values.get('to'), 'to', exportFormats);
    const document = await readAtlas(positionals[0] ?? '');
    const out = values.get('out');
    const label = values.get('hole');
    if (label === undefined && needsHole.has(to)) throw new UsageProblem('--hole is missing.');
    const hole = label === undefined ? null : findHole(document, label);
    const cellM = decimalNumber(values.get('cell'), 'cell', 0.05, 10);
    const intervalM = decimalNumber(values.get('interval'), 'interval', 0.01, 10);
    const progress = progressLine(io, 'Making it, %:');
    const files = await sendOut(
      document,
      {
        to,
        holeId: hole?.id ?? null,
        withGrids: flags.has('grids'),
        ...(cellM !== null && { cellM }),
        ...(intervalM !== null && { intervalM }),
        ...(to === 'plan' && hole !== null && planOf(document, hole, values)),
      },
      (share) => progress.show(Math.round(100 * share), 100),
    ).finally(() => progress.end());
    if (out === undefined && (to === 'asc' || to === 'tif'))
      throw new UsageProblem(`--out is missing: ${to} is written to a file.`);
    for (const { ending, content } of files.toReversed())
      await put(io, ending === 'prj' ? out?.replace(/\.[^./\\]*$|$/, '.prj') : out, content);
  },
};

function planOf(
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
  values: ReadonlyMap<string, string>,
): Partial<ExportRequest> {
  const [ballLabel, flagLabel] = [values.get('ball'), values.get('flag')];
  if (ballLabel === undefined || flagLabel === undefined)
    throw new UsageProblem(`--${ballLabel === undefined ? 'ball' : 'flag'} is missing.`);
  const [day, player] = [values.get('day'), values.get('player')];
  return {
    ballId: findBall(document, hole, ballLabel).id,
    flagId: findFlag(document, hole, flagLabel).id,
    shotsPerOption: wholeNumber(values.get('shots'), 'shots', USUAL_SHOTS, 1, 20_000),
    seed: wholeNumber(values.get('seed'), 'seed', USUAL_SEED, 0, 0xffffffff),
    ...(day !== undefined && { dayId: findDay(document, day).id }),
    ...(player !== undefined && { playerId: findPlayer(document, player).id }),
  };
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
