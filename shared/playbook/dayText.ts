import { inUseOf } from '../atlas/document.ts';
import type { AtlasDocument } from '../atlas/records.ts';
import type { Conditions } from '../ball/shot.ts';
import * as format from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { firmnessWord } from '../words/firmnessWord.ts';

/** "Saturday: green speed 10 ft, rather firm, dry, wind 8 mph W": the day in words; flagstick and air where they are not as usual. */
export function dayText(document: AtlasDocument, conditions: Conditions, units: UnitsPreference): string {
  const { stimpFt, firmness, moisture, windMps, windFromDeg, flagstickIn } = conditions;
  const name = inUseOf(document, 'conditions')?.name ?? '';
  const wind = format.windWords(windMps, windFromDeg, units);
  const air = airWords(conditions, units);
  const parts = [
    `green speed ${format.withUnit(format.greenSpeed(stimpFt))}`,
    firmnessWord(firmness),
    moisture,
    wind === 'calm' ? wind : `wind ${wind}`,
    ...(air === null ? [] : [air]),
    ...(flagstickIn === true ? ['flagstick in'] : []),
  ];
  return `${name === '' ? '' : `${name}: `}${parts.join(', ')}`;
}

/** "air at 5280 ft and 68 °F"; null where nothing is said of it. */
function airWords({ heightAboveSeaM, temperatureC }: Conditions, units: UnitsPreference): string | null {
  const said = [
    ...(heightAboveSeaM === undefined ? [] : [format.heightAboveSea(heightAboveSeaM, units)]),
    ...(temperatureC === undefined ? [] : [format.temperature(temperatureC, units)]),
  ];
  return said.length === 0 ? null : `air at ${said.map(format.withUnit).join(' and ')}`;
}
