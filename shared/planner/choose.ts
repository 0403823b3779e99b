import type { PlayerRecord } from '../atlas/records.ts';
import { techniques } from '../words/vocabulary.ts';
import type { EvaluatedOption } from './evaluateOption.ts';

export interface Standing {
  readonly evaluated: EvaluatedOption;
  readonly costStrokes: number;
  readonly level: boolean;
}

export interface Choice {
  /** Cheapest first. */
  readonly standings: readonly Standing[];
  readonly chosen: Standing;
  readonly safe: Standing | null;
}

/**
 * Clubs of one technique as close as this are taken as one: neither the model nor the survey tells them apart, and nobody
 * changes clubs for a fiftieth of a stroke.
 */
export const SAME_STROKES = 0.02;

/**
 * The choice: of all within the player's margin of the best, the simplest technique. Within a technique the fewest
 * strokes, and of those within `SAME_STROKES` of them (and the margin) the most loft: it stops soonest, so the least of
 * the shot hangs on the run. A technique still being learned must save the margin before it counts. Level is said
 * against the best (`isLevel`). A shot played away is chosen only where nothing else is within the margin.
 */
export function choose(
  evaluated: readonly EvaluatedOption[],
  safe: EvaluatedOption | null,
  player: PlayerRecord,
): Choice {
  const margin = player.simplicityMarginStrokes;
  const priced = (e: EvaluatedOption): number =>
    e.option.strokes + (player.repertoire[e.option.technique] === 'learning' ? margin : 0);
  const ordered = [...evaluated].sort(
    (a, b) => a.option.strokes - b.option.strokes || (a.option.id < b.option.id ? -1 : 1),
  );
  const best = ordered[0];
  if (best === undefined) throw new Error('choose needs at least one option');
  const standings = ordered.map((e) => ({
    evaluated: e,
    costStrokes: e.option.strokes - best.option.strokes,
    level: e === best || isLevel(best, e),
  }));
  const rank = (e: EvaluatedOption): number =>
    e.option.playAway ? techniques.length : techniques.indexOf(e.option.technique);
  const cheapest = Math.min(...ordered.map(priced));
  const within = standings.filter((s) => priced(s.evaluated) <= cheapest + margin + 1e-12);
  const simplest = Math.min(...within.map((s) => rank(s.evaluated)));
  const simple = within.filter((s) => rank(s.evaluated) === simplest);
  const fewest = Math.min(...simple.map((s) => priced(s.evaluated)));
  const chosen = simple
    .filter((s) => priced(s.evaluated) <= fewest + Math.min(SAME_STROKES, margin) + 1e-12)
    .reduce((held, next) => (loftOf(next) > loftOf(held) ? next : held));
  return { standings, chosen, safe: standings.find((s) => s.evaluated === safe) ?? null };
}

const loftOf = ({ evaluated }: Standing): number => evaluated.candidate.club.loftDeg;

/** The mean of the paired difference over the shots both have is within its standard error: they cannot be told apart. */
export function isLevel(a: EvaluatedOption, b: EvaluatedOption): boolean {
  const n = Math.min(a.perShot.length, b.perShot.length);
  let mean = 0;
  for (let i = 0; i < n; i += 1) mean += ((b.perShot[i] ?? 0) - (a.perShot[i] ?? 0)) / n;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const d = (b.perShot[i] ?? 0) - (a.perShot[i] ?? 0) - mean;
    squares += d * d;
  }
  return Math.abs(mean) <= Math.sqrt(squares) / n;
}
