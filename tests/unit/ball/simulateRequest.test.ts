import { describe, expect, it } from 'vitest';
import { simulateRequest } from '../../../shared/ball/simulateRequest.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';

const day = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 0, windFromDeg: 0 };
const strike = {
  loftDeg: 46,
  leanDeg: 5,
  attackDeg: -4,
  faceOpenDeg: 0,
  lieSlopeDeg: 0,
  clubheadMps: 9,
  bearingDeg: 0,
  lie: 'clean',
};
const ground = (slopePct: number) => ({ slopePct, downhillBearingDeg: 90, cover: 'green' });

describe('one shot asked for in JSON', () => {
  it('answers with the keys of the contract', () => {
    const reply = simulateRequest({ ground: ground(2), ...day, strike });
    expect(Object.keys(reply).sort()).toEqual(
      [
        'apexM',
        'bounces',
        'carryM',
        'holed',
        'landing',
        'launch',
        'outcome',
        'rest',
        'runM',
        'totalM',
      ].sort(),
    );
    expect(reply.rest.eastM).toBeGreaterThan(0.5); // falls to the east
  });

  it('solves for a carry and a total, and says with which speed', () => {
    const carry = simulateRequest({ ground: ground(2), ...day, strike, solve: { carryM: 3.66 } });
    expect(carry.carryM).toBeCloseTo(3.66, 9);
    const again = simulateRequest({
      ground: ground(2),
      ...day,
      strike: { ...strike, clubheadMps: carry.clubheadMps },
    });
    expect(again.rest).toEqual(carry.rest);
    const putt = simulateRequest({
      ground: ground(0),
      ...day,
      roll: { bearingDeg: 45 },
      solve: { totalM: 5 },
    });
    expect(putt.totalM).toBeCloseTo(5, 9);
    expect(putt.speedMps).toBeGreaterThan(2);
  });

  it('holes a putt of the right pace and not one that is struck past', () => {
    const hole = { eastM: 0, northM: 3 };
    const at = (speedMps: number) =>
      simulateRequest({ ground: ground(0), ...day, roll: { speedMps, bearingDeg: 0 }, hole });
    expect(at(2).holed).toBe(true);
    expect(at(4).holed).toBe(false);
    expect(at(1).holed).toBe(false);
  });

  it('says that a ball never stops instead of rolling it for ever', () => {
    const steep = { ground: ground(12), ...day, roll: { speedMps: 1.83, bearingDeg: 90 } };
    expect(simulateRequest(steep).outcome).toBe('stillRolling');
    expect(() => simulateRequest({ ...steep, solve: { totalM: 3 } })).toThrow(/too steep/);
  });

  it.each([
    ['a key that is not known', { ...day, strike: { ...strike, clubheadMph: 9 } }, 'strike'],
    ['not a number', { ...day, strike: { ...strike, clubheadMps: NaN } }, 'strike.clubheadMps'],
    ['infinite', { ...day, roll: { speedMps: Infinity, bearingDeg: 0 } }, 'roll.speedMps'],
    ['a number in quotes', { ...day, stimpFt: '10', strike }, 'stimpFt'],
    ['no shot', day, 'the request'],
    ['two shots', { ...day, strike, roll: { speedMps: 1, bearingDeg: 0 } }, 'the request'],
    ['no speed', { ...day, roll: { bearingDeg: 0 } }, 'roll.speedMps'],
    ['a carry of a roll', { ...day, roll: { bearingDeg: 0 }, solve: { carryM: 2 } }, 'solve.carryM'],
    ['out of reach', { ...day, strike: { ...strike, loftDeg: 80 }, solve: { carryM: 290 } }, 'solve.carryM'],
    ['not an object', 5, 'the request'],
  ])('refuses %s and names the place', (_what, input, place) => {
    try {
      simulateRequest(input);
      expect.unreachable();
    } catch (problem) {
      expect(problem).toBeInstanceOf(InputProblem);
      expect((problem as InputProblem).place).toBe(place);
      expect((problem as InputProblem).remedy).not.toBe('');
    }
  });
});
