import { InputProblem } from '../words/inputProblem.ts';
import { AIR_BOUNDS } from './airBounds.ts';
import {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  METRES_PER_YARD,
  MPS_PER_KMH,
  MPS_PER_KNOT,
  MPS_PER_MPH,
} from './conversions.ts';
import { decimals } from './numerals.ts';
import { percentFromDegrees } from './slope.ts';

/**
 * What people type, with or without a unit: "3 ft 6", `3'6"`, "12.5yd", "6½", "2 %", "1,1 deg". A comma is a decimal sign
 * when it is the only separator. `place` names the field for the message.
 */

const LENGTH_EXAMPLE = 'a length such as 3 ft 6 in, 12.5 yd or 2 m';
const SPEED_EXAMPLE = 'a green speed in feet such as 10 or 9 ft 6 in';
const PACES_EXAMPLE = 'a number of paces such as 12, or a length such as 12.5 yd or 2 m';

export type LengthUnit = 'yd' | 'ft' | 'in' | 'm' | 'cm' | 'mm' | 'paces';

/** A length in metres. A bare number is in `bareUnit`; paces need the person's pace. */
export function parseLength(
  typed: string,
  bareUnit: LengthUnit,
  paceM: number,
  place: string,
  example = bareUnit === 'paces' ? PACES_EXAMPLE : LENGTH_EXAMPLE,
): number {
  const parts = measures(typed, place, example);
  let total = 0;
  let smaller = Infinity;
  let next: LengthUnit | null = bareUnit;
  for (const { value, unit } of parts) {
    const name: LengthUnit | null = unit === '' ? next : lengthUnit(unit);
    if (name === null && unit === '') throw unreadable(typed, place, example);
    if (name === null) throw wrongUnit(typed, unit, place, 'yd, ft, in, m, cm, mm or paces');
    const sizeM = name === 'paces' ? paceM : METRES[name];
    // "3 ft 6" goes on in inches; anything that does not get smaller is a slip.
    if (sizeM >= smaller) throw unreadable(typed, place, example);
    total += value * sizeM;
    smaller = sizeM;
    next = unit === '' ? null : name === 'ft' ? 'in' : name === 'yd' ? 'ft' : name === 'm' ? 'cm' : null;
  }
  return startsNegative(typed) ? -total : total;
}

/** A slope in percent; degrees are converted. */
export function parseSlopePct(typed: string, place: string): number {
  const { value, unit } = single(typed, place, 'a slope such as 2 % or 1.1 deg');
  if (unit === '' || unit === '%' || /^(percent|pct)$/i.test(unit)) return value;
  if (isDegrees(unit)) return percentFromDegrees(value);
  throw wrongUnit(typed, unit, place, '% or deg');
}

/** An angle in degrees: a loft, a bounce, a bearing. */
export function parseDegrees(typed: string, place: string): number {
  const { value, unit } = single(typed, place, 'an angle such as 46 or 46 deg');
  if (unit === '' || isDegrees(unit)) return value;
  throw wrongUnit(typed, unit, place, 'deg');
}

/** A speed in metres per second. */
export function parseSpeedMps(typed: string, bareUnit: 'mph' | 'm/s', place: string): number {
  const { value, unit } = single(typed, place, 'a speed such as 8 mph or 3.5 m/s');
  switch ((unit === '' ? bareUnit : unit).toLowerCase()) {
    case 'mph':
      return value * MPS_PER_MPH;
    case 'm/s':
    case 'mps':
      return value;
    case 'km/h':
    case 'kmh':
    case 'kph':
      return value * MPS_PER_KMH;
    case 'kn':
    case 'kt':
    case 'knots':
      return value * MPS_PER_KNOT;
    default:
      throw wrongUnit(typed, unit, place, 'mph, m/s, km/h or kn');
  }
}

/** Green speed in Stimpmeter feet: "9½", "9 ft 6", "10.5". */
export function parseStimpFt(typed: string, place: string): number {
  const feet = parseLength(typed, 'ft', NaN, place, SPEED_EXAMPLE) / METRES_PER_FOOT;
  if (!Number.isFinite(feet)) throw wrongUnit(typed, 'paces', place, 'ft and in');
  return feet;
}

/** A height above the sea in metres. A comma before three digits parts thousands here: nobody stands 5.280 ft up. */
export function parseHeightAboveSeaM(typed: string, bareUnit: 'ft' | 'm', place: string): number {
  const example = 'a height such as 5280 ft or 1600 m';
  const text = typed.replace(/(?<=^[-+\u2212\s]*\d{1,3}),(?=\d{3}(?!\d))/, '');
  const { value, unit } = single(text, place, example);
  const name = unit === '' ? bareUnit : lengthUnit(unit);
  if (name !== 'ft' && name !== 'm' && name !== 'yd') throw wrongUnit(typed, unit, place, 'ft or m');
  return within(
    value * METRES[name],
    AIR_BOUNDS.heightAboveSeaM,
    (limitM) => limitM / METRES[name],
    name,
    place,
  );
}

/** A temperature in degrees C. */
export function parseTemperatureC(typed: string, bareUnit: 'C' | 'F', place: string): number {
  const text = typed.replace(/[°\u00ba]\s*(?=[cf]\b)/i, '');
  const { value, unit } = single(text, place, 'a temperature such as 20 C or 68 F');
  const scale = unit === '' || unit === '°' ? bareUnit : unit.toUpperCase();
  if (scale !== 'C' && scale !== 'F') throw wrongUnit(typed, unit, place, '°C or °F');
  const celsius = scale === 'C' ? value : celsiusFromFahrenheit(value);
  const shown = (limitC: number): number => (scale === 'C' ? limitC : fahrenheitFromCelsius(limitC));
  return within(celsius, AIR_BOUNDS.temperatureC, shown, `°${scale}`, place);
}

/** The value itself, or what its bounds are in the unit it was typed in. */
function within(
  value: number,
  [low, high]: readonly [number, number],
  shown: (limit: number) => number,
  unit: string,
  place: string,
): number {
  if (value >= low && value <= high) return value;
  const [least, most] = [decimals(shown(low), 0), decimals(shown(high), 0)];
  throw new InputProblem(
    'out-of-range',
    'no golf is played there.',
    place,
    `Give one from ${least} to ${most} ${unit}.`,
  );
}

const METRES: Readonly<Record<Exclude<LengthUnit, 'paces'>, number>> = {
  yd: METRES_PER_YARD,
  ft: METRES_PER_FOOT,
  in: METRES_PER_INCH,
  m: 1,
  cm: 0.01,
  mm: 0.001,
};

function lengthUnit(unit: string): LengthUnit | null {
  switch (unit.toLowerCase()) {
    case 'yd':
    case 'yds':
    case 'yard':
    case 'yards':
      return 'yd';
    case 'ft':
    case 'foot':
    case 'feet':
    case "'":
    case '\u2019':
    case '\u2032':
      return 'ft';
    case 'in':
    case 'ins':
    case 'inch':
    case 'inches':
    case '"':
    case "''":
    case '\u201d':
    case '\u2033':
      return 'in';
    case 'm':
    case 'metre':
    case 'metres':
    case 'meter':
    case 'meters':
      return 'm';
    case 'cm':
      return 'cm';
    case 'mm':
      return 'mm';
    case 'pace':
    case 'paces':
      return 'paces';
    default:
      return null;
  }
}

const isDegrees = (unit: string): boolean => /^(deg|degs|degree|degrees|\u00b0)$/i.test(unit);

interface Measure {
  readonly value: number;
  readonly unit: string;
}

const MINUS = /^[-\u2212]/;
const startsNegative = (typed: string): boolean => MINUS.test(typed.trim());
const FRACTIONS: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75 };
const MEASURE =
  /(\d+(?:[.,]\d+)?|[.,]\d+)?\s*([½¼¾])?\s*(''|[A-Za-z]+(?:\/[A-Za-z]+)?|[%°'"\u2019\u2032\u201d\u2033])?\s*/y;

/** Numbers with their units, in order; at least one, at most three. The sign is the caller's. */
function measures(typed: string, place: string, example: string): readonly Measure[] {
  const text = typed.trim().replace(/^[+\-\u2212]\s*/, '');
  const found: Measure[] = [];
  MEASURE.lastIndex = 0;
  while (MEASURE.lastIndex < text.length) {
    const [all, digits, fraction, unit] = MEASURE.exec(text) ?? [];
    if (all === undefined || (digits === undefined && fraction === undefined))
      throw unreadable(typed, place, example);
    found.push({
      value:
        Number((digits ?? '0').replace(',', '.')) + (fraction === undefined ? 0 : (FRACTIONS[fraction] ?? 0)),
      unit: unit ?? '',
    });
  }
  if (found.length === 0 || found.length > 3 || found.some(({ value }) => !Number.isFinite(value)))
    throw unreadable(typed, place, example);
  return found;
}

function single(typed: string, place: string, example: string): Measure {
  const [only, second] = measures(typed, place, example);
  if (only === undefined || second !== undefined) throw unreadable(typed, place, example);
  return startsNegative(typed) ? { ...only, value: -only.value } : only;
}

function unreadable(typed: string, place: string, example: string): InputProblem {
  return new InputProblem(
    'unreadable-number',
    typed.trim() === '' ? 'nothing is typed here.' : `"${typed.slice(0, 40)}" cannot be read.`,
    place,
    `Type ${example}.`,
  );
}

function wrongUnit(typed: string, unit: string, place: string, units: string): InputProblem {
  return new InputProblem(
    'wrong-unit',
    `"${typed.slice(0, 40)}" is in "${unit.slice(0, 20)}", which does not fit here.`,
    place,
    `Use ${units}.`,
  );
}
