import * as z from 'zod';
import { gridOver } from '../../../shared/terrain/hermiteGrid.ts';
import { doubtAt, doubtGrid } from '../../../shared/terrain/confidence.ts';
import { slopeAt } from '../../../shared/terrain/slope.ts';
import { lonLat, planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { decimals, signed } from '../../../shared/units/numerals.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { Command, CommandIo } from '../command.ts';
import { findHole } from '../findRecords.ts';
import { fittedHole, type FittedHole } from '../../../shared/exchange/fittedHole.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas, readJson } from '../readInput.ts';
import { table } from '../table.ts';
import { writeJson } from '../writeJson.ts';

z.config({ jitless: true });

/** About a metre shows all there is to see of doubt. */
const DOUBT_CELL_M = 1;

const points = z
  .array(
    z.union([
      z.strictObject({ lon: z.number().min(-180).max(180), lat: z.number().min(-90).max(90) }),
      z.strictObject({
        eastM: z.number().min(-50_000).max(50_000),
        northM: z.number().min(-50_000).max(50_000),
      }),
    ]),
  )
  .max(100_000);

export const surfaceCommand: Command = {
  name: 'surface',
  summary: 'fits the ground of a hole: heights, slopes, how well readings agree, how sure it is',
  help: `swale surface: fits the ground of a hole

Usage: swale surface ATLAS --hole HOLE [--points] [--json]

  ATLAS          an atlas file
  --hole HOLE    the label the hole has on the card, or its id
  --points       read places from standard input, a JSON list of {"lon": …, "lat": …} or {"eastM": …, "northM": …}
                 (metres from the atlas's anchor), and give height, slope and doubt at each
  --json         grid{originEastM,originNorthM,cellM,columns,rows,heightsM}, readings and disagreements with their
                 residuals, confidence{…,heightSdM,slopeSdPct}, points; SI units, every digit

Rows of grids run from the south-west corner. A bearing is the one the ground falls in, degrees clockwise from north.

Example:
  echo '[{"eastM": -288, "northM": 140}]' | swale surface sample-course/ossel-down.geojson --hole 2 --points
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['ATLAS'],
      values: ['hole'],
      needed: ['hole'],
      flags: ['points', 'json'],
    });
    const document = await readAtlas(positionals[0] ?? '');
    const hole = findHole(document, values.get('hole') ?? '');
    const fitted = fittedHole(document, hole.id);
    const asked = flags.has('points') ? await placesOf(io, fitted) : [];
    const answers = asked.map((at) => ({ at, ...groundAt(fitted, at) }));
    if (flags.has('json')) {
      writeJson(io.stdout, reportOf(fitted, answers));
      return;
    }
    io.stdout.write(textOf(fitted, hole.label, answers));
  },
};

interface Answer {
  readonly at: PlanePoint;
  readonly heightM: number;
  readonly slopePct: number;
  readonly downhillBearingDeg: number;
  readonly heightSdM: number;
  readonly slopeSdPct: number;
}

async function placesOf(io: CommandIo, { plane }: FittedHole): Promise<readonly PlanePoint[]> {
  const parsed = points.safeParse(await readJson(io.stdin, 'stdin'));
  if (!parsed.success)
    throw new InputProblem(
      'bad-points',
      'this is not a list of places.',
      `stdin${parsed.error.issues[0]?.path.length ? `, place ${String(Number(parsed.error.issues[0].path[0]) + 1)}` : ''}`,
      'Give a JSON list of {"lon": …, "lat": …} or {"eastM": …, "northM": …}.',
    );
  return parsed.data.map((one) =>
    'lon' in one ? plane.frame.toPlane(lonLat(one.lon, one.lat)) : planePoint(one.eastM, one.northM),
  );
}

function groundAt({ surface }: FittedHole, at: PlanePoint): Omit<Answer, 'at'> {
  const out = new Float64Array(3);
  surface.sampleHeight(at.eastM, at.northM, out);
  const slope = slopeAt(surface, at);
  return { heightM: out[0] ?? NaN, ...slope, ...doubtAt(surface, at) };
}

function reportOf({ plane, surface }: FittedHole, answers: readonly Answer[]): object {
  const { originEastM, originNorthM, cellM, columns, rows, heightsM } = surface;
  const shape = gridOver(plane.input.extent, DOUBT_CELL_M);
  return {
    hole: plane.hole.label,
    anchor: plane.frame.anchor,
    grid: { originEastM, originNorthM, cellM, columns, rows, heightsM },
    readings: surface.readings,
    disagreements: surface.disagreements,
    confidence: { ...shape, ...doubtGrid(surface, shape) },
    points: answers,
  };
}

function textOf({ surface }: FittedHole, label: string, answers: readonly Answer[]): string {
  const { readings, disagreements, columns, rows, cellM } = surface;
  let low = Infinity;
  let high = -Infinity;
  for (const height of surface.heightsM) {
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  const lines = [
    `Hole ${label}: ${String(columns)} x ${String(rows)} heights every ${decimals(cellM, 2)} m, from ${decimals(low, 2)} to ${decimals(high, 2)} m`,
    `${String(readings.length)} readings, ${String(disagreements.length)} that the ground does not pass within their accuracy`,
    ...disagreements
      .filter(({ verdict }) => verdict === 'contradicts')
      .map(
        ({ id, kind, othersDiffer, unit }) =>
          `  ${kind} ${id}: the others say ${signed(othersDiffer, unit === 'm' ? 3 : 2)} ${unit === 'm' ? 'm' : '%'} of it`,
      ),
  ];
  const numbers = answers.map(({ at, heightM, slopePct, downhillBearingDeg, heightSdM, slopeSdPct }) => [
    ...[decimals(at.eastM, 2), decimals(at.northM, 2), decimals(heightM, 3), decimals(heightSdM, 3)],
    ...[decimals(slopePct, 2), decimals(slopeSdPct, 2), decimals(downhillBearingDeg, 0)],
  ]);
  const shown =
    answers.length === 0
      ? []
      : [
          '',
          table(
            [
              ...(['east m', 'north m', 'height m', '± m'] as const).map((h) => [h, 'right'] as const),
              ...(['slope %', '± %', 'falls to °'] as const).map((h) => [h, 'right'] as const),
            ],
            numbers,
          ),
        ];
  return `${[...lines, ...shown].join('\n')}\n`;
}
