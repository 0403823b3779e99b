import { InputProblem } from '../../shared/words/inputProblem.ts';

/** A plain number as typed, within its limits. Throws InputProblem. */
export function numberTyped(typed: string, place: string, low: number, high: number): number {
  const value = Number(typed.replace(',', '.').replace('\u2212', '-'));
  if (typed === '' || !(value >= low && value <= high))
    throw new InputProblem(
      'bad-number',
      `"${typed.slice(0, 20)}" does not fit.`,
      place,
      `Give a number from ${String(low)} to ${String(high)}.`,
    );
  return value;
}
