import { covers, type Cover } from '../words/vocabulary.ts';
import { RADIANS_PER_DEGREE } from './constants.ts';
import type { Ground } from './ground.ts';
import { launchVectors } from './launchVectors.ts';
import { runRoll, runShot } from './runShot.ts';
import { outcomes, type Conditions, type Launch, type Outcome, type ShotResult } from './shot.ts';
import { shotWork, type HoleTarget, type SimulatorOptions } from './shotWork.ts';
import { MET_OBSTACLE, SLOT_COUNT, slots } from './slots.ts';

/** A path sampled for drawing: flat [east, north, height] triples in metres, with the index where each phase starts. */
export interface BallPath {
  readonly pointsM: Float64Array;
  /** Indices (in points) of every touchdown; the first is the landing spot. Empty for a roll. */
  readonly touchdowns: readonly number[];
  /** Index (in points) where the ball begins to roll for good. */
  readonly rollFrom: number;
}

export interface TracedShot {
  readonly result: ShotResult;
  readonly path: BallPath;
}

export interface ShotSimulator {
  /**
   * One shot from the ground at a point. `launch` holds velocity east, north, up (m/s) and the spin vector (rad/s), as
   * `launchVectors` or `strikeVectors` write it. Fills `out` (see `slots`) and returns an index into `outcomes`.
   * Allocates nothing.
   */
  run(startEastM: number, startNorthM: number, launch: Float64Array, out: Float64Array): number;
  /** A ball that rolls from the start without slipping, such as one off a ramp. Bearing in radians from north, clockwise. */
  roll(
    startEastM: number,
    startNorthM: number,
    speedMps: number,
    bearingRad: number,
    out: Float64Array,
  ): number;
  trace(startEastM: number, startNorthM: number, launch: Launch): TracedShot;
  traceRoll(startEastM: number, startNorthM: number, speedMps: number, bearingDeg: number): TracedShot;
}

function resultFrom(
  out: Float64Array,
  outcome: number,
  launch: Launch,
  startEastM: number,
  startNorthM: number,
): ShotResult {
  const at = (slot: number): number => out[slot] as number; // out has SLOT_COUNT entries
  const rest = { eastM: at(slots.restEastM), northM: at(slots.restNorthM) };
  const landing = { eastM: at(slots.landingEastM), northM: at(slots.landingNorthM) };
  const length = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy);
  return {
    launch,
    outcome: outcomes[outcome] as Outcome,
    carryM: at(slots.carryM),
    landing,
    apexM: at(slots.apexM),
    bounces: at(slots.bounces),
    runM: length(rest.eastM - landing.eastM, rest.northM - landing.northM),
    rest,
    totalM: length(rest.eastM - startEastM, rest.northM - startNorthM),
    restCover: covers[at(slots.restCover)] as Cover,
    struckObstacle: at(slots.obstructed) === MET_OBSTACLE,
  };
}

/**
 * The chain of the ball on one ground and day: flight, bounces, roll and hole. Give it a launch and it says where the
 * ball ends. One simulator is one working memory: make one per thread and use it over and over.
 */
export function shotSimulator(
  ground: Ground,
  conditions: Conditions,
  hole: HoleTarget | null,
  options: SimulatorOptions = {},
): ShotSimulator {
  const w = shotWork(ground, conditions, hole, options);
  const out = new Float64Array(SLOT_COUNT);
  const vectors = new Float64Array(6);

  const traced = (
    launch: Launch,
    startEastM: number,
    startNorthM: number,
    shoot: () => number,
  ): TracedShot => {
    const record = { points: [] as number[], touchdowns: [] as number[], rollFrom: 0 };
    w.record = record;
    const outcome = shoot();
    w.record = null;
    return {
      result: resultFrom(out, outcome, launch, startEastM, startNorthM),
      path: {
        pointsM: Float64Array.from(record.points),
        touchdowns: record.touchdowns,
        rollFrom: record.rollFrom,
      },
    };
  };

  return {
    run: (startEastM, startNorthM, launch, results) => runShot(w, startEastM, startNorthM, launch, results),
    roll: (startEastM, startNorthM, speedMps, bearingRad, results) =>
      runRoll(w, startEastM, startNorthM, speedMps, bearingRad, results),
    trace: (startEastM, startNorthM, launch) =>
      traced(launch, startEastM, startNorthM, () => {
        launchVectors(launch, vectors);
        return runShot(w, startEastM, startNorthM, vectors, out);
      }),
    traceRoll: (startEastM, startNorthM, speedMps, bearingDeg) =>
      traced(
        { speedMps, elevationDeg: 0, bearingDeg, backspinRpm: 0, spinAxisDeg: 0 },
        startEastM,
        startNorthM,
        () => runRoll(w, startEastM, startNorthM, speedMps, bearingDeg * RADIANS_PER_DEGREE, out),
      ),
  };
}
