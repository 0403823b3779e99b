import { UsageProblem } from './usageProblem.ts';

/** One of a few words given as an option's value; the first of them where it is left out. */
export function choice<const Word extends string>(
  text: string | undefined,
  name: string,
  words: readonly [Word, ...Word[]],
): Word {
  if (text === undefined) return words[0];
  const found = words.find((word) => word === text);
  if (found === undefined) throw new UsageProblem(`--${name} is "${text}": give ${words.join(' or ')}.`);
  return found;
}
