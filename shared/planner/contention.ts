import type { PlayerRecord } from '../atlas/records.ts';
import type { FinalSample } from './finalSample.ts';
import { withTrouble } from './safeWay.ts';

/**
 * After so many shots an option is not simulated further where it is behind by more than luck reaches, in strokes: in
 * strokes alone, and with trouble counted. Differences of options that share their shots scatter by 0.029 strokes after
 * 128 and by 0.014 after 256 (measured on the sample course).
 */
export const partsOfSample = [
  { shots: 128, beyondLuck: 0.1, beyondLuckOfTrouble: 0.2 },
  { shots: 256, beyondLuck: 0.05, beyondLuckOfTrouble: 0.1 },
] as const;

/** Strokes that the choice may give away to the fewest: the margin, and once more where the best is still being learned. */
const reachOf = ({ simplicityMarginStrokes, repertoire }: PlayerRecord): number =>
  (Object.values(repertoire).includes('learning') ? 2 : 1) * simplicityMarginStrokes;

/**
 * Whether an option, by a part of its sample, can be neither the choice nor the safe way out beside those that were shot so
 * far (`contenders` may grow): the rest of its shots would change nothing.
 */
export function outOfContention(
  contenders: readonly Pick<FinalSample, 'shots' | 'strokes' | 'counts'>[],
  player: PlayerRecord,
): (part: (typeof partsOfSample)[number], strokes: number, trouble: number) => boolean {
  const reach = reachOf(player);
  return ({ beyondLuck, beyondLuckOfTrouble }, strokes, trouble) => {
    let cheapest = Infinity;
    let safest = Infinity;
    for (const sample of contenders) {
      if (sample.shots === 0) continue;
      const of = sample.strokes();
      cheapest = Math.min(cheapest, of);
      safest = Math.min(safest, withTrouble(of, sample.counts.trouble / sample.shots));
    }
    return (
      strokes > cheapest + reach + beyondLuck && withTrouble(strokes, trouble) > safest + beyondLuckOfTrouble
    );
  };
}
