import type { EvaluatedOption } from './evaluateOption.ts';

export interface SafeWay {
  readonly options: readonly EvaluatedOption[];
  readonly safe: EvaluatedOption | null;
}

/** A share of trouble is worth this many strokes to someone who wants out of it first. */
const PRICE_OF_TROUBLE = 3;
/** A shot of its own must be this much safer, in strokes with trouble counted so, than any option. */
const SAFER_BY = 0.04;

/**
 * Whether a shot played away could be safer than every option, given that it will not be cheaper than the
 * cheapest.
 */
export function couldBeSafer(options: readonly EvaluatedOption[]): boolean {
  const safest = options.reduce((least, e) => Math.min(least, careful(e)), Infinity);
  const cheapest = options.reduce((least, e) => Math.min(least, e.option.strokes), Infinity);
  return !(safest - SAFER_BY <= cheapest);
}

/** Strokes with a share of trouble counted. */
export const withTrouble = (strokes: number, trouble: number): number => strokes + PRICE_OF_TROUBLE * trouble;

const careful = ({ option }: EvaluatedOption): number => withTrouble(option.strokes, option.chances.trouble);

/**
 * Which option is the safe way out. A shot played away counts as one of its own only where it is visibly safer
 * than every option; otherwise the safest option is the way out. Where it beats the option of the same
 * technique and club even in strokes, the search had missed that aim: the option takes it over (`asOption`), so
 * that playing away is never the cheapest by luck of a search.
 */
export function safeWay(
  options: readonly EvaluatedOption[],
  away: EvaluatedOption | null,
  asOption: (away: EvaluatedOption) => EvaluatedOption,
): SafeWay {
  let all = options;
  let own = away;
  if (away !== null) {
    const twin = options.findIndex(
      ({ option }) => option.technique === away.option.technique && option.clubId === away.option.clubId,
    );
    const cheapest = options.reduce((least, { option }) => Math.min(least, option.strokes), Infinity);
    const rival = twin < 0 ? cheapest : (options[twin]?.option.strokes ?? cheapest);
    if (away.option.strokes < rival) {
      const taken = asOption(away);
      all = twin < 0 ? [...options, taken] : options.with(twin, taken);
      own = null;
    }
  }
  let safest: EvaluatedOption | null = null;
  for (const option of all) if (safest === null || careful(option) < careful(safest)) safest = option;
  if (own === null) return { options: all, safe: safest };
  return safest !== null && careful(own) > careful(safest) - SAFER_BY
    ? { options: all, safe: safest }
    : { options: [...all, own], safe: own };
}
