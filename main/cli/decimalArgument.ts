import { UsageProblem } from './usageProblem.ts';

/** A number given as an option's value, within limits; null where it is left out. */
export function decimalNumber(
  text: string | undefined,
  name: string,
  least: number,
  most: number,
): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() === '' || !(value >= least) || value > most)
    throw new UsageProblem(`--${name} is "${text}": give a number from ${String(least)} to ${String(most)}.`);
  return value;
}
