import type { Technique } from '../words/vocabulary.ts';
import type { PlanOption } from './plan.ts';

const names: Readonly<Record<Technique, string>> = {
  putt: 'Putt',
  bumpAndRun: 'Bump-and-run',
  chip: 'Chip',
  pitch: 'Pitch',
  splash: 'Splash',
  explosion: 'Explosion',
  highSoft: 'High soft',
};

/** What the trade calls a technique. */
export const techniqueName = (technique: Technique): string => names[technique];

/** The same within a sentence. */
export const shotName = (technique: Technique): string =>
  technique === 'highSoft' ? 'high soft shot' : names[technique].toLowerCase();

type Named = Pick<PlanOption, 'technique' | 'clubName' | 'playAway'>;

/** "46° wedge" after a technique is said as "46°"; a sand wedge keeps its name. */
export const clubAfterShot = (clubName: string): string => clubName.replace(/^(\d.*?)\s*wedge$/i, '$1');

/** "Chip 46°", "Chip sand wedge", "Bump-and-run 8-iron", "Putt", "Play away 46°". */
export function optionName({ technique, clubName, playAway }: Named): string {
  const club = clubAfterShot(clubName);
  if (playAway) return technique === 'putt' ? 'Play away, putter' : `Play away ${club}`;
  return technique === 'putt' ? 'Putt' : `${names[technique]} ${club}`;
}

/** Wedges by the letters stamped on them, and what else is long, for a narrow column. */
const shortClubs: readonly (readonly [RegExp, string])[] = [
  [/\bpitching wedge\b/i, 'PW'],
  [/\bgap wedge\b/i, 'GW'],
  [/\bsand wedge\b/i, 'SW'],
  [/\blob wedge\b/i, 'LW'],
  [/\bhybrid\b/i, 'hyb.'],
];

/** "Bump 8-iron", "Chip SW", "Away 46°". */
export function shortOptionName(option: Named): string {
  const words = shortClubs.reduce((name, [long, short]) => name.replace(long, short), optionName(option));
  return words.replace('Bump-and-run', 'Bump').replace('Play away, ', 'Away ').replace('Play away', 'Away');
}
