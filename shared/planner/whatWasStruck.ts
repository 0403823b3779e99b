import { MET_BANK, MET_LIP, NOTHING_IN_THE_WAY } from '../ball/slots.ts';
import { length2 } from '../numeric/elementary.ts';
import type { SurveyedGround } from '../terrain/surveyedGround.ts';

/** Things that stop a ball on its way. */
export type Struck = 'lip' | 'bank' | 'tree' | 'wall';

/**
 * Names what stood in the way of a shot (`slots.obstructed`), or null for nothing. A bank that the shot as meant flies
 * into as well is played into and in nobody's way.
 * @param metAsMeant what the strike as meant meets
 */
export function whatWasStruck(
  { obstacles }: Pick<SurveyedGround, 'obstacles'>,
  met: number,
  metAsMeant: number,
  landEastM: number,
  landNorthM: number,
): Struck | null {
  if (met === NOTHING_IN_THE_WAY || (met === MET_BANK && metAsMeant === MET_BANK)) return null;
  if (met === MET_LIP) return 'lip';
  if (met === MET_BANK) return 'bank';
  // It came down beside what it met.
  let nearest: Struck = 'tree';
  let least = Infinity;
  for (const { kind, ringM } of obstacles) {
    let east = 0;
    let north = 0;
    const corners = ringM.length / 2;
    for (let i = 0; i < corners; i += 1) {
      east += (ringM[2 * i] ?? 0) / corners;
      north += (ringM[2 * i + 1] ?? 0) / corners;
    }
    let reach = 0;
    for (let i = 0; i < corners; i += 1)
      reach = Math.max(reach, length2((ringM[2 * i] ?? 0) - east, (ringM[2 * i + 1] ?? 0) - north));
    const beyond = length2(landEastM - east, landNorthM - north) - reach;
    if (beyond < least) {
      least = beyond;
      nearest = kind;
    }
  }
  return nearest;
}
