import type { Ground } from '../ball/ground.ts';
import type { Lie } from '../ball/shot.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan, cos, length2, sin } from '../numeric/elementary.ts';
import { baselineStrokes } from '../player/baseline.ts';
import { techniqueRules } from '../player/technique.ts';
import { fullSwingMps } from '../player/swingSize.ts';
import { DEFAULT_COVER } from '../terrain/coverRaster.ts';
import { noteAgain, nothingRead, packed } from '../terrain/groundReads.ts';
import { type Cover, covers, type LieQuality, type Moisture } from '../words/vocabulary.ts';
import { type MapGrade, mapRules } from './effort.ts';
import { fingerprint } from './fingerprint.ts';
import { type GreenMap, greenMapSteps } from './greenMap.ts';
import { groundBetween } from './groundBetween.ts';
import { type MissPrices, missPrices } from './missPrices.ts';
import { noted } from './noted.ts';
import type { ShooterFrom } from './priceFrom.ts';
import { puttRoller } from './puttRoller.ts';
import type { Scene } from './scene.ts';
import { shooter, type Simulators, simulatorsAt, spreadOf } from './shooter.ts';
import { type StrokesField, strokesField } from './strokesField.ts';

/** What every plan to one flag shares: simulators, the map of the green, and the price of misses. */
export interface FlagTools {
  readonly flag: PlanePoint;
  readonly simulators: Simulators;
  readonly map: GreenMap;
  /** What a miss off the green costs; the same for either effort. */
  readonly misses: MissPrices;
  readonly field: StrokesField;
  /** A shooter of one candidate from a point, for shots along a bearing (radians). */
  readonly shooterFrom: ShooterFrom;
}

/** Share of the work on a full map that the coarse one before it takes. */
const COARSE_SHARE = 0.1;

interface Kept {
  readonly tools: Map<string, Looked<FlagTools>>;
  readonly maps: Map<string, Looked<GreenMap>>;
}

/** Something made from the ground, with what was looked at for it (packed); what misses cost tells that cell by cell. */
interface Looked<T> {
  readonly made: T;
  readonly looks: Uint8Array;
}

/** Kept per ground; a ground that nobody holds any more takes its tools along. */
const kept = new WeakMap<Ground, Kept>();
const MOST_KEPT = 48;

function keep<T>(store: Map<string, T>, key: string, made: T): T {
  if (store.size >= MOST_KEPT) {
    const oldest = store.keys().next();
    if (oldest.done !== true) store.delete(oldest.value);
  }
  store.set(key, made);
  return made;
}

/**
 * The tools of a flag, made on first asking and kept while the ground, the day and the player stay the same; light ones
 * are not kept, since a flag that moves is nowhere twice. Yields the share of the map of the green that is done. The looks
 * at the ground are noted whether the tools are made or at hand.
 */
export function* flagToolsSteps(
  scene: Scene,
  flag: PlanePoint,
  grade: MapGrade = 'full',
): Generator<number, FlagTools> {
  if (grade === 'light') return lightTools(scene, flag, yield* mapOf(scene, flag, grade));
  const { tools } = storeOf(scene);
  const key = toolsKey(scene, flag, grade);
  return yield* keptOrMade(scene, tools, key, () => keptTools(scene, flag, grade));
}

function* keptTools(scene: Scene, flag: PlanePoint, grade: 'coarse' | 'full'): Generator<number, FlagTools> {
  const { conditions, player } = scene;
  const { maps } = storeOf(scene);
  // Neither wind, air nor firmness moves a putt.
  const { stimpFt, moisture, flagstickIn } = conditions;
  const mapKey = fingerprint([grade, flag, stimpFt, moisture, flagstickIn === true, player.level]);
  const makeMap = (): Generator<number, GreenMap> => mapOf(scene, flag, grade);
  if (grade === 'coarse') return makeTools(scene, flag, yield* keptOrMade(scene, maps, mapKey, makeMap));
  // The full answer shares all but the map, and what misses cost, with the coarse one.
  const coarse = yield* within(0, COARSE_SHARE, flagToolsSteps(scene, flag, 'coarse'));
  const map = yield* within(COARSE_SHARE, 1, keptOrMade(scene, maps, mapKey, makeMap));
  return { ...coarse, map, field: strokesField(map, coarse.misses) };
}

function* keptOrMade<T>(
  { ground: { reads } }: Scene,
  store: Map<string, Looked<T>>,
  key: string,
  make: () => Generator<number, T>,
): Generator<number, T> {
  let known = store.get(key);
  if (known === undefined) {
    const looks = nothingRead(reads);
    const made = yield* noted(reads, looks, make());
    known = keep(store, key, { made, looks: packed(looks) });
  }
  noteAgain(known.looks, reads.into);
  return known.made;
}

/** Whether the full tools of a flag are at hand already. */
export const hasFullTools = (scene: Scene, flag: PlanePoint): boolean =>
  storeOf(scene).tools.has(toolsKey(scene, flag, 'full'));

function storeOf({ ground }: Scene): Kept {
  const known = kept.get(ground);
  if (known !== undefined) return known;
  const made: Kept = { tools: new Map(), maps: new Map() };
  kept.set(ground, made);
  return made;
}

const toolsKey = ({ player, conditions }: Scene, flag: PlanePoint, grade: MapGrade): string =>
  fingerprint([grade, flag, conditions, player.level, player.bag, player.repertoire, player.handed]);

/** Runs a job as a part of a longer one, from one share of it to another. */
export function* within<T>(from: number, to: number, steps: Generator<number, T>): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + (to - from) * step.value;
  }
}

function* mapOf(scene: Scene, flag: PlanePoint, grade: MapGrade): Generator<number, GreenMap> {
  const { ground, conditions, player } = scene;
  return yield* greenMapSteps({
    ground,
    roller: puttRoller(ground, conditions, flag),
    flag,
    conditions,
    level: player.level,
    ...mapRules[grade],
  });
}

function makeTools(scene: Scene, flag: PlanePoint, map: GreenMap): FlagTools {
  const shooters = flagShooters(scene, flag);
  const misses = missPrices(scene.player, map, shooters.shooterFrom, scene.ground);
  return { ...shooters, map, misses, field: strokesField(map, misses) };
}

/** What it takes to strike and roll balls towards a flag, without what their finishes are worth. */
export type FlagShooters = Pick<FlagTools, 'flag' | 'simulators' | 'shooterFrom'>;

export function flagShooters(scene: Scene, flag: PlanePoint): FlagShooters {
  const simulators = simulatorsAt(scene.ground, scene.conditions, flag);
  return { flag, simulators, shooterFrom: shootersOn(scene, flag, simulators) };
}

/** Misses by a table of strokes for cover and distance instead of by the engine. */
function lightTools(scene: Scene, flag: PlanePoint, map: GreenMap): FlagTools {
  const { level } = scene.player;
  const misses: MissPrices = {
    at: (eastM, northM, code) =>
      baselineStrokes(
        level,
        covers[code] ?? DEFAULT_COVER,
        length2(eastM - flag.eastM, northM - flag.northM),
      ),
  };
  return { ...makeTools(scene, flag, map), misses, field: strokesField(map, misses) };
}

/** The same tools for a ball that lies wetter or drier than the day: its strike changes, the ground it comes to does not. */
export function toolsForBall<T extends FlagShooters>(
  scene: Scene,
  tools: T,
  moisture: Moisture | undefined,
): T {
  if (moisture === undefined || moisture === scene.conditions.moisture) return tools;
  const there = { ...scene, conditions: { ...scene.conditions, moisture } };
  return { ...tools, shooterFrom: shootersOn(there, tools.flag, tools.simulators) };
}

function shootersOn(
  { ground, conditions, player }: Scene,
  flag: PlanePoint,
  simulators: Simulators,
): ShooterFrom {
  const full = fullSwingMps(player.level);
  return (candidate, from, cover, quality, bearing) => {
    const lie = lieAt(ground, from, cover, quality, bearing, player.handed);
    const distanceM = length2(from.eastM - flag.eastM, from.northM - flag.northM);
    const fastestMps = full * techniqueRules[candidate.technique].mostOfFullSwing;
    const spread = spreadOf(candidate, player.level, lie, conditions.moisture, distanceM, () =>
      groundBetween(ground, conditions, from, flag),
    );
    return shooter({
      simulators,
      conditions,
      handed: player.handed,
      candidate,
      from,
      lie,
      spread,
      fastestMps,
    });
  };
}

/** The lie at a point for a shot along a bearing (radians): slope along it, and across it seen by the player. */
export function lieAt(
  ground: Ground,
  at: PlanePoint,
  cover: Cover,
  quality: LieQuality,
  bearing: number,
  handed: 'right' | 'left',
): Lie {
  const here = new Float64Array(4);
  ground.sample(Float64Array.of(at.eastM, at.northM), here);
  const ux = sin(bearing);
  const uy = cos(bearing);
  const along = (here[1] ?? 0) * ux + (here[2] ?? 0) * uy;
  // Rise towards the right of the line; a right-hander stands left of it, so ground rising to the right lifts the ball.
  const right = (here[1] ?? 0) * uy - (here[2] ?? 0) * ux;
  const degrees = 180 / Math.PI;
  return {
    cover,
    quality,
    alongDeg: atan(along) * degrees,
    acrossDeg: atan(handed === 'right' ? right : -right) * degrees,
  };
}
