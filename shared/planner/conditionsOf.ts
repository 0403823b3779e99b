import type { ConditionsRecord } from '../atlas/records.ts';
import type { Conditions } from '../ball/shot.ts';

/** What a ball feels of a day. What the day does not say is left out, so that days that play alike are equal. */
export function conditionsOf(day: ConditionsRecord): Conditions {
  const { stimpFt, firmness, moisture, windMps, windFromDeg, flagstickIn, heightAboveSeaM, temperatureC } =
    day;
  return {
    stimpFt,
    firmness,
    moisture,
    windMps,
    windFromDeg,
    ...(flagstickIn === true && { flagstickIn }),
    ...(heightAboveSeaM !== undefined && { heightAboveSeaM }),
    ...(temperatureC !== undefined && { temperatureC }),
  };
}
