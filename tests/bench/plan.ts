/**
 * Time of one plan, of the map of a green, and of one shot. The peer, measured in the same run, is the plainest
 * way to answer the same question: every option simulated on a grid of sizes and directions with as many shots
 * each, no solving, no search. Run with `npx tsx tests/bench/asShipped.ts plan`.
 */
import { performance } from 'node:perf_hooks';
import { flagToolsSteps } from '../../shared/planner/flagTools.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene } from '../../shared/planner/scene.ts';
import { standardShots } from '../../shared/planner/standardShots.ts';
import { meanStrokes } from '../../shared/planner/trial.ts';
import { availability } from '../../shared/player/availability.ts';
import { USUAL_SHOTS } from '../../shared/protocol/planning.ts';
import { complexDocument } from '../unit/planner/complex.ts';

const SHOTS = USUAL_SHOTS;
const ROUNDS = 21;
/** So many shots a plan are asked of it too. */
const MANY = 10_000;
const GRID_SIZES = 15;
const GRID_LINES = 7;
const GRID_SHOTS = 64;

const median = (values: number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;

const document = complexDocument({
  heightM: (e, n) => 0.02 * n + 0.00025 * e * e,
  balls: [
    { id: 'tight', at: [-4, -18] },
    { id: 'over sand', at: [21, -9] },
    { id: 'rough', at: [-22, 2], cover: 'lightRough' },
  ],
});
let start = performance.now();
const scene = buildScene(document, 'h1');
console.log(`scene: ${(performance.now() - start).toFixed(0)} ms`);
const flag = scene.flags[0]?.at;
if (flag === undefined) throw new Error('the scene has a flag');
start = performance.now();
const steps = flagToolsSteps(scene, flag);
let step = steps.next();
while (step.done !== true) step = steps.next();
const tools = step.value;
console.log(`map of the green, cold: ${(performance.now() - start).toFixed(0)} ms`);

let shots = 0;
for (const simulator of [tools.simulators.holed, tools.simulators.covered]) {
  const run = simulator.run.bind(simulator);
  simulator.run = (...given) => {
    shots += 1;
    return run(...given);
  };
}

for (const ball of scene.balls) {
  const measured = (shotsPerOption: number): { readonly time: number; readonly count: number } => {
    const times: number[] = [];
    const counts: number[] = [];
    for (let seed = 0; seed < ROUNDS; seed += 1) {
      shots = 0;
      start = performance.now();
      planBall(scene, { ballId: ball.record.id, flagId: 'A', shotsPerOption, seed });
      times.push(performance.now() - start);
      counts.push(shots);
    }
    return { time: median(times), count: median(counts) };
  };
  const usual = measured(SHOTS);
  let many = usual;
  let manyOf = SHOTS;
  while (many.count < MANY) {
    manyOf += SHOTS / 2;
    many = measured(manyOf);
  }
  const cover = ball.record.coverOverride ?? scene.ground.coverAt(ball.at);
  const distance = Math.hypot(ball.at.eastM - flag.eastM, ball.at.northM - flag.northM);
  const bearing = Math.atan2(flag.eastM - ball.at.eastM, flag.northM - ball.at.northM);
  const { candidates } = availability(scene.player, cover, 'clean', distance);
  const rows = standardShots(GRID_SHOTS, 1);
  start = performance.now();
  for (const candidate of candidates) {
    const shooter = tools.shooterFrom(candidate, ball.at, cover, 'clean', bearing);
    for (let i = 0; i < GRID_SIZES; i += 1) {
      for (let k = 0; k < GRID_LINES; k += 1) {
        const aim = {
          clubheadMps: shooter.guess(distance).clubheadMps * (0.5 + 0.1 * i),
          bearing: bearing + 0.04 * (k - (GRID_LINES - 1) / 2),
        };
        meanStrokes(shooter, tools.field, aim, rows, GRID_SHOTS);
      }
    }
  }
  const peer = performance.now() - start;
  const told = ({ time, count }: typeof usual): string =>
    `median ${time.toFixed(0)} ms a plan, ${count.toFixed(0)} shots, ${((1000 * time) / count).toFixed(1)} µs a shot`;
  console.log(
    `${ball.record.id}: ${told(usual)}; plain grid ${peer.toFixed(0)} ms, ${(peer / usual.time).toFixed(1)} times as long; ` +
      `with ${String(manyOf)} shots an option ${told(many)}`,
  );
}
