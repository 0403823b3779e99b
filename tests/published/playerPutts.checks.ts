import type { PlayerLevel } from '../../shared/atlas/records.ts';
import { normalCdf } from '../../shared/numeric/normal.ts';
import { puttingErrors } from '../../shared/player/puttingSpread.ts';
import { feetOf, levelPutts } from './fit/levelPutts.ts';
import { LEVEL_PUTTS, NINETIES_TWO_PUTT_FEET, TOUR_THREE_PUTTS } from './fit/tourPutts.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const misfits: Readonly<Record<string, string>> = {
  'scratch 15':
    'Scratch is printed two points below tour here and eleven at 5 ft. No wider error does that: only a pace better than tour, which what is found of good players’ pace denies.',
};

const group: CheckGroup = {
  title: 'Putts by level, level green at stimp 10',
  measure() {
    const tour = levelPutts(puttingErrors({ kind: 'tour' }));
    const levels: Readonly<Record<keyof typeof LEVEL_PUTTS, PlayerLevel>> = {
      scratch: { kind: 'handicap', handicap: 0 },
      '90s golfer': { kind: 'handicap', handicap: 18 },
    };
    const nineties = levelPutts(puttingErrors(levels['90s golfer']));
    const rows: CheckRow[] = [];
    for (const name of ['scratch', '90s golfer'] as const) {
      const putts = name === '90s golfer' ? nineties : levelPutts(puttingErrors(levels[name]));
      for (const [feet, pct] of LEVEL_PUTTS[name]) {
        const misfit = misfits[`${name} ${String(feet)}`];
        rows.push({
          quantity: `putts of ${String(feet)} ft holed, ${name}`,
          source: 'Broadie (2014), one-putt percentages by level',
          mark: 'from memory',
          expected: pct,
          ours: 100 * putts(feet).one,
          tolerance: 2,
          unit: '%',
          fittedHere: true,
          ...(misfit === undefined ? {} : { misfit }),
        });
      }
    }
    for (const [feet, pct] of TOUR_THREE_PUTTS) {
      rows.push({
        quantity: `three putts from ${String(feet)} ft, tour`,
        source: 'Broadie (2012, 2014), three-putt percentages',
        mark: 'from memory',
        expected: pct,
        ours: 100 * tour(feet).three,
        tolerance: 1,
        unit: '%',
        fittedHere: true,
        ...(feet === 30 || feet === 40
          ? {
              misfit:
                'A pace error that is the same share at every length leaves a little too much from 30 and 40 ft; the spread is a compromise with one-putts and expected putts, which it meets within 0.02.',
            }
          : {}),
        ...(feet === 20 || feet === 40 ? { note: `A blog that was found prints ${String(pct)} % too.` } : {}),
      });
    }
    // Lengths that were not fitted.
    for (const [feet, pct, strokes] of [
      [7, 58, 1.42],
      [9, 45, 1.56],
      [90, 1, 2.4],
    ] as const) {
      const ours = tour(feet);
      const source = 'Broadie (2012, 2014)';
      rows.push(
        {
          quantity: `one-putts from ${String(feet)} ft, tour, a length that was not fitted`,
          source,
          mark: 'from memory',
          expected: pct,
          ours: 100 * ours.one,
          tolerance: 1.5,
          unit: '%',
        },
        {
          quantity: `expected putts from ${String(feet)} ft, tour, a length that was not fitted`,
          source,
          mark: 'from memory',
          expected: strokes,
          ours: ours.strokes,
          tolerance: 0.02,
          unit: 'strokes',
          ...(feet === 90
            ? {
                misfit:
                  'fitted to 60 ft; farther off, pace must go wrong by more than its share of the speed, and ours takes three putts at the most',
              }
            : {}),
        },
      );
    }
    for (const feet of [5, 10, 15, 20, 30]) {
      // Ball within the hole in angle, sd 1.0 degree; dying within 3 ft past, aimed a foot past, sd 8 % of the length.
      const degrees = (Math.asin((4.25 - 1.68) / 24 / feet) * 180) / Math.PI;
      const paceSd = 0.08 * (feet + 1);
      rows.push({
        quantity: `one-putts from ${String(feet)} ft by a model of two parameters fitted to 1.25 million putts`,
        source: 'Gelman (2019), Stan case study on golf putting: formula found, the angle recalled',
        mark: 'from memory',
        expected: 100 * (2 * normalCdf(degrees) - 1) * (normalCdf(2 / paceSd) - normalCdf(-1 / paceSd)),
        ours: 100 * tour(feet).one,
        tolerance: 1.5,
        unit: '%',
      });
    }
    rows.push(
      {
        quantity: 'expected putts from 33 ft, tour',
        source: 'two putts on average from 33 ft, golf.com quoting Broadie',
        mark: 'found',
        expected: 2,
        ours: tour(33).strokes,
        tolerance: 0.02,
        unit: 'strokes',
      },
      {
        quantity: 'length of which a 90s golfer expects two putts',
        source: 'Broadie (2014), two-putt distance by level',
        mark: 'from memory',
        expected: NINETIES_TWO_PUTT_FEET,
        ours: feetOf(nineties, 2),
        tolerance: 1.5,
        unit: 'ft',
        misfit:
          'The factor , where line decides, also widens pace by 1.6, and so leaves too many third putts: pace must suffer less with level than line. No published pace spread of club golfers was found to fit a factor of its own.',
      },
    );
    return rows;
  },
};
export default group;
