import { type Air, airConstants } from './aerodynamics.ts';
import { airOf } from './air.ts';
import { coverTable, type CoverTable } from './coverPhysics.ts';
import type { Ceiling, FlightNotes, Ground, Obstacle } from './ground.ts';
import { coverCode } from '../words/vocabulary.ts';
import type { Conditions } from './shot.ts';
import { RADIANS_PER_DEGREE } from './constants.ts';
import { cos, sin } from '../numeric/elementary.ts';

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

/** What one simulator knows: the ground, the day and the hole, worked out once. */
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
  record: PathRecord | null;
}

const GREEN = coverCode('green');

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
