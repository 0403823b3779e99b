import type { PlayerLevel } from '../atlas/records.ts';
import { coverTable } from '../ball/coverPhysics.ts';
import { HOLE_RADIUS_M } from '../ball/constants.ts';
import type { Ground } from '../ball/ground.ts';
import type { Conditions } from '../ball/shot.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, cos, length2, sin } from '../numeric/elementary.ts';
import { baselinePutts, baselineStrokes } from '../player/baseline.ts';
import { PUTT_PAST_M, puttingErrors, puttingSpread } from '../player/puttingSpread.ts';
import { coverCode, covers } from '../words/vocabulary.ts';
import { type ChanceRules, makeChance } from './makeChance.ts';
import { PER_PAIR, puttDraws } from './puttDraws.ts';
import { puttedNodes } from './puttedNodes.ts';
import { type PuttRoller, ROLL_HOLED } from './puttRoller.ts';
import { puttLines } from './puttLines.ts';
import type { PathSteps } from './puttPath.ts';

/** Strokes to hole out with the putter around one flag, on rings around it. */
export interface GreenMap {
  readonly flag: PlanePoint;
  /**
   * Rings, metres, rising, and the number of spokes; node arrays run ring by ring, spokes clockwise from north.
   */
  readonly radiiM: Float64Array;
  readonly spokes: number;
  readonly strokes: Float64Array;
  /** Chance of holing the first putt. */
  readonly makes: Float64Array;
  /** Start speed (m/s) and start bearing (radians) of the putt meant from each node that was simulated. */
  readonly speedsMps: Float64Array;
  readonly bearings: Float64Array;
  /** 1 where the node was simulated, 0 where it lies off the green and its value is carried outward. */
  readonly simulated: Uint8Array;
  /**
   * Strokes to hole out from any point, between nodes by bilinear interpolation in ring and spoke; 1 at the
   * hole.
   */
  strokesAt(eastM: number, northM: number): number;
  makeAt(eastM: number, northM: number): number;
}

export interface GreenMapInput {
  readonly ground: Ground;
  readonly roller: PuttRoller;
  readonly flag: PlanePoint;
  readonly conditions: Conditions;
  readonly level: PlayerLevel;
  readonly puttsPerNode: number;
  /** How fine the map is; by default every ring, 32 spokes and 360 paths out of the hole, in the finest steps. */
  readonly spokes?: number;
  readonly ringStep?: number;
  readonly directions?: number;
  readonly lineSteps?: PathSteps;
  readonly chance?: ChanceRules;
}

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');
const SPOKES = 32;
const DIRECTIONS = 360;
const RADII_M = [
  0.15, 0.3, 0.45, 0.6, 0.8, 1, 1.25, 1.55, 1.9, 2.3, 2.8, 3.4, 4.2, 5.2, 6.4, 8, 10, 12.5, 15.5, 19, 23, 28,
  34, 42,
] as const;
/** Rounds of valuing what a missed putt leaves; each shrinks the error by the chance of a third putt. */
const ROUNDS = 6;

/**
 * From every node on the green or its fringe: the putt meant (rolled backwards out of the hole), struck with
 * the player's spread over that surface, and valued by what it leaves on this same map. Yields after every
 * ring, with the share done, so that whoever runs it can show progress or stop.
 */
export function* greenMapSteps(input: GreenMapInput): Generator<number, GreenMap> {
  const { ground, roller, flag, conditions, level } = input;
  const table = coverTable(conditions);
  const spokes = input.spokes ?? SPOKES;
  const ringStep = input.ringStep ?? 1;
  const radiiM = Float64Array.from(RADII_M.filter((_, ring) => ring % ringStep === 0));
  const rings = radiiM.length;
  const nodes = rings * spokes;
  const errors = puttingErrors(level);
  const simulated = puttedNodes(ground, flag, radiiM, spokes);
  const lines = puttLines(
    ground,
    flag,
    radiiM,
    PUTT_PAST_M,
    table.rollingMps2,
    input.directions ?? DIRECTIONS,
    simulated,
    input.lineSteps,
  );
  const strokes = new Float64Array(nodes);
  const makes = new Float64Array(nodes);
  const speedsMps = new Float64Array(nodes);
  const bearings = new Float64Array(nodes);
  const pairs = Math.max(1, Math.round(input.puttsPerNode / 2));
  const putts = 2 * pairs;
  const draws = puttDraws(pairs);
  const rests = new Float32Array(nodes * putts * 2);
  const codes = new Uint8Array(nodes * putts);
  const line = new Float64Array(3);
  const rollingMps2 = table.rollingMps2[GREEN] ?? 0;

  for (let ring = 0; ring < rings; ring += 1) {
    const radius = radiiM[ring] ?? 1;
    for (let spoke = 0; spoke < spokes; spoke += 1) {
      const node = ring * spokes + spoke;
      const angle = (2 * Math.PI * spoke) / spokes;
      const east = flag.eastM + radius * sin(angle);
      const north = flag.northM + radius * cos(angle);
      strokes[node] = baselinePutts(level, radius);
      if (simulated[node] === 0) continue;
      lines.at(ring, angle, line);
      speedsMps[node] = line[0] ?? 0;
      bearings[node] = line[1] ?? 0;
      const spread = puttingSpread(errors, {
        distanceM: radius,
        startMps: line[0] ?? 0,
        holeMps: line[2] ?? 0,
        rollingMps2,
      });
      const lineSd = (spread.lineSdDeg * Math.PI) / 180;
      for (let i = 0; i < putts; i += 1) {
        // Each pace is tried once left and once right of the line, so that a map of even ground is even.
        const row = (i >> 1) * PER_PAIR;
        const z0 = draws[row] ?? 0;
        const z1 = i % 2 === 0 ? (draws[row + 1] ?? 0) : -(draws[row + 1] ?? 0);
        const out = roller.roll(
          east,
          north,
          (speedsMps[node] ?? 0) * Math.max(0.1, 1 + spread.speedSd * z0),
          (bearings[node] ?? 0) + lineSd * z1,
        );
        const k = node * putts + i;
        codes[k] = out.code;
        rests[2 * k] = out.eastM;
        rests[2 * k + 1] = out.northM;
      }
      makes[node] = makeChance(
        ground,
        table.rollingMps2,
        flag,
        {
          from: { eastM: east, northM: north },
          speedMps: speedsMps[node] ?? 0,
          bearing: bearings[node] ?? 0,
          speedSd: spread.speedSd,
          lineSd,
          flagstickIn: conditions.flagstickIn === true,
        },
        input.chance,
      );
    }
    yield (ring + 1) / rings;
  }

  const at = (values: Float64Array, centre: number, eastM: number, northM: number): number => {
    const dx = eastM - flag.eastM;
    const dy = northM - flag.northM;
    const r = length2(dx, dy);
    if (r <= HOLE_RADIUS_M) return centre;
    let turn = (atan2(dx, dy) / (2 * Math.PI)) * spokes;
    if (turn < 0) turn += spokes;
    const s0 = Math.floor(turn) % spokes;
    const s1 = (s0 + 1) % spokes;
    const fs = turn - Math.floor(turn);
    let ring = 0;
    while (ring < rings && r > (radiiM[ring] ?? 0)) ring += 1;
    const outer = Math.min(rings - 1, ring);
    const vOuter = (values[outer * spokes + s0] ?? 0) * (1 - fs) + (values[outer * spokes + s1] ?? 0) * fs;
    if (ring >= rings) return vOuter;
    const inner = ring - 1;
    const rInner = inner < 0 ? HOLE_RADIUS_M : (radiiM[inner] ?? 0);
    const vInner =
      inner < 0
        ? centre
        : (values[inner * spokes + s0] ?? 0) * (1 - fs) + (values[inner * spokes + s1] ?? 0) * fs;
    return vInner + ((vOuter - vInner) * (r - rInner)) / ((radiiM[outer] ?? 1) - rInner);
  };

  let current = strokes;
  for (let round = 0; round < ROUNDS; round += 1) {
    const next = Float64Array.from(current);
    for (let node = 0; node < nodes; node += 1) {
      if (simulated[node] === 0) continue;
      let sum = 0;
      let missed = 0;
      for (let i = 0; i < putts; i += 1) {
        const k = node * putts + i;
        const code = codes[k] ?? 0;
        if (code === ROLL_HOLED) continue;
        missed += 1;
        const east = rests[2 * k] ?? 0;
        const north = rests[2 * k + 1] ?? 0;
        if (code === GREEN || code === FRINGE) sum += at(current, 1, east, north);
        else {
          sum += baselineStrokes(
            level,
            covers[code] ?? 'fairway',
            length2(east - flag.eastM, north - flag.northM),
          );
        }
      }
      // The sample says what a miss leaves; how often one misses is known better.
      next[node] = 1 + (1 - (makes[node] ?? 0)) * (missed > 0 ? sum / missed : 1);
    }
    carryOutward(next, makes, simulated, radiiM, spokes, level);
    current = next;
  }
  return {
    flag,
    radiiM,
    spokes,
    strokes: current,
    makes,
    speedsMps,
    bearings,
    simulated,
    strokesAt: (eastM, northM) => at(current, 1, eastM, northM),
    makeAt: (eastM, northM) => at(makes, 1, eastM, northM),
  };
}

/** Nodes off the green keep the excess of the last node inside them over level putting. */
function carryOutward(
  strokes: Float64Array,
  makes: Float64Array,
  simulated: Uint8Array,
  radiiM: Float64Array,
  spokes: number,
  level: PlayerLevel,
): void {
  for (let spoke = 0; spoke < spokes; spoke += 1) {
    let excess = 0;
    let last = 1;
    for (let ring = 0; ring < radiiM.length; ring += 1) {
      const node = ring * spokes + spoke;
      const plain = baselinePutts(level, radiiM[ring] ?? 1);
      if (simulated[node] === 1) {
        excess = (strokes[node] ?? plain) - plain;
        last = makes[node] ?? 0;
      } else {
        strokes[node] = plain + excess;
        makes[node] = last * 0.8;
      }
    }
  }
}

/** All at once. */
export function greenMap(input: GreenMapInput, onProgress?: (share: number) => void): GreenMap {
  const steps = greenMapSteps(input);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    onProgress?.(step.value);
  }
}
