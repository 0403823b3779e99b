import * as z from 'zod';
import { useRecord } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument, RecordOf } from '../../../shared/atlas/records.ts';
import { gridOver } from '../../../shared/terrain/hermiteGrid.ts';
import { doubtAt, doubtGrid } from '../../../shared/terrain/confidence.ts';
import { flagGround } from '../../../shared/terrain/flagGround.ts';
import { type MeasureHere, measureNext, slopesAt } from '../../../shared/terrain/measureNext.ts';
import { placesOver } from '../../../shared/terrain/placesOver.ts';
import { surveyedGround } from '../../../shared/terrain/surveyedGround.ts';
import { slopeAt } from '../../../shared/terrain/slope.ts';
import { lonLat, planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { buildScene } from '../../../shared/planner/scene.ts';
import { type SurveyDoubt, surveyDoubtSteps } from '../../../shared/planner/surveyDoubt.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../../shared/protocol/planning.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { Command, CommandIo } from '../command.ts';
import { findBall, findDay, findFlag, findHole, findPlayer } from '../findRecords.ts';
import { fittedHole, type FittedHole } from '../../../shared/exchange/fittedHole.ts';
import { progressLine } from '../progress.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas, readJson } from '../readInput.ts';
import { type Answer, doubtText, type FlagReport, flagText, spotText, textOf } from '../surfaceText.ts';
import { UsageProblem } from '../usageProblem.ts';
import { writeJson } from '../writeJson.ts';

z.config({ jitless: true });

/** About a metre shows all there is to see of doubt. */
const DOUBT_CELL_M = 1;
const SPOTS_APART_M = 1.8;

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

Usage: swale surface ATLAS --hole HOLE [--ball BALL --flag FLAG] [--day DAY] [--player PLAYER]
                     [--points] [--json]

  ATLAS            an atlas file
  --hole HOLE      the label the hole has on the card, or its id
  --ball, --flag   also say how sure the survey makes the plan of this ball to this flag, and where
                   one more height would help it most; without them, where it would help the green
  --day DAY        the day by its name or id, for its green speed; the one in use if left out
  --player PLAYER  the player by name or id; the one in use if left out
  --points         read places from standard input, a JSON list of {"lon": …, "lat": …} or
                   {"eastM": …, "northM": …} (metres from the atlas's anchor), and give height,
                   slope and doubt at each
  --json           grid{originEastM,originNorthM,cellM,columns,rows,heightsM}, readings and
                   disagreements with their residuals, confidence{…,heightSdM,slopeSdPct}, flags
                   with what is unfair about them, measureNext, planDoubt, points; SI units

Rows of grids run from the south-west corner. A bearing is the one the ground falls in, degrees
clockwise from north. Doubt is one standard deviation; a slope's is over 1 m.

Examples:
  swale surface sample-course/ossel-down.geojson --hole 2 --ball 3 --flag A
  echo '[{"eastM": -288, "northM": 140}]' | \\
    swale surface sample-course/ossel-down.geojson --hole 2 --points
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['ATLAS'],
      values: ['hole', 'ball', 'flag', 'day', 'player'],
      needed: ['hole'],
      flags: ['points', 'json'],
    });
    const document = chosenIn(await readAtlas(positionals[0] ?? ''), values.get('day'), values.get('player'));
    const hole = findHole(document, values.get('hole') ?? '');
    const shot = shotOf(document, hole, values.get('ball'), values.get('flag'));
    const fitted = fittedHole(document, hole.id);
    const asked = flags.has('points') ? await placesOf(io, fitted) : [];
    const answers = asked.map((at) => ({ at, ...groundAt(fitted, at) }));
    const planDoubt = shot === null ? null : planDoubtOf(document, hole.id, shot, io);
    const spots = planDoubt?.measureNext ?? spotsOf(fitted);
    const fair = flagsIn(fitted);
    if (flags.has('json')) {
      writeJson(io.stdout, { ...reportOf(fitted, answers), flags: fair, measureNext: spots, planDoubt });
      return;
    }
    io.stdout.write(
      textOf(fitted, hole.label, answers, [
        ...fair.map(flagText),
        ...doubtText(planDoubt),
        ...spotText(spots),
      ]),
    );
  },
};

/** The atlas with the day and the player asked for in use. */
function chosenIn(
  document: AtlasDocument,
  day: string | undefined,
  player: string | undefined,
): AtlasDocument {
  const onDay =
    day === undefined ? document : useRecord('day', 'conditions', findDay(document, day).id).apply(document);
  return player === undefined
    ? onDay
    : useRecord('player', 'player', findPlayer(onDay, player).id).apply(onDay);
}

function shotOf(
  document: AtlasDocument,
  hole: RecordOf<'hole'>,
  ball: string | undefined,
  flag: string | undefined,
): { readonly ballId: string; readonly flagId: string } | null {
  if (ball === undefined && flag === undefined) return null;
  if (ball === undefined || flag === undefined)
    throw new UsageProblem('--ball and --flag go together: give both or neither.');
  return { ballId: findBall(document, hole, ball).id, flagId: findFlag(document, hole, flag).id };
}

function planDoubtOf(
  document: AtlasDocument,
  holeId: string,
  shot: { readonly ballId: string; readonly flagId: string },
  io: CommandIo,
): SurveyDoubt {
  const request = { ...shot, shotsPerOption: USUAL_SHOTS, seed: USUAL_SEED };
  const steps = surveyDoubtSteps(buildScene(document, holeId), request);
  const progress = progressLine(io, 'Trying other ground, %:');
  for (;;) {
    const step = steps.next();
    if (step.done === true) {
      progress.end();
      return step.value;
    }
    progress.show(Math.round(100 * step.value), 100);
  }
}

function spotsOf({ plane, surface }: FittedHole): readonly MeasureHere[] {
  const places = placesOver(plane.green.polygon, SPOTS_APART_M);
  return measureNext(surface, slopesAt(places), places);
}

function flagsIn({ plane, surface }: FittedHole): readonly FlagReport[] {
  const ground = surveyedGround(surface, plane.input);
  return plane.flags.map(({ record, at }) => ({
    label: record.label,
    at,
    ...flagGround(ground, at, plane.conditions.stimpFt),
  }));
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
