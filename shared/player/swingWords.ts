import type { Club } from '../atlas/records.ts';
import { clubheadSpeed, distance, withUnit } from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import type { Technique } from '../words/vocabulary.ts';
import { carriesSpeakFor } from './swingSize.ts';

interface Swing {
  readonly technique: Technique;
  readonly clubId: string;
  readonly size: 'small' | 'medium' | 'long';
  readonly clubheadMps: number;
  readonly carryM: number;
}

/** "Medium swing, clubhead 41 mph, between your small 14 yd and medium 22 yd"; a putt is a stroke. */
export function swingWords(swing: Swing, bag: readonly Club[], units: UnitsPreference): string {
  const { size, technique, clubheadMps } = swing;
  const words = `${size.charAt(0).toUpperCase()}${size.slice(1)} ${technique === 'putt' ? 'stroke' : 'swing'}`;
  const among = amongCarries(swing, bag, units);
  return `${words}, clubhead ${withUnit(clubheadSpeed(clubheadMps, units))}${among === null ? '' : `, ${among}`}`;
}

/** Where the carry lies among those measured of its club; null where none were, or they do not speak for the shot. */
export function amongCarries(
  { technique, clubId, carryM }: Pick<Swing, 'technique' | 'clubId' | 'carryM'>,
  bag: readonly Club[],
  units: UnitsPreference,
): string | null {
  const measured = bag.find(({ id }) => id === clubId)?.carriesM;
  if (measured === undefined || !carriesSpeakFor.includes(technique)) return null;
  const told = (lengthM: number): string => withUnit(distance(lengthM, units));
  const { smallM, mediumM, longM } = measured;
  const carries = [
    { size: 'small', lengthM: smallM },
    { size: 'medium', lengthM: mediumM },
    { size: 'long', lengthM: longM },
  ];
  const same = carries.find(({ lengthM }) => told(lengthM) === told(carryM));
  if (same !== undefined) return `your ${same.size} ${told(same.lengthM)}`;
  const above = carries.findIndex(({ lengthM }) => lengthM > carryM);
  const [less, more] = [carries[above - 1], carries[above]];
  if (more === undefined) return `over your long ${told(longM)}`;
  if (less === undefined) return `under your small ${told(smallM)}`;
  return `between your ${less.size} ${told(less.lengthM)} and ${more.size} ${told(more.lengthM)}`;
}
