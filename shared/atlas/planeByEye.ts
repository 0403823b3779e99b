import { InputProblem } from '../words/inputProblem.ts';
import { parseSlopePct } from '../units/parse.ts';

/** Ways a plane is spoken of, and the bearing it falls in as seen by somebody playing in, clockwise from the line of play. */
const falls: readonly (readonly [RegExp, number])[] = [
  [/\bback (left|l) to front (right|r)\b|\bback left\b.*\bfront right\b/i, 135],
  [/\bback (right|r) to front (left|l)\b|\bback right\b.*\bfront left\b/i, 225],
  [/\bfront left to back right\b/i, 45],
  [/\bfront right to back left\b/i, 315],
  [/\bback to front\b/i, 180],
  [/\bfront to back\b/i, 0],
  [/\bleft to right\b/i, 90],
  [/\bright to left\b/i, 270],
];

/** One standard deviation of a slope judged by eye: half of it, but no better than 1 % (common practice). */
export const eyeAccuracyPct = (slopePct: number): number => Math.max(1, Math.abs(slopePct) / 2);

/**
 * A plane as people say it: "2 % back to front", "1 deg left to right", "level". Gives its slope and the true bearing it
 * falls in, for a line of play on `playBearingDeg`.
 *
 * @throws InputProblem where no slope or direction can be read
 */
export function parsePlaneByEye(
  typed: string,
  playBearingDeg: number,
  place: string,
): { readonly slopePct: number; readonly downhillBearingDeg: number; readonly accuracyPct: number } {
  const turned = (deg: number): number => (((playBearingDeg + deg) % 360) + 360) % 360;
  if (/^\s*(level|flat)\s*$/i.test(typed))
    return { slopePct: 0, downhillBearingDeg: turned(180), accuracyPct: eyeAccuracyPct(0) };
  const amount = /^\s*(.*?)\s*(?=back|front|left|right|$)/i.exec(typed)?.[1] ?? '';
  const fall = falls.find(([pattern]) => pattern.test(typed));
  if (amount === '' || fall === undefined)
    throw new InputProblem(
      'unreadable-plane',
      `"${typed.slice(0, 40)}" cannot be read.`,
      place,
      'Type how steep and from where to where, such as 2 % back to front.',
    );
  const slopePct = parseSlopePct(amount.replace(/\b(from|falls?|falling)\b/gi, '').trim(), place);
  const positive = slopePct >= 0;
  return {
    slopePct: Math.abs(slopePct),
    downhillBearingDeg: turned(fall[1] + (positive ? 0 : 180)),
    accuracyPct: eyeAccuracyPct(slopePct),
  };
}
