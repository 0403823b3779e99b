import { areaWords, lineWords } from '../../shared/atlas/shaping.ts';
import {
  METRES_PER_YARD,
  feetFromMetres,
  inchesFromMetres,
  yardsFromMetres,
} from '../../shared/units/conversions.ts';
import { decimals, whole } from '../../shared/units/numerals.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Thing } from './planeShapes.ts';

/** A thing inside a sentence: "the bunker", "“West pot”", "ball 3", "a spot height". */
export function thingWords(thing: Thing): string {
  switch (thing.type) {
    case 'area':
      return areaWords(thing);
    case 'line':
      return thing.name === '' ? `the ${lineWords[thing.kind]}` : `“${thing.name}”`;
    case 'spotHeight':
      return 'a spot height';
    case 'slopeReading':
      return 'a slope reading';
    case 'holeLocation':
      return `flag ${thing.label}`;
    case 'landmark':
      return thing.name === '' ? 'a landmark' : `“${thing.name}”`;
    case 'ballPosition':
      return `ball ${thing.label}`;
  }
}

/** A length being drawn: tenths of a yard or metre, or feet and inches where a yard is much. */
export const sideWords = (lengthM: number, units: UnitsPreference): string =>
  units.system === 'yards'
    ? `${decimals(yardsFromMetres(lengthM), 1)}\u00a0yd`
    : `${decimals(lengthM, 2)}\u00a0m`;

/** An area being drawn, with a decimal while it is small. */
export function areaWordsOf(areaM2: number, units: UnitsPreference): string {
  const value = units.system === 'yards' ? areaM2 / (METRES_PER_YARD * METRES_PER_YARD) : areaM2;
  return `${value < 10 ? decimals(value, 1) : whole(value)}\u00a0${units.system === 'yards' ? 'yd²' : 'm²'}`;
}

/** A small height as it is typed back: "3 ft 6 in" would not fit a field, so feet with two decimals or metres. */
export const heightField = (heightM: number | null, units: UnitsPreference): string =>
  heightM === null
    ? ''
    : units.system === 'yards'
      ? trimmed(feetFromMetres(heightM), 2)
      : trimmed(heightM, 2);

/** An accuracy: inches or centimetres. */
export const accuracyField = (accuracyM: number, units: UnitsPreference): string =>
  units.system === 'yards' ? trimmed(inchesFromMetres(accuracyM), 2) : trimmed(accuracyM * 100, 1);

export const heightUnit = (units: UnitsPreference): 'ft' | 'm' => (units.system === 'yards' ? 'ft' : 'm');
export const smallUnit = (units: UnitsPreference): 'in' | 'cm' => (units.system === 'yards' ? 'in' : 'cm');

export const trimmed = (value: number, places: number): string => String(Number(value.toFixed(places)));
