import { length2 } from '../numeric/elementary.ts';
import type { Choice, Standing } from './choose.ts';
import type { Plan } from './plan.ts';
import { missesTarget } from './searchOptions.ts';
import type { Situation } from './situation.ts';

/** A start line farther off the line to the flag than this needs a reason, degrees. */
const WIDE_DEG = 25;

/**
 * The choice without the shots that go somewhere else: started far off the line, and not brought back to the flag by the
 * ground. One that is about as good as the best stays, and so does the safe way out.
 */
export function towardsFlag(
  situation: Situation,
  choice: Choice,
): { readonly choice: Choice; readonly leftOut: Plan['leftOut'] } {
  const margin = situation.scene.player.simplicityMarginStrokes;
  const stays = (standing: Standing): boolean =>
    standing === choice.chosen ||
    standing === choice.safe ||
    standing.costStrokes <= margin ||
    standing.evaluated.option.playAway ||
    !goesElsewhere(situation, standing);
  return {
    choice: { ...choice, standings: choice.standings.filter(stays) },
    leftOut: choice.standings
      .filter((standing) => !stays(standing))
      .map(({ evaluated: { option } }) => ({
        id: option.id,
        reason: {
          kind: 'aimedAway',
          values: {
            technique: option.technique,
            clubName: option.technique === 'putt' ? '' : option.clubName,
          },
        },
      })),
  };
}

function goesElsewhere(
  { flag, bearing, distanceM }: Situation,
  { evaluated: { option } }: Standing,
): boolean {
  const turn = option.aimBearingDeg - (bearing * 180) / Math.PI;
  if (Math.abs(turn - 360 * Math.round(turn / 360)) <= WIDE_DEG) return false;
  const { pointsM } = option.path;
  const east = (pointsM[pointsM.length - 3] ?? NaN) - flag.eastM;
  const north = (pointsM[pointsM.length - 2] ?? NaN) - flag.northM;
  return missesTarget(length2(east, north), distanceM);
}
