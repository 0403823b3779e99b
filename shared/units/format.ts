import {
  fahrenheitFromCelsius,
  feetFromMetres,
  inchesFromMetres,
  METRES_PER_FOOT,
  metresFromFeet,
  mphFromMps,
  pacesFromMetres,
  yardsFromMetres,
} from './conversions.ts';
import { decimals, halves, signed, whole } from './numerals.ts';
import type { UnitsPreference } from './preference.ts';

/** A number ready to print, and its unit for the heading or to follow it. */
export interface Quantity {
  readonly text: string;
  readonly unit: string;
}

/** Between a number and its unit: a space at which no line is broken. */
const GAP = '\u00a0';

export const withUnit = ({ text, unit }: Quantity): string =>
  unit === '' ? text : unit === '°' ? `${text}°` : text + GAP + unit;

/** "26 %", from whole percents. */
export const percent = (value: number): string => whole(value) + GAP + '%';

/** Carry, run and distances on the ground: half yards, or half metres as decimals. */
export function distance(lengthM: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: halves(yardsFromMetres(lengthM)), unit: 'yd' }
    : { text: decimals(Math.round(lengthM * 2) / 2, 1), unit: 'm' };
}

/** How far an approach is played: whole yards or metres. */
export function approachLength(lengthM: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: whole(yardsFromMetres(lengthM)), unit: 'yd' }
    : { text: whole(lengthM), unit: 'm' };
}

/** Half paces of this person. */
export function paces(lengthM: number, units: UnitsPreference): Quantity {
  return { text: halves(pacesFromMetres(lengthM, units.paceM)), unit: 'paces' };
}

/** Where to land, from the near edge of the green: "2 on", "1½ short", "edge". */
export function landing(onM: number, units: UnitsPreference): Quantity {
  const { text } = paces(Math.abs(onM), units);
  return { text: text === '0' ? 'edge' : `${text} ${onM < 0 ? 'short' : 'on'}`, unit: 'paces' };
}

/** Where to aim, sideways from the flag: "3 R", "½ L", "at it"; half feet or decimetres. */
export function aim(rightM: number, units: UnitsPreference): Quantity {
  const size = Math.abs(rightM);
  const text = units.system === 'yards' ? halves(feetFromMetres(size)) : decimals(size, 1);
  const nothing = Number(text) === 0;
  return {
    text: nothing ? 'at it' : `${text} ${rightM < 0 ? 'L' : 'R'}`,
    unit: units.system === 'yards' ? 'ft' : 'm',
  };
}

/** What is left to the hole: half feet under 10, whole feet from there; decimetres, then half metres from 3 m. */
export function leave(lengthM: number, units: UnitsPreference): Quantity {
  if (units.system === 'metres')
    return { text: lengthM < 3 ? decimals(lengthM, 1) : decimals(Math.round(lengthM * 2) / 2, 1), unit: 'm' };
  const feet = feetFromMetres(lengthM);
  return { text: feet < 9.75 ? halves(feet) : whole(feet), unit: 'ft' };
}

/** A size a person would measure: "3 ft 6 in", "8 in", or metres to the centimetre. */
export function feetAndInches(lengthM: number, units: UnitsPreference): string {
  if (units.system === 'metres') return decimals(lengthM, 2) + GAP + 'm';
  const total = Math.round(inchesFromMetres(Math.abs(lengthM)));
  const feet = Math.floor(total / 12);
  const inches = total % 12;
  const sign = lengthM < 0 && total > 0 ? '\u2212' : '';
  const parts = [...(feet === 0 ? [] : [feet, 'ft']), ...(feet !== 0 && inches === 0 ? [] : [inches, 'in'])];
  return sign + parts.join(GAP);
}

/** The top of a flight, no finer than strikes repeat it: half feet (whole inches under 1), or decimetres. */
export function flightTop(heightM: number, units: UnitsPreference): Quantity {
  if (units.system === 'metres') return { text: decimals(heightM, 1), unit: 'm' };
  return heightM < METRES_PER_FOOT
    ? { text: whole(inchesFromMetres(heightM)), unit: 'in' }
    : { text: halves(feetFromMetres(heightM)), unit: 'ft' };
}

/** A small height or doubt: whole inches (tenths under 1), or centimetres. */
export function smallHeight(lengthM: number, units: UnitsPreference): Quantity {
  if (units.system === 'metres') return { text: whole(lengthM * 100), unit: 'cm' };
  const inches = inchesFromMetres(lengthM);
  return Math.abs(inches) < 1
    ? { text: decimals(inches, 1), unit: 'in' }
    : { text: whole(inches), unit: 'in' };
}

/** A spot height above the datum of the atlas: two decimals, so 1 cm in metres. */
export function spotHeight(heightM: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: decimals(feetFromMetres(heightM), 2), unit: 'ft' }
    : { text: decimals(heightM, 2), unit: 'm' };
}

export const slope = (percent: number): Quantity => ({ text: decimals(percent, 1), unit: '%' });

/** "level" where the slope would print as nothing. */
export const slopeOrLevel = (percent: number): string =>
  Math.abs(percent) < 0.05 ? 'level' : withUnit(slope(percent));

/** Green speed is told in feet everywhere. */
export const greenSpeed = (stimpFt: number): Quantity => ({ text: halves(stimpFt), unit: 'ft' });

export function wind(speedMps: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: whole(mphFromMps(speedMps)), unit: 'mph' }
    : { text: whole(speedMps), unit: 'm/s' };
}

/** Height of a course above the sea: whole feet or metres. */
export function heightAboveSea(heightM: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: whole(feetFromMetres(heightM)), unit: 'ft' }
    : { text: whole(heightM), unit: 'm' };
}

/** Whole degrees, Fahrenheit with yards. */
export function temperature(celsius: number, units: UnitsPreference): Quantity {
  return units.system === 'yards'
    ? { text: whole(fahrenheitFromCelsius(celsius)), unit: '°F' }
    : { text: whole(celsius), unit: '°C' };
}

/** Speed of a clubhead to two figures, more than any swing repeats: "41 mph", "3.1 mph", "7.2 m/s". */
export function clubheadSpeed(speedMps: number, units: UnitsPreference): Quantity {
  const speed = units.system === 'yards' ? mphFromMps(speedMps) : speedMps;
  return {
    text: speed < 9.95 ? decimals(speed, 1) : whole(speed),
    unit: units.system === 'yards' ? 'mph' : 'm/s',
  };
}

/** Air this slow moves no smoke and no ball: calm, the least of the Beaufort scale. */
const CALM_MPS = 0.3;

/** "4 mph W", by where it blows from, or "calm". */
export const windWords = (speedMps: number, fromDeg: number, units: UnitsPreference): string =>
  speedMps < CALM_MPS ? 'calm' : `${withUnit(wind(speedMps, units))} ${compassPoint(fromDeg)}`;

/** A chance in [0, 1] as whole percent; "<1" and ">99" rather than a certainty nobody has. */
export function chance(share: number): Quantity {
  const percent = share * 100;
  const text =
    percent > 0 && percent < 0.5 ? '<1' : percent < 100 && percent >= 99.5 ? '>99' : whole(percent);
  return { text, unit: '%' };
}

export const strokes = (value: number): string => decimals(value, 2);

/** Strokes over the best: "best", "level" or "+0.09". */
export function strokeCost(costStrokes: number, isBest: boolean, isLevel: boolean): string {
  if (isBest) return 'best';
  return isLevel || costStrokes < 0.005 ? 'level' : signed(costStrokes, 2);
}

export const bearing = (degrees: number): Quantity => ({
  text: whole(((Math.round(degrees) % 360) + 360) % 360),
  unit: '°',
});

const POINTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;

/** The nearest of eight winds. */
export const compassPoint = (degrees: number): string =>
  POINTS[((Math.round(degrees / 45) % 8) + 8) % 8] ?? 'N';

/** Length and width of a green, "27 × 29 yd". */
export function size(widthM: number, lengthM: number, units: UnitsPreference): string {
  return units.system === 'yards'
    ? [whole(yardsFromMetres(widthM)), '×', whole(yardsFromMetres(lengthM)), 'yd'].join(GAP)
    : [whole(widthM), '×', whole(lengthM), 'm'].join(GAP);
}

/** An area, whole square yards or metres. */
export function area(areaM2: number, units: UnitsPreference): Quantity {
  const yard = metresFromFeet(3);
  return units.system === 'yards'
    ? { text: whole(areaM2 / (yard * yard)), unit: 'yd²' }
    : { text: whole(areaM2), unit: 'm²' };
}

/** A fall over a distance, "falls 6 in", "rises 4 ft 8 in", "level". */
export function rise(riseM: number, units: UnitsPreference): string {
  const long = Math.abs(riseM) >= (units.system === 'yards' ? METRES_PER_FOOT : 1);
  const size = long ? feetAndInches(Math.abs(riseM), units) : withUnit(smallHeight(Math.abs(riseM), units));
  const least = units.system === 'yards' ? METRES_PER_FOOT / 24 : 0.005;
  return Math.abs(riseM) < least ? 'level' : `${riseM < 0 ? 'falls' : 'rises'} ${size}`;
}
