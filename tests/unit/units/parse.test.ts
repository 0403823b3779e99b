import { describe, expect, it } from 'vitest';
import {
  parseDegrees,
  parseHeightAboveSeaM,
  parseLength,
  parseSlopePct,
  parseSpeedMps,
  parseStimpFt,
  parseTemperatureC,
} from '../../../shared/units/parse.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';

const length = (typed: string): number => parseLength(typed, 'yd', 0.9, 'Side');

describe('lengths as people type them', () => {
  it.each([
    ['3 ft 6', 1.0668],
    [`3'6"`, 1.0668],
    ['3’ 6”', 1.0668],
    ["3' 6''", 1.0668],
    ['3ft 6½in', 1.0795],
    ['12.5yd', 11.43],
    ['12,5', 11.43],
    ['½', 0.4572],
    ['6½ yards', 5.9436],
    ['2 yd 1 ft 6 in', 2.286],
    ['4 paces', 3.6],
    ['1 m 20', 1.2],
    ['35cm', 0.35],
    ['−2 m', -2],
    ['- 6 in', -0.1524],
    ['.5m', 0.5],
  ])('%s', (typed, metres) => {
    expect(length(typed)).toBeCloseTo(metres, 12);
  });

  it.each([
    '',
    'ft',
    '3 6',
    '6 in 3 ft',
    '1.2.3',
    '3 ft 6 ft',
    '1e400',
    'three',
    '5 - 3',
    '1 m 2 cm 3 mm 4 in',
    '2 yd 3 m',
  ])('refuses %j', (typed) => {
    expect(() => length(typed)).toThrow(InputProblem);
  });

  it('names the unit that does not fit, and those that do', () => {
    expect(() => length('3 mph')).toThrow(
      'Side: "3 mph" is in "mph", which does not fit here. Use yd, ft, in, m, cm, mm or paces.',
    );
    expect(() => parseSlopePct('2 ft', 'Slope')).toThrow('Use % or deg.');
  });
});

describe('slopes, angles and speeds', () => {
  it('reads percent and degrees', () => {
    expect(parseSlopePct('2%', '')).toBe(2);
    expect(parseSlopePct('2,5 %', '')).toBe(2.5);
    expect(parseSlopePct('1.1 deg', '')).toBeCloseTo(100 * Math.tan((1.1 * Math.PI) / 180), 12);
    expect(parseDegrees('46°', '')).toBe(46);
    expect(parseDegrees('-4 deg', '')).toBe(-4);
    expect(() => parseDegrees('4 %', 'Loft')).toThrow('Use deg.');
  });

  it('reads speeds', () => {
    expect(parseSpeedMps('10', 'mph', '')).toBeCloseTo(4.4704, 12);
    expect(parseSpeedMps('36 km/h', 'mph', '')).toBeCloseTo(10, 12);
    expect(parseSpeedMps('3.5m/s', 'mph', '')).toBe(3.5);
    expect(parseStimpFt('9½', '')).toBeCloseTo(9.5, 12);
    expect(parseStimpFt('9 ft 6', '')).toBeCloseTo(9.5, 12);
    expect(() => parseSpeedMps('5 yd', 'mph', 'Wind')).toThrow('Wind');
  });

  it('reads heights above the sea and temperatures, and says the bounds in the unit typed', () => {
    expect(parseHeightAboveSeaM('5,280', 'ft', '')).toBeCloseTo(1609.344, 9);
    expect(parseHeightAboveSeaM('1,5 m', 'ft', '')).toBe(1.5);
    expect(parseHeightAboveSeaM('1,600 m', 'ft', '')).toBe(1600);
    expect(parseHeightAboveSeaM('−30', 'm', '')).toBe(-30);
    expect(() => parseHeightAboveSeaM('20000', 'ft', 'Above the sea')).toThrow(
      'Above the sea: no golf is played there. Give one from −1476 to 16404 ft.',
    );
    expect(() => parseHeightAboveSeaM('12 paces', 'ft', '')).toThrow('Use ft or m.');
    expect(parseTemperatureC('68 °F', 'C', '')).toBeCloseTo(20, 12);
    expect(parseTemperatureC('−4°', 'C', '')).toBe(-4);
    expect(parseTemperatureC('12,5 c', 'F', '')).toBe(12.5);
    expect(() => parseTemperatureC('300', 'F', '')).toThrow('Give one from −22 to 131 °F.');
    expect(() => parseTemperatureC('290 K', 'C', '')).toThrow('Use °C or °F.');
  });
});
