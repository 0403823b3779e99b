import type { PlanOption } from '../planner/plan.ts';
import { distance, flightTop, rise, withUnit } from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import type { LabelRequest } from './labels.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { XY } from './view.ts';

interface SectionPlaces {
  /** "land 2 paces on"; empty for none. */
  readonly landText: string;
  /** "runs out" or "rolls". */
  readonly runText: string;
  readonly landing: XY | null;
  readonly apex: XY | null;
  /** Where the run begins and ends. */
  readonly from: XY;
  readonly end: XY;
  /** What each shot beside it is called, where it lands; empty for none. */
  readonly others: readonly { readonly text: string; readonly at: XY }[];
}

/** What a section says beside its lines: the landing, the top of the flight, the run. */
export function sectionWords(
  { apexM, runM, runRiseM }: PlanOption,
  style: PlateStyle,
  units: UnitsPreference,
  { landText, runText, landing, apex, from, end, others }: SectionPlaces,
): readonly LabelRequest[] {
  const k = style.symbolScale;
  const common = {
    size: textSize(style, 14.5),
    face: 'sans' as const,
    weight: 400 as const,
    ink: style.inks.ink,
    leader: false,
  };
  const words: LabelRequest[] = others
    .filter(({ text }) => text !== '')
    .map(({ text, at }) => ({
      ...common,
      text,
      at,
      weight: 700,
      ink: style.inks.ink2,
      away: 12 * k,
      leader: true,
      priority: 8.5,
    }));
  if (landing !== null && landText !== '')
    words.push({
      ...common,
      text: landText,
      at: landing,
      weight: 700,
      ink: style.inks.propose,
      away: 16 * k,
      leader: true,
      priority: 9,
    });
  if (apex !== null && apexM > 0.05)
    words.push({
      ...common,
      text: `top of flight ${withUnit(flightTop(apexM, units))}`,
      at: apex,
      away: 8 * k,
      priority: 8,
    });
  if (runM > 0.2)
    words.push({
      ...common,
      text: `${runText} ${withUnit(distance(runM, units))}, ${runWords(runRiseM, units)}`,
      at: [(from[0] + end[0]) / 2, Math.min(from[1], end[1])],
      away: 9 * k,
      priority: 7,
    });
  return words;
}

function runWords(riseM: number, units: UnitsPreference): string {
  const words = rise(riseM, units);
  return words === 'level' ? 'level' : words.replace('rises', 'rising').replace('falls', 'falling');
}
