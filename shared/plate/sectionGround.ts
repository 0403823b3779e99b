import { type SectionGround, sectionAlong } from '../terrain/section.ts';
import type { lineAxis } from './sectionLine.ts';

/**
 * The ground to draw. Where the flight is tall for the drawing, more ground before and behind fills the width that both
 * scales leave over.
 */
export function groundShown(
  ground: SectionGround,
  axis: ReturnType<typeof lineAxis>,
  [shortM, pastM]: readonly [number, number],
  topM: number,
  spareM: (spanM: number, lengthM: number) => number,
): {
  readonly line: ReturnType<typeof sectionAlong>;
  readonly profile: readonly number[];
  readonly lowM: number;
  readonly spanM: number;
  readonly nearM: number;
  readonly farM: number;
} {
  let [nearM, farM] = [shortM, pastM];
  for (let round = 0; ; round += 1) {
    const line = sectionAlong(ground, [axis.at(nearM), axis.at(farM)], 0.2);
    const profile = Array.from(line.heightsM);
    const lowM = Math.min(...profile);
    const spanM = Math.max(Math.max(...profile, topM) - lowM, 0.4);
    const spare = spareM(spanM, farM - nearM);
    if (spare <= 0.01 || round === 2) return { line, profile, lowM, spanM, nearM, farM };
    nearM -= spare * 0.35;
    farM += spare * 0.65;
  }
}
