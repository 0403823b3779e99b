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

/** "Chip 46°", "Bump-and-run 8-iron", "Putt", "Play away 46°". */
export function optionName(option: Pick<PlanOption, 'technique' | 'clubName' | 'playAway'>): string {
  // "46° wedge" after a technique is said as "46°".
  const club = option.clubName.replace(/\s*wedge$/i, '');
  if (option.playAway) return option.technique === 'putt' ? 'Play away, putter' : `Play away ${club}`;
  return option.technique === 'putt' ? 'Putt' : `${names[option.technique]} ${club}`;
}
