/**
 * How often the coarse answer makes the choice of the full one, the same shot with the same club, and what each takes, over
 * every ball and flag of the sample course and practice ground: on a coarse map of the green, as for the first ball of a
 * flag, and on the full one, as for the others. Beside it, as a measure of what can be asked: how often two full answers of
 * different seeds agree. Times are processor time of this process, so that other work on the machine does not count for
 * much. Run with `npx tsx tests/bench/coarse.ts [every nth scenario]`.
 */
import { readFileSync } from 'node:fs';
import { readAtlasFile } from '../../shared/formats/atlasFile.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { USUAL_SHOTS } from '../../shared/protocol/planning.ts';

const EVERY = Number(process.argv[2] ?? 1);
const SHOTS = USUAL_SHOTS;
const FILES = ['ossel-down.geojson', 'ossel-practice.geojson'];

function timed<T>(work: () => T): { readonly value: T; readonly ms: number } {
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return { value, ms: (user + system) / 1000 };
}

const chosen = (plan: Plan): PlanOption | undefined => plan.options.find(({ id }) => id === plan.chosenId);

/** How the choice of one plan stands in another. */
interface Agreement {
  readonly same: boolean;
  readonly sameTechnique: boolean;
  /** Strokes that the other plan says are lost by it, against its own choice; NaN where it does not know it. */
  readonly lostStrokes: number;
  /** Chosen by the other too, or level there with its choice or its best. */
  readonly asGood: boolean;
}

function agreement(quick: Plan, firm: Plan): Agreement {
  const own = chosen(firm);
  const there = firm.options.find(({ id }) => id === quick.chosenId);
  const lostStrokes = (there?.strokes ?? NaN) - (own?.strokes ?? NaN);
  const same = quick.chosenId === firm.chosenId;
  return {
    same,
    sameTechnique: chosen(quick)?.technique === own?.technique,
    lostStrokes,
    asGood: same || (there !== undefined && (there.level || lostStrokes <= (own?.standardErrorStrokes ?? 0))),
  };
}

const sorted = (values: readonly number[]): readonly number[] => [...values].sort((a, b) => a - b);
const median = (values: readonly number[]): number => sorted(values)[values.length >> 1] ?? NaN;
const worst = (values: readonly number[]): number => sorted(values).at(-1) ?? NaN;
const percent = (values: readonly boolean[]): string =>
  `${((100 * values.filter(Boolean).length) / values.length).toFixed(1)} %`;

const coarseMs: number[] = [];
const coldMs: number[] = [];
const dragMs: number[] = [];
const flagDragMs: number[] = [];
const fullMs: number[] = [];
const quick: Agreement[] = [];
const warm: Agreement[] = [];
const rough: Agreement[] = [];
const again: Agreement[] = [];
let k = 0;
for (const file of FILES) {
  const document = readAtlasFile(
    readFileSync(new URL(`../../sample-course/${file}`, import.meta.url), 'utf8'),
    file,
  );
  for (const record of document.records.values()) {
    if (record.type !== 'hole') continue;
    const scene: Scene = buildScene(document, record.id);
    for (const flag of scene.flags) {
      let first = true;
      for (const ball of scene.balls) {
        k += 1;
        if (k % EVERY !== 0) continue;
        const ask = { ballId: ball.record.id, flagId: flag.record.id, shotsPerOption: SHOTS, seed: 1 };
        const cold = timed(() => planBall(scene, { ...ask, effort: 'coarse' }));
        if (first) coldMs.push(cold.ms);
        first = false;
        planBall(scene, { ...ask, shotsPerOption: 1 }); // fills the map and the prices of misses
        const full = timed(() => planBall(scene, ask));
        fullMs.push(full.ms);
        const coarse = timed(() => planBall(scene, { ...ask, effort: 'coarse', map: 'atHand' }));
        coarseMs.push(coarse.ms);
        const among = coarse.value.options.map(({ id }) => id);
        const hand = { ...ask, effort: 'rough', shotsPerOption: 48, among, scout: k } as const;
        const moved = (place: { readonly at: PlanePoint }): PlanePoint => ({
          eastM: place.at.eastM + 0.5,
          northM: place.at.northM - 0.4,
        });
        const ballMoved: Scene = { ...scene, balls: [{ ...ball, at: moved(ball) }] };
        dragMs.push(timed(() => planBall(ballMoved, { ...hand, map: 'atHand' })).ms);
        const flagMoved: Scene = { ...scene, flags: [{ ...flag, at: moved(flag) }] };
        flagDragMs.push(timed(() => planBall(flagMoved, { ...hand, map: 'light' })).ms);
        rough.push(agreement(planBall(scene, { ...ask, effort: 'rough', map: 'atHand' }), full.value));
        warm.push(agreement(coarse.value, full.value));
        const a = agreement(cold.value, full.value);
        quick.push(a);
        again.push(agreement(planBall(scene, { ...ask, seed: 2 }), full.value));
        if (!a.asGood) {
          console.log(
            `hole ${record.label} ball ${ball.record.label} flag ${flag.record.label}: coarse ${cold.value.chosenId}, ` +
              `full ${full.value.chosenId}, by its figures ${a.lostStrokes.toFixed(3)} strokes apart`,
          );
        }
      }
    }
  }
}

const line = (name: string, list: readonly Agreement[]): string =>
  `${name}: same option ${percent(list.map((a) => a.same))}, same or level ${percent(list.map((a) => a.asGood))}, ` +
  `same technique ${percent(list.map((a) => a.sameTechnique))}; ` +
  `gives away ${(list.reduce((sum, a) => sum + (Number.isNaN(a.lostStrokes) ? 0 : a.lostStrokes), 0) / list.length).toFixed(4)} strokes on average, ` +
  `${Math.max(...list.map((a) => a.lostStrokes).filter((lost) => !Number.isNaN(lost))).toFixed(3)} at most`;
console.log(`${String(quick.length)} scenarios`);
console.log(line('coarse against full, map at hand', warm));
console.log(line('coarse against full, coarse map', quick));
console.log(line('rough against full', rough));
console.log(line('full with another seed', again));
const times = (name: string, ms: readonly number[]): string =>
  `${name}: median ${median(ms).toFixed(1)} ms, worst ${worst(ms).toFixed(1)} ms`;
console.log(times('coarse, map at hand', coarseMs));
console.log(times('rough, ball moved by 0.6 m', dragMs));
console.log(times('rough, flag moved by 0.6 m', flagDragMs));
console.log(times('coarse, first of a flag', coldMs));
console.log(times('full, warm', fullMs));
console.log(`full takes ${(median(fullMs) / median(coarseMs)).toFixed(1)} times as long`);
