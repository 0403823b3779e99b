/**
 * A generated course: so many holes, each with 30 balls about its green and 3 flags, all planned by as many
 * workers as there are cores. Says the time, the ratio of the time for all holes to that for a third of them, which
 * is 3 where cost grows with the number of scenarios, and the memory: resident, at its peak, of the one process that
 * holds the main thread and the workers, beside what it was before the first worker. The ground is invented by a seeded
 * generator. Run with `npx tsx tests/bench/asShipped.ts course [holes] [workers] [shots]`.
 */
import { performance } from 'node:perf_hooks';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { nextTask } from '../../main/cli/nextTask.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene, type Scene } from '../../shared/planner/scene.ts';
import { generator } from '../../shared/random/generator.ts';
import { USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { complexDocument, type ComplexSpec } from '../unit/planner/complex.ts';

const BALLS = 30;
const FLAGS = 3;

/** One invented hole: a tilted, hollowed green with a bunker, flags on it and balls 4 to 30 m from its edge. */
function inventedHole(number: number): ComplexSpec {
  const random = generator(1000 + number);
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const tiltEast = between(-0.02, 0.02);
  const tiltNorth = between(0.005, 0.03);
  const hollow = between(-0.0004, 0.0005);
  const spot = (least: number, most: number): readonly [number, number] => {
    const angle = between(0, 2 * Math.PI);
    const radius = between(least, most);
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  };
  return {
    heightM: (east, north) => tiltEast * east + tiltNorth * north + hollow * (east * east + north * north),
    surround: number % 2 === 0 ? 'fairway' : 'lightRough',
    stimpFt: between(9, 11.5),
    flags: Array.from({ length: FLAGS }, (_, i) => ({ id: `F${String(i)}`, at: spot(2, 8) })),
    balls: Array.from({ length: BALLS }, (_, i) => ({ id: `b${String(i)}`, at: spot(14, 40) })),
  };
}

const sceneOf = (number: number): Scene => buildScene(complexDocument(inventedHole(number)), 'h1');

/** One flag of a hole, as the command line hands out work. */
interface Task {
  readonly holeId: string;
  readonly flag: number;
}

if (isMainThread) {
  const holes = Number(process.argv[2] ?? 18);
  const workers = Number(process.argv[3] ?? 2);
  const shots = Number(process.argv[4] ?? USUAL_SHOTS);
  const run = async (count: number): Promise<{ readonly seconds: number; readonly cpuSeconds: number }> => {
    const start = performance.now();
    const cpu = process.cpuUsage();
    let waiting: readonly Task[] = Array.from({ length: count * FLAGS }, (_, k) => ({
      holeId: String(Math.floor(k / FLAGS)),
      flag: k % FLAGS,
    }));
    const at = new Map<Worker, string>();
    const planned = await Promise.all(
      Array.from({ length: workers }, () => {
        const worker = new Worker(new URL(import.meta.url), {
          workerData: { shots },
          // A plan leaves little behind: a small heap, cleared more often, does as well.
          resourceLimits: { maxYoungGenerationSizeMb: 8, maxOldGenerationSizeMb: 96 },
        });
        return new Promise<number>((resolve, reject) => {
          let done = 0;
          const next = (): void => {
            const mine = at.get(worker) ?? null;
            at.delete(worker);
            const task = nextTask(waiting, mine, new Set(at.values()));
            if (task === undefined) {
              void worker.terminate();
              resolve(done);
              return;
            }
            waiting = waiting.filter((one) => one !== task);
            at.set(worker, task.holeId);
            worker.postMessage(task);
          };
          worker.on('message', (plans: number) => {
            done += plans;
            next();
          });
          worker.once('error', reject);
          next();
        });
      }),
    );
    const used = process.cpuUsage(cpu);
    const seconds = (performance.now() - start) / 1000;
    const cpuSeconds = (used.user + used.system) / 1e6;
    console.log(
      `${String(count)} holes, ${String(planned.reduce((a, b) => a + b, 0))} plans of ${String(shots)} shots an option on ` +
        `${String(workers)} workers: ${seconds.toFixed(1)} s (${cpuSeconds.toFixed(1)} s of processor time)`,
    );
    return { seconds, cpuSeconds };
  };
  const megabytes = (): string => (process.resourceUsage().maxRSS / 1024).toFixed(0);
  const before = megabytes();
  const third = await run(Math.max(1, Math.round(holes / 3)));
  const whole = await run(holes);
  console.log(
    `ratio ${(whole.seconds / third.seconds).toFixed(2)} (by processor time ${(whole.cpuSeconds / third.cpuSeconds).toFixed(2)}); ` +
      `peak memory ${megabytes()} MB, ${before} MB of it before the first worker`,
  );
} else {
  const { shots } = workerData as { readonly shots: number };
  let here: { readonly holeId: string; readonly scene: Scene } | null = null;
  parentPort?.on('message', ({ holeId, flag }: Task) => {
    if (here?.holeId !== holeId) here = { holeId, scene: sceneOf(Number(holeId)) };
    const { scene } = here;
    const flagId = scene.flags[flag]?.record.id ?? '';
    for (const { record } of scene.balls)
      planBall(scene, { ballId: record.id, flagId, shotsPerOption: shots, seed: 1 });
    parentPort?.postMessage(scene.balls.length);
  });
}
