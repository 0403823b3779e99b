import { type Air, airConstants } from './aerodynamics.ts';
import { airOf } from './air.ts';
import { STATE_SIZE } from './bounce.ts';
import { coverTable, type CoverTable } from './coverPhysics.ts';
import type { Ceiling, FlightNotes, Ground, Obstacle } from './ground.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { Conditions } from './shot.ts';
import { RADIANS_PER_DEGREE } from './constants.ts';
import { cos, sin } from '../numeric/elementary.ts';
import { STOP_SIZE } from './stopDisplacement.ts';

/** The hole a shot may drop into. */
export interface HoleTarget {
  readonly eastM: number;
  readonly northM: number;
}

export interface SimulatorOptions {
  /** Air other than the day's own. */
  readonly air?: Pick<Air, 'densityKgM3' | 'viscosityM2s'>;
  /** Turf other than the day's own, to ask what a constant of it is worth. */
  readonly covers?: CoverTable;
  /** Factor on every step length: 1 as shipped, smaller for a reference integration. */
  readonly stepFactor?: number;
}

/** Where a traced shot leaves its marks. */
export interface PathRecord {
  readonly points: number[];
  readonly touchdowns: number[];
  rollFrom: number;
}

/** Working memory of one simulator: everything the phases of a shot read and write, allocated once. */
export interface ShotWork {
  readonly ground: Ground;
  readonly reads: FlightNotes | null;
  readonly maxHeightM: number;
  readonly ceiling: Ceiling | null;
  readonly obstacles: readonly Obstacle[];
  /** West, south, east and north of each obstacle, in their order. */
  readonly obstacleBoxes: Float64Array;
  readonly covers: CoverTable;
  readonly air: Float64Array;
  readonly hasHole: boolean;
  readonly holeEastM: number;
  readonly holeNorthM: number;
  readonly holeSlopeEast: number;
  readonly holeSlopeNorth: number;
  readonly flagstickIn: boolean;
  /** Acceleration against which a ball on the green rolls for its grain, m/s^2: minus the pull. */
  readonly grainEastMps2: number;
  readonly grainNorthMps2: number;
  readonly stepFactor: number;
  /** Ball: see the indices in `bounce`. */
  readonly state: Float64Array;
  /** Ball at the end of the flight step under way. */
  readonly next: Float64Array;
  /** Acceleration at the start and at the end of that step, m/s^2. */
  readonly endsMps2: Float64Array;
  /** Ground under the ball: height, gradient, cover code. */
  readonly here: Float64Array;
  readonly probe: Float64Array;
  readonly probe2: Float64Array;
  /** A point that the ground is asked about. */
  readonly at: Float64Array;
  /** The step under way: how long it is and when in it the ball meets the ground, seconds (`STEP_S`, `CONTACT_S`). */
  readonly step: Float64Array;
  /** What slows a ball that rolls on the cover it is on: the grass, and the pull of the grain east and north, m/s^2. */
  readonly slowing: Float64Array;
  /** What `stopDisplacement` is asked and answers. */
  readonly stop: Float64Array;
  readonly velocity: Float64Array;
  /** 0 highest point so far; 1 what was in the way (`slots.obstructed`); 2, 3 entry into penalty area or out of bounds. */
  readonly marks: Float64Array;
  record: PathRecord | null;
}

const GREEN = coverCode('green');

export const STEP_S = 0;
export const CONTACT_S = 1;

export const MARK_APEX = 0;
export const MARK_OBSTRUCTED = 1;
export const MARK_ENTRY_EAST = 2;
export const MARK_ENTRY_NORTH = 3;

export function shotWork(
  ground: Ground,
  conditions: Conditions,
  hole: HoleTarget | null,
  options: SimulatorOptions,
): ShotWork {
  const towards = (conditions.windFromDeg + 180) * RADIANS_PER_DEGREE;
  const table = options.covers ?? coverTable(conditions);
  const greenMps2 = table.rollingMps2[GREEN] as number;
  const atHole = new Float64Array(4);
  if (hole !== null) ground.sample(Float64Array.of(hole.eastM, hole.northM), atHole);
  return {
    ground,
    reads: ground.reads ?? null,
    maxHeightM: ground.maxHeightM,
    ceiling: ground.ceiling ?? null,
    obstacles: ground.obstacles,
    obstacleBoxes: boxesOf(ground.obstacles),
    covers: table,
    air: airConstants({
      ...(options.air ?? airOf(conditions)),
      windEastMps: conditions.windMps === 0 ? 0 : conditions.windMps * sin(towards),
      windNorthMps: conditions.windMps === 0 ? 0 : conditions.windMps * cos(towards),
    }),
    hasHole: hole !== null,
    holeEastM: hole?.eastM ?? 0,
    holeNorthM: hole?.northM ?? 0,
    holeSlopeEast: atHole[1] as number,
    holeSlopeNorth: atHole[2] as number,
    flagstickIn: conditions.flagstickIn ?? false,
    grainEastMps2: -(ground.grain?.eastShare ?? 0) * greenMps2,
    grainNorthMps2: -(ground.grain?.northShare ?? 0) * greenMps2,
    stepFactor: options.stepFactor ?? 1,
    state: new Float64Array(STATE_SIZE),
    next: new Float64Array(STATE_SIZE),
    endsMps2: new Float64Array(6),
    here: new Float64Array(4),
    probe: new Float64Array(4),
    probe2: new Float64Array(4),
    at: new Float64Array(2),
    step: new Float64Array(2),
    slowing: new Float64Array(3),
    stop: new Float64Array(STOP_SIZE),
    velocity: new Float64Array(2),
    marks: new Float64Array(4),
    record: null,
  };
}

function boxesOf(obstacles: readonly Obstacle[]): Float64Array {
  const boxes = new Float64Array(4 * obstacles.length);
  obstacles.forEach(({ ringM }, k) => {
    let west = Infinity;
    let south = Infinity;
    let east = -Infinity;
    let north = -Infinity;
    for (let i = 0; i < ringM.length; i += 2) {
      west = Math.min(west, ringM[i] as number);
      east = Math.max(east, ringM[i] as number);
      south = Math.min(south, ringM[i + 1] as number);
      north = Math.max(north, ringM[i + 1] as number);
    }
    boxes.set([west, south, east, north], 4 * k);
  });
  return boxes;
}
