import { describe, expect, it } from 'vitest';
import * as format from '../../../shared/units/format.ts';
import { decimals, halves, signed } from '../../../shared/units/numerals.ts';

const yards = { system: 'yards', paceM: 0.9144 } as const;
const metric = { system: 'metres', paceM: 0.8 } as const;

describe('numbers on the page', () => {
  it('prints halves, true minus and no negative nothing', () => {
    expect([6.5, 13.1, 0.5, 0, -0.2, -1.5, 9.76].map(halves)).toEqual([
      '6½',
      '13',
      '½',
      '0',
      '0',
      '−1½',
      '10',
    ]);
    expect([decimals(-0.04, 1), decimals(-1.25, 1), decimals(NaN, 1)]).toEqual(['0.0', '−1.3', '–']);
    expect([signed(0.09, 2), signed(-0.09, 2), signed(0.001, 2)]).toEqual(['+0.09', '−0.09', '0.00']);
  });

  it('follows the steps of each quantity', () => {
    expect(format.withUnit(format.distance(5.9436, yards))).toBe('6½\u00a0yd');
    expect(format.withUnit(format.distance(5.9436, metric))).toBe('6.0\u00a0m');
    expect(format.landing(1.83, yards).text).toBe('2 on');
    expect(format.landing(-0.5, yards).text).toBe('½ short');
    expect(format.landing(0.1, yards).text).toBe('edge');
    expect(format.aim(0.9144, yards).text).toBe('3 R');
    expect(format.aim(-0.1524, yards).text).toBe('½ L');
    expect(format.aim(0.02, yards).text).toBe('at it');
    expect([1.7, 2.95, 3.05, 4.2].map((m) => format.leave(m, yards).text)).toEqual(['5½', '9½', '10', '14']);
    expect(format.feetAndInches(1.0668, yards)).toBe('3\u00a0ft\u00a06\u00a0in');
    expect(format.feetAndInches(0.3, yards)).toBe('1\u00a0ft');
    expect(format.feetAndInches(0.2, yards)).toBe('8\u00a0in');
    expect(format.withUnit(format.slope(-1.25))).toBe('−1.3\u00a0%');
    expect(format.slopeOrLevel(0.02)).toBe('level');
    expect(format.spotHeight(12.643, metric).text).toBe('12.64');
    expect([0, 0.004, 0.42, 0.996, 1].map((p) => format.chance(p).text)).toEqual([
      '0',
      '<1',
      '42',
      '>99',
      '100',
    ]);
    expect(format.strokeCost(0.091, false, false)).toBe('+0.09');
    expect(format.strokeCost(0.02, false, true)).toBe('level');
    expect(format.withUnit(format.greenSpeed(9.5))).toBe('9½\u00a0ft');
    expect(format.withUnit(format.wind(1.8, yards))).toBe('4\u00a0mph');
    expect([format.windWords(1.8, 270, yards), format.windWords(0.25, 270, yards)]).toEqual([
      '4\u00a0mph W',
      'calm',
    ]);
    expect([0, 44, 359, 270, -90].map(format.compassPoint)).toEqual(['N', 'NE', 'N', 'W', 'W']);
    expect(format.withUnit(format.bearing(359.7))).toBe('0°');
    expect(format.rise(0.1016, yards)).toBe('rises 4\u00a0in');
    expect(format.rise(1.42, yards)).toBe('rises 4\u00a0ft\u00a08\u00a0in');
    expect(format.rise(1.42, metric)).toBe('rises 1.42\u00a0m');
    expect(format.rise(-0.02, metric)).toBe('falls 2\u00a0cm');
    expect(format.rise(0.001, yards)).toBe('level');
    expect(format.size(24.7, 26.5, yards)).toBe('27\u00a0×\u00a029\u00a0yd');
  });
});
