import type { PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { pointInPolygon } from '../geometry/ring.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { flagPlace } from './flagPlace.ts';

/** A hole as a pin sheet tells it: paces from the front and from one side. */
export interface SheetLine {
  readonly onPaces: number;
  readonly sidePaces: number;
  readonly side: 'left' | 'right';
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?|\d*½)`;
const LINE = new RegExp(
  String.raw`^\s*${NUMBER}\s*(?:paces?)?\s*(?:on|from front|deep)?\s*[,;/\s]\s*(?:([lr])\s*)?${NUMBER}\s*(?:paces?)?\s*(?:from\s+)?(?:the\s+)?(left|right|l|r)?\s*$`,
  'i',
);

/** Reads "12 on, 5 from left", "12 5L", "12 / R 5". Throws InputProblem for anything else. */
export function parseSheetLine(typed: string, place: string): SheetLine {
  const [, on, before, aside, after] = LINE.exec(typed) ?? [];
  const side = (before ?? after ?? '').toLowerCase().charAt(0);
  if (on === undefined || aside === undefined || (side !== 'l' && side !== 'r')) {
    throw new InputProblem(
      'unreadable-sheet-line',
      `"${typed.slice(0, 40)}" cannot be read.`,
      place,
      'Type paces from the front and from a side, such as 12 on, 5 from left.',
    );
  }
  const number = (text: string): number => Number(text.replace(',', '.').replace('½', '.5'));
  return { onPaces: number(on), sidePaces: number(aside), side: side === 'l' ? 'left' : 'right' };
}

const ROUNDS = 60;
const CLOSE_M = 0.01;

/**
 * The point of a green that lies so far from its front and its side, seen along the line of play. Throws InputProblem where
 * the green has no such point.
 */
export function placeFromSheet(
  green: PlanePolygon,
  playBearingDeg: number,
  onM: number,
  fromSideM: number,
  side: SheetLine['side'],
  place: string,
): PlanePoint {
  const ring = green[0] ?? [];
  const a = (playBearingDeg * Math.PI) / 180;
  const [ue, un] = [Math.sin(a), Math.cos(a)];
  const middle = {
    eastM: ring.reduce((sum, p) => sum + p.eastM, 0) / Math.max(1, ring.length),
    northM: ring.reduce((sum, p) => sum + p.northM, 0) / Math.max(1, ring.length),
  };
  let at: PlanePoint = middle;
  let held = middle;
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = flagPlace(green, at, playBearingDeg);
    if (now === null || !pointInPolygon(at, green)) {
      // Off the green: halfway back to where it last was on it.
      at = { eastM: (at.eastM + held.eastM) / 2, northM: (at.northM + held.northM) / 2 };
      continue;
    }
    held = at;
    const along = onM - now.onM;
    const across = side === 'left' ? fromSideM - now.fromLeftM : now.fromRightM - fromSideM;
    if (Math.abs(along) < CLOSE_M && Math.abs(across) < CLOSE_M) return at;
    at = {
      eastM: at.eastM + 0.7 * (ue * along + un * across),
      northM: at.northM + 0.7 * (un * along - ue * across),
    };
  }
  throw new InputProblem(
    'no-such-place',
    'the green has no place so far from its front and its side.',
    place,
    'Check the numbers, or drag the flag.',
  );
}
