import type { Conditions } from '../ball/shot.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { atan2, cos, sin } from '../numeric/elementary.ts';
import { nextLevel } from '../player/skill.ts';
import { noteAgain, nothingRead, packed } from '../terrain/groundReads.ts';
import { moistures } from '../words/vocabulary.ts';
import { within } from './flagTools.ts';
import { optionName } from './optionName.ts';
import type { Plan, PlanOption } from './plan.ts';
import { type PlanRequest, planSteps } from './planBall.ts';
import type { Scene } from './scene.ts';

/** One change of circumstances and what it does to the choice. */
export interface WhatIf {
  readonly what: 'stimp' | 'firmness' | 'moisture' | 'slope' | 'wind' | 'flagstick' | 'level' | 'flag';
  /** The circumstance tried: feet, 0 to 1, percent more uphill, m/s into the shot, or a word. */
  readonly tried: number | string;
  /** The choice stands: chosen still, or within the player's margin of the best. */
  readonly holds: boolean;
  readonly chosenId: string;
  readonly chosenName: string;
  /** What keeping to the first choice would cost then; null where it is not an option. */
  readonly keepingCostsStrokes: number | null;
  /** For green speed and firmness: where between now and then the choice changes. */
  readonly switchAt: number | null;
}

export interface SwitchPoints {
  readonly chosenId: string;
  readonly whatIfs: readonly WhatIf[];
  /** Holds over all other flags and all ordinary changes of the day. */
  readonly holdsThroughout: boolean;
  /** Holds for every flag of the hole, on the day as it is. */
  readonly holdsForEveryFlag: boolean;
  /** The ground they depend on (see `Plan`). */
  readonly readGround: Uint8Array;
}

const BISECTIONS = 3;
/** Share of the margin within which a rough answer is believed that the choice stands. */
const CLEARLY = 0.5;

/**
 * Plans the same ball again under other circumstances: green speed a foot either way, firmness and moisture a
 * step, half a percent of slope either way along the line, some wind, the flagstick in or out, the next level of
 * player, and the other flags. Where a rough answer does not plainly keep the choice, a plan as it was asked for decides,
 * on the day as it is too, and such plans place the switch between two circumstances: what is said here is what the plan of
 * that day says, but where a cost does not go evenly from one day to the other. Yields the share done. Throws as planBall
 * does.
 */
export function* switchPointsSteps(scene: Scene, request: PlanRequest): Generator<number, SwitchPoints> {
  const looks = nothingRead(scene.ground.reads);
  const base = yield* quietly(scene, request, 0, 0.08, looks);
  const margin = scene.player.simplicityMarginStrokes;
  const { conditions } = scene;
  const day = (change: Partial<Conditions>): Scene => ({
    ...scene,
    conditions: { ...conditions, ...change },
    key: `${scene.key}+${JSON.stringify(change)}`,
  });
  const { from: ballAt, bearing } = lineOf(scene, request);
  const degrees = (bearing * 180) / Math.PI;
  const moist = moistures.indexOf(conditions.moisture);
  const trials: { what: WhatIf['what']; tried: number | string; scene: Scene; flagId?: string }[] = [];
  for (const stimpFt of [conditions.stimpFt - 1, conditions.stimpFt + 1]) {
    if (stimpFt >= 5) trials.push({ what: 'stimp', tried: stimpFt, scene: day({ stimpFt }) });
  }
  for (const step of [-0.25, 0.25]) {
    const firmness = Math.min(1, Math.max(0, conditions.firmness + step));
    if (firmness !== conditions.firmness) {
      trials.push({ what: 'firmness', tried: firmness, scene: day({ firmness }) });
    }
  }
  for (const moisture of [moistures[moist - 1], moistures[moist + 1]]) {
    if (moisture !== undefined) trials.push({ what: 'moisture', tried: moisture, scene: day({ moisture }) });
  }
  for (const pct of [-0.5, 0.5])
    trials.push({ what: 'slope', tried: pct, scene: tilted(scene, ballAt, bearing, pct) });
  for (const windMps of [-5, 5]) {
    const windFromDeg = windMps > 0 ? degrees : degrees + 180;
    trials.push({ what: 'wind', tried: windMps, scene: day({ windMps: 5, windFromDeg }) });
  }
  const flagstickIn = conditions.flagstickIn !== true;
  trials.push({ what: 'flagstick', tried: flagstickIn ? 'in' : 'out', scene: day({ flagstickIn }) });
  const better = nextLevel(scene.player.level);
  if (better !== null) {
    trials.push({
      what: 'level',
      tried: better.kind === 'handicap' ? better.handicap : better.kind,
      scene: { ...scene, player: { ...scene.player, level: better } },
    });
  }
  for (const flag of scene.flags) {
    if (flag.record.id === request.flagId) continue;
    trials.push({ what: 'flag', tried: flag.record.label, scene, flagId: flag.record.id });
  }

  const whatIfs: WhatIf[] = [];
  for (const [i, trial] of trials.entries()) {
    const from = 0.08 + (0.92 * i) / trials.length;
    const part = 0.92 / trials.length / (2 + BISECTIONS);
    const flagId = trial.flagId ?? request.flagId;
    // A rough look first; only where the choice is not plainly the same there, the full answer.
    const look = yield* quietly(
      trial.scene,
      { ...request, flagId, effort: 'rough' },
      from,
      from + part,
      looks,
    );
    const plan = stands(look, base.chosenId, CLEARLY * margin)
      ? look
      : yield* quietly(trial.scene, { ...request, flagId }, from + part, from + 2 * part, looks);
    const holds = stands(plan, base.chosenId, margin);
    let switchAt: number | null = null;
    if (!holds && (trial.what === 'stimp' || trial.what === 'firmness') && typeof trial.tried === 'number') {
      let stay = trial.what === 'stimp' ? conditions.stimpFt : conditions.firmness;
      let change = trial.tried;
      for (let k = 0; k < BISECTIONS; k += 1) {
        const middle = (stay + change) / 2;
        const between = day(trial.what === 'stimp' ? { stimpFt: middle } : { firmness: middle });
        const tried = yield* quietly(between, request, from + (2 + k) * part, from + (3 + k) * part, looks);
        if (stands(tried, base.chosenId, margin)) stay = middle;
        else change = middle;
      }
      switchAt = (stay + change) / 2;
    }
    const chosen = optionOf(plan, plan.chosenId);
    whatIfs.push({
      what: trial.what,
      tried: trial.tried,
      holds,
      chosenId: plan.chosenId,
      chosenName: chosen === undefined ? '' : optionName(chosen),
      keepingCostsStrokes: optionOf(plan, base.chosenId)?.costStrokes ?? null,
      switchAt,
    });
  }
  const holdsThroughout = whatIfs.every((w) => w.holds || w.what === 'level');
  const holdsForEveryFlag = whatIfs.every((w) => w.holds || w.what !== 'flag');
  return { chosenId: base.chosenId, whatIfs, holdsThroughout, holdsForEveryFlag, readGround: packed(looks) };
}

/**
 * The option of an id. Where a chip has become a little too long to be called one, or a pitch too short, the
 * other name with the same club is the same choice.
 */
function optionOf(plan: Plan, id: string): PlanOption | undefined {
  const [technique, clubId] = id.split(':');
  const other = technique === 'chip' ? 'pitch' : technique === 'pitch' ? 'chip' : null;
  return (
    plan.options.find((option) => option.id === id) ??
    plan.options.find((option) => !option.playAway && option.technique === other && option.clubId === clubId)
  );
}

function stands(plan: Plan, id: string, margin: number): boolean {
  const option = optionOf(plan, id);
  return option !== undefined && (option.id === plan.chosenId || option.costStrokes <= margin);
}

/** Runs a plan as part of a longer job, and notes what ground it looked at. */
function* quietly(
  scene: Scene,
  request: PlanRequest,
  from: number,
  to: number,
  looks: Uint8Array,
): Generator<number, Plan> {
  const plan = yield* within(from, to, planSteps(scene, request));
  if (plan.readGround !== undefined) noteAgain(plan.readGround, looks);
  return plan;
}

function lineOf(scene: Scene, request: PlanRequest): { readonly from: PlanePoint; readonly bearing: number } {
  const ball = scene.balls.find((b) => b.record.id === request.ballId)?.at;
  const flag = scene.flags.find((f) => f.record.id === request.flagId)?.at;
  const from = ball ?? { eastM: 0, northM: 0 };
  const bearing =
    ball === undefined || flag === undefined ? 0 : atan2(flag.eastM - ball.eastM, flag.northM - ball.northM);
  return { from, bearing };
}

/** No ball of a plan comes farther from where it lies, metres. */
const REACH_M = 200;

/**
 * The same ground with so many percent more rise along a bearing, turned about a point that keeps its height. What stands
 * on it goes up and down with the ground under its middle.
 */
export function tilted(
  scene: Scene,
  { eastM: e0, northM: n0 }: PlanePoint,
  bearing: number,
  pct: number,
): Scene {
  const { ground } = scene;
  const east = (pct / 100) * sin(bearing);
  const north = (pct / 100) * cos(bearing);
  const riseAt = (eastM: number, northM: number): number => east * (eastM - e0) + north * (northM - n0);
  return {
    ...scene,
    key: `${scene.key}+${String(pct)}%`,
    ground: {
      ...ground,
      maxHeightM: ground.maxHeightM + (Math.abs(pct) / 100) * REACH_M,
      // The blocks of the ceiling are not worth tilting for so few shots.
      ceiling: null,
      obstacles: ground.obstacles.map((one) => {
        const rise = riseAt(middle(one.ringM, 0), middle(one.ringM, 1));
        return { ...one, bottomM: one.bottomM + rise, topM: one.topM + rise };
      }),
      heightAt: (at) => ground.heightAt(at) + riseAt(at.eastM, at.northM),
      sample(at, out) {
        ground.sample(at, out);
        out[0] = (out[0] ?? 0) + riseAt(at[0] ?? 0, at[1] ?? 0);
        out[1] = (out[1] ?? 0) + east;
        out[2] = (out[2] ?? 0) + north;
      },
    },
  };
}

/** Mean of every other number of a flat ring. */
function middle(ringM: Float64Array, from: 0 | 1): number {
  let sum = 0;
  for (let i = from; i < ringM.length; i += 2) sum += ringM[i] ?? 0;
  return (2 * sum) / ringM.length;
}
