import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { generator } from '../../shared/random/generator.ts';
import { doubtAt } from '../../shared/terrain/confidence.ts';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import {
  calibrate,
  checkedOn,
  complexes,
  rms,
  survey,
  variation,
  within,
} from '../unit/terrain/calibration.ts';
import { emptyInput } from '../unit/terrain/fixtures.ts';
import { otherGreen } from '../unit/terrain/otherGreens.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const SAMPLE =
  'Worked out: variations 4 and 5 of five invented complexes whose true ground is a formula; the constants of doubt were found on 0 to 3';
const OTHERS =
  'Worked out: twelve other invented greens, tilted and waved, some with a tier not traced; the constants were found on fifteen more';
const HILL =
  'Maunga Whau, 87 x 61 heights on 10 m, digitised by R. Ihaka; `volcano` of R, as carried by vega-datasets; its eastern half, the western having been looked at for the constants';
const NORMAL = 'of a normal distribution 68.3 and 95.0 % lie within 1 and 1.96 deviations';

/** Rows that say what share of standardised errors lies within one deviation and within 1.96. */
function coverage(
  what: string,
  source: string,
  standardised: readonly number[],
  misfits: readonly [string | null, string | null] = [null, null],
): CheckRow[] {
  return (
    [
      [1, [60, 76]],
      [1.96, [90, 98]],
    ] as const
  ).map(([deviations, expected], i) => ({
    quantity: `${what}: errors within ${String(deviations)} stated deviation${i === 0 ? '' : 's'}`,
    source: `${source}; ${NORMAL}`,
    mark: 'computed',
    expected,
    ours: 100 * within(standardised, deviations),
    tolerance: 0,
    unit: '%',
    ...(misfits[i] !== null && misfits[i] !== undefined && { misfit: misfits[i] }),
    note: `rms of errors over deviations ${rms(standardised).toFixed(2)}`,
  }));
}

const QUIET =
  'Off greens doubt is too large here: these banks are smooth formulas, the real hill is not, and one factor serves both.';
const QUIETER =
  'The eastern half is quieter than the western, which the factor off greens was found with: doubt is a little too large.';
const THIN =
  'Round these greens readings are thin and banks begin between them: doubt is too small there. Read the banks too.';

function greenRows(): CheckRow[] {
  const surveys = checkedOn.variations.flatMap((seed) =>
    complexes.map((complex) => survey(variation(complex, seed))),
  );
  const [from, to] = checkedOn.others;
  const others = Array.from({ length: to - from + 1 }, (_, i) => otherGreen(from + i));
  const sets = [
    ['sample greens', SAMPLE, calibrate(surveys, 'green')],
    ['other greens', OTHERS, calibrate(others, 'green')],
  ] as const;
  const round = calibrate(surveys, 'round');
  const otherRound = calibrate(others, 'round');
  return [
    ...sets.flatMap(([name, source, found]) =>
      (['height', 'slope'] as const).flatMap((quantity) => {
        const what = `${quantity === 'height' ? 'Height' : 'Slope over 1 m'} on ${name}`;
        const scale = quantity === 'height' ? 1000 : 1;
        const { standardised, trueRms, statedRms } = found[quantity];
        return [
          ...coverage(what, source, standardised),
          {
            quantity: `${what}: stated deviation beside the true error, root mean squares`,
            source,
            mark: 'computed',
            expected: scale * trueRms,
            ours: scale * statedRms,
            tolerance: 0.3 * scale * trueRms,
            unit: quantity === 'height' ? 'mm' : '%',
          } as const,
        ];
      }),
    ),
    ...coverage('Height round sample greens', SAMPLE, round.height.standardised, [QUIET, null]),
    ...coverage('Slope over 1 m round sample greens', SAMPLE, round.slope.standardised, [QUIET, null]),
    ...coverage('Height round other greens', OTHERS, otherRound.height.standardised, [null, THIN]),
    ...coverage('Slope over 1 m round other greens', OTHERS, otherRound.slope.standardised, [null, THIN]),
  ];
}

/** Real ground: heights held back, and how far off the fit is of them in its own deviations. */
function hillRows(): CheckRow[] {
  const path = resolve(import.meta.dirname, '../../node_modules/vega-datasets/data/volcano.json');
  const { width, height, values } = JSON.parse(readFileSync(path, 'utf8')) as {
    readonly width: number;
    readonly height: number;
    readonly values: readonly number[];
  };
  const first = 44;
  const at = (i: number) => ({ eastM: 10 * (i % width), northM: 10 * (height - 1 - Math.floor(i / width)) });
  return [60, 150].flatMap((count) => {
    const random = generator(count);
    const chosen = new Set([first, width - 1].flatMap((column) => [column, column + width * (height - 1)]));
    while (chosen.size < count) {
      const i = Math.floor(random.uniform() * values.length);
      if (i % width >= first) chosen.add(i);
    }
    // Heights in whole metres: their rounding has a standard deviation of 0.29 m.
    const accuracyM = 0.29;
    const fitted = fitSurface(
      {
        ...emptyInput(),
        heights: [...chosen].map((i) => ({ id: String(i), at: at(i), heightM: values[i] ?? NaN, accuracyM })),
        extent: { westM: 10 * first, southM: 0, eastM: 10 * width, northM: 10 * height },
      },
      { cellM: 5 },
    );
    const standardised = values.flatMap((truth, i) => {
      if (i % width < first || i % 2 === 1 || chosen.has(i)) return [];
      const { eastM, northM } = at(i);
      const sd = doubtAt(fitted, at(i)).heightSdM;
      return [(fitted.exactHeight(eastM, northM) - truth) / Math.sqrt(sd * sd + accuracyM * accuracyM)];
    });
    return coverage(`Height on a real hill, ${String(count)} known`, HILL, standardised, [QUIETER, null]);
  });
}

const group: CheckGroup = {
  title: 'Doubt of the fitted ground beside its true errors',
  measure: () => [...greenRows(), ...hillRows()],
};

export default group;
