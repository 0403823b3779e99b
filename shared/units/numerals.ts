/** Numbers as the page prints them: a true minus, halves as ½, and never a negative nothing. */

const MINUS = '\u2212';

/** Fixed decimals with a true minus: −0.04 to one decimal is 0.0. */
export function decimals(value: number, places: number): string {
  if (!Number.isFinite(value)) return '\u2013';
  const text = Math.abs(value).toFixed(places);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

export const whole = (value: number): string => decimals(value, 0);

/** To the nearest half: 6½, 13, ½, −1½. */
export function halves(value: number): string {
  if (!Number.isFinite(value)) return '\u2013';
  const count = Math.round(Math.abs(value) * 2);
  const full = Math.floor(count / 2);
  const text = count % 2 === 1 ? `${full === 0 ? '' : String(full)}½` : String(full);
  return value < 0 && count !== 0 ? MINUS + text : text;
}

/** With its sign even when positive: +0.09. Nothing has no sign. */
export function signed(value: number, places: number): string {
  const text = decimals(value, places);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}
