import { UsageProblem } from './usageProblem.ts';

/** A whole number given as an option's value, within limits. */
export function wholeNumber(
  text: string | undefined,
  name: string,
  usual: number,
  least: number,
  most: number,
): number {
  if (text === undefined) return usual;
  const value = Number(text);
  if (text.trim() === '' || !Number.isInteger(value) || value < least || value > most)
    throw new UsageProblem(`--${name} is "${text}": give a whole number from ${least} to ${most}.`);
  return value;
}
