import { length2 } from '../numeric/elementary.ts';
import { coverCode, covers, techniques } from '../words/vocabulary.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { flagToolsSteps } from './flagTools.ts';
import { priceFrom } from './priceFrom.ts';
import type { Scene } from './scene.ts';

/** Where to miss: strokes to hole out and the simple technique from every cell around a flag. */
export interface SurroundsMap {
  readonly flagId: string;
  /**
   * South-west corner and side of the cells, metres; values belong to the middles, row by row from the south-
   * west.
   */
  readonly westM: number;
  readonly southM: number;
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  /** NaN where a ball is out of play. */
  readonly strokes: Float32Array;
  /** Index into `techniques`, DEPENDS_ON_FLAG or NOTHING_PLAIN. */
  readonly simple: Uint8Array;
  /** In a map over several flags what each of them asks for, on the same cells; empty in the map of one flag. */
  readonly perFlag: readonly { readonly flagId: string; readonly simple: Uint8Array }[];
}

/** Nothing plain can be played there. */
export const NOTHING_PLAIN = 255;
/** In a map over several flags: not all of them ask for the same. */
export const DEPENDS_ON_FLAG = 254;
/** In what one flag of several asks for: its own map ends before. */
export const NOT_REACHED = 253;

const SIDE_M = 60;
const CELL_M = 1;

/**
 * Prices every square metre of 60 x 60 m about a flag with a few plain options each (see `priceFrom`). Yields
 * the share done after every row. Throws InputProblem for an unknown flag.
 */
export function* surroundsMapSteps(scene: Scene, flagId: string): Generator<number, SurroundsMap> {
  const flag = scene.flags.find((f) => f.record.id === flagId);
  if (flag === undefined) {
    throw new InputProblem(
      'unknown-flag',
      `there is no flag “${flagId}”.`,
      `Hole ${scene.hole.label}`,
      'Choose one of its flags.',
    );
  }
  const steps = flagToolsSteps(scene, flag.at);
  let step = steps.next();
  while (step.done !== true) {
    yield 0.1 * step.value;
    step = steps.next();
  }
  const tools = step.value;
  const { map } = tools;
  const cells = Math.round(SIDE_M / CELL_M);
  // On whole metres, so that the cells of every flag are the same ground.
  const westM = Math.round(flag.at.eastM - SIDE_M / 2);
  const southM = Math.round(flag.at.northM - SIDE_M / 2);
  const strokes = new Float32Array(cells * cells).fill(NaN);
  const simple = new Uint8Array(cells * cells).fill(NOTHING_PLAIN);
  const here = new Float64Array(4);
  const green = coverCode('green');
  const penalty = coverCode('penaltyArea');
  const outOfBounds = coverCode('outOfBounds');
  for (let row = 0; row < cells; row += 1) {
    for (let column = 0; column < cells; column += 1) {
      const from = { eastM: westM + (column + 0.5) * CELL_M, northM: southM + (row + 0.5) * CELL_M };
      scene.ground.sample(Float64Array.of(from.eastM, from.northM), here);
      const code = here[3] ?? 0;
      const k = row * cells + column;
      if (code === penalty || code === outOfBounds) continue;
      const apart = length2(from.eastM - flag.at.eastM, from.northM - flag.at.northM);
      if (code === green || apart < CELL_M) {
        strokes[k] = map.strokesAt(from.eastM, from.northM);
        simple[k] = techniques.indexOf('putt');
        continue;
      }
      const price = priceFrom(scene.player, map, tools.shooterFrom, from, covers[code] ?? 'fairway');
      strokes[k] = price.strokes;
      if (price.technique !== null) simple[k] = techniques.indexOf(price.technique);
    }
    yield 0.1 + (0.9 * (row + 1)) / cells;
  }
  return { flagId, westM, southM, cellM: CELL_M, columns: cells, rows: cells, strokes, simple, perFlag: [] };
}
