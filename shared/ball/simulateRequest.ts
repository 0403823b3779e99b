import { InputProblem } from '../words/inputProblem.ts';
import { inclinedPlane } from './inclinedPlane.ts';
import { launchFromStrike } from './launchFromStrike.ts';
import type { Launch, Outcome, ShotResult } from './shot.ts';
import { simulateSchema, type SimulateRequest } from './simulateSchema.ts';
import { shotSimulator, type ShotSimulator } from './simulator.ts';

export interface SimulateReply {
  readonly carryM: number;
  readonly landing: { readonly eastM: number; readonly northM: number };
  readonly apexM: number;
  readonly bounces: number;
  readonly runM: number;
  readonly rest: { readonly eastM: number; readonly northM: number };
  readonly totalM: number;
  readonly holed: boolean;
  readonly outcome: Outcome;
  readonly launch: { readonly speedMps: number; readonly elevationDeg: number; readonly backspinRpm: number };
  /** The solved clubhead speed of a strike. */
  readonly clubheadMps?: number;
  /** The solved speed of a launch or a roll. */
  readonly speedMps?: number;
}

const FASTEST_CLUBHEAD_MPS = 70;
const FASTEST_LAUNCH_MPS = 100;
const FASTEST_ROLL_MPS = 30;

function parsed(input: unknown): SimulateRequest {
  const result = simulateSchema.safeParse(input);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  const place = issue === undefined ? '' : issue.path.map(String).join('.');
  throw new InputProblem(
    'simulate-input',
    place === '' && issue?.code === 'invalid_type'
      ? 'it must be one JSON object.'
      : `${issue?.message ?? 'not understood'}.`,
    place === '' ? 'the request' : place,
    'Correct it; the keys and their units are listed under "simulate" in the help.',
  );
}

interface Shooter {
  readonly speedGiven: number | undefined;
  readonly fastestMps: number;
  readonly speedKey: 'clubheadMps' | 'speedMps';
  readonly place: string;
  readonly shoot: (simulator: ShotSimulator, speedMps: number) => ShotResult;
}

function shooter(request: SimulateRequest): Shooter {
  const { strike, launch, roll } = request;
  const given = [strike, launch, roll].filter((one) => one !== undefined).length;
  if (given !== 1) {
    throw new InputProblem(
      'simulate-shot',
      given === 0 ? 'there is no shot.' : 'there is more than one shot.',
      'the request',
      'Give exactly one of strike, launch and roll.',
    );
  }
  const conditions = request;
  if (strike !== undefined) {
    const lie = {
      cover: request.ground.cover,
      quality: strike.lie,
      alongDeg: strike.lieSlopeDeg,
      acrossDeg: strike.lieAcrossDeg,
    };
    return {
      speedGiven: strike.clubheadMps,
      fastestMps: FASTEST_CLUBHEAD_MPS,
      speedKey: 'clubheadMps',
      place: 'strike.clubheadMps',
      shoot: (simulator, clubheadMps) =>
        simulator.trace(0, 0, launchFromStrike({ ...strike, clubheadMps }, lie, conditions)).result,
    };
  }
  if (launch !== undefined) {
    return {
      speedGiven: launch.speedMps,
      fastestMps: FASTEST_LAUNCH_MPS,
      speedKey: 'speedMps',
      place: 'launch.speedMps',
      shoot: (simulator, speedMps) => simulator.trace(0, 0, { ...launch, speedMps } satisfies Launch).result,
    };
  }
  return {
    speedGiven: roll?.speedMps,
    fastestMps: FASTEST_ROLL_MPS,
    speedKey: 'speedMps',
    place: 'roll.speedMps',
    shoot: (simulator, speedMps) => simulator.traceRoll(0, 0, speedMps, roll?.bearingDeg ?? 0).result,
  };
}

/** The slowest speed whose carry or total reaches the one asked for, without the hole in the way. */
function solvedSpeed(
  request: SimulateRequest,
  shot: Shooter,
  solve: NonNullable<SimulateRequest['solve']>,
): number {
  const byCarry = 'carryM' in solve;
  if (byCarry && shot.place.startsWith('roll')) {
    throw new InputProblem(
      'simulate-solve',
      'a roll has no carry.',
      'solve.carryM',
      'Ask for totalM instead.',
    );
  }
  const target = byCarry ? solve.carryM : solve.totalM;
  const simulator = shotSimulator(planeOf(request), request, null);
  const reached = (speed: number): number => {
    const result = shot.shoot(simulator, speed);
    if (byCarry) return result.carryM;
    return result.outcome === 'stillRolling' ? Infinity : result.totalM;
  };
  // Walk up first: spin and slope may make the distance turn back, and the slowest speed is the one meant.
  let low = 0;
  let high = 0.25;
  while (reached(high) < target) {
    low = high;
    high *= 1.06;
    if (high > shot.fastestMps) {
      throw new InputProblem(
        'simulate-out-of-reach',
        `no speed up to ${String(shot.fastestMps)} m/s gets ${String(target)} m.`,
        byCarry ? 'solve.carryM' : 'solve.totalM',
        'Ask for less, or change the loft.',
      );
    }
  }
  for (let k = 0; k < 60 && high - low > 1e-12 * high; k += 1) {
    const middle = (low + high) / 2;
    if (reached(middle) < target) low = middle;
    else high = middle;
  }
  if (reached(high) === Infinity) {
    throw new InputProblem(
      'simulate-never-stops',
      'the ground is too steep for the ball to stop at that distance.',
      'solve.totalM',
      'Ask for a carry, lessen the slope or slow the green.',
    );
  }
  return high;
}

const planeOf = (request: SimulateRequest) =>
  inclinedPlane(request.ground.slopePct, request.ground.downhillBearingDeg, request.ground.cover);

/**
 * One shot from JSON: what `swale simulate` prints. The ball starts at 0, 0 of an inclined plane.
 * @throws InputProblem naming the key for anything missing, unknown, out of range or impossible.
 */
export function simulateRequest(input: unknown): SimulateReply {
  const request = parsed(input);
  const shot = shooter(request);
  const solved = request.solve === undefined ? undefined : solvedSpeed(request, shot, request.solve);
  const speed = solved ?? shot.speedGiven;
  if (speed === undefined) {
    throw new InputProblem(
      'simulate-speed',
      'the speed is missing.',
      shot.place,
      'Give it, or a distance to solve for.',
    );
  }
  const { hole = null } = request;
  const day = { ...request, flagstickIn: hole?.flagstickIn ?? false };
  const result = shot.shoot(shotSimulator(planeOf(request), day, hole), speed);
  const { launch } = result;
  return {
    carryM: result.carryM,
    landing: result.landing,
    apexM: result.apexM,
    bounces: result.bounces,
    runM: result.runM,
    rest: result.rest,
    totalM: result.totalM,
    holed: result.outcome === 'holed',
    outcome: result.outcome,
    launch: {
      speedMps: launch.speedMps,
      elevationDeg: launch.elevationDeg,
      backspinRpm: launch.backspinRpm,
    },
    ...(solved === undefined ? {} : { [shot.speedKey]: solved }),
  };
}
