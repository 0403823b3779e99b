import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { generator } from '../../shared/random/generator.ts';
import { doubtAt } from '../../shared/terrain/confidence.ts';
import { fitSurface } from '../../shared/terrain/fitSurface.ts';
import {
  calibrate,
  checkedOn,
  complexes,
  type PlaceKind,
  placeKinds,
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
const ROUGH = 'Worked out: the same twelve with bumps of 8 cm, 5 to 11 m long, round the greens';
const HILL =
  'Maunga Whau, 87 x 61 heights on 10 m, digitised by R. Ihaka; `volcano` of R, as carried by vega-datasets; its eastern half, the western having been looked at for the constants';
const NORMAL = 'of a normal distribution 68.3 and 95.0 % lie within 1 and 1.96 deviations';

/** Rows that say what share of standardised errors lies within one deviation and within 1.96. */
function coverage(
  what: string,
  source: string,
  standardised: readonly number[],
  misfits: readonly [string | null, string | null] = [null, null],
  notes: readonly string[] = [],
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
    note: [
      `${String(standardised.length)} places, rms of errors over deviations ${rms(standardised).toFixed(2)}`,
      ...notes,
    ].join('; '),
  }));
}

/** How high the bumps of the rough ground stand, one standard deviation: hummocks of a step up and down. */
const BUMPS_M = 0.08;

const where: Record<PlaceKind, string> = {
  green: 'on the green',
  near: 'off it within 1.2 m of a reading',
  between: 'off it among readings, 1.2 to 3 m from one',
  beyond: 'off it further from readings, or at their edge',
  'smooth bank': 'on smooth banks',
};

const SMOOTHER = 'Doubt is too large: this ground is smoother than readings so far apart can tell.';
const CAUTIOUS = 'Doubt is a little too large for most places, as large as it must be for the worst of them.';
const UNREAD =
  'Doubt is too small for the worst places: what begins and ends between readings is foretold by none. Read the banks too.';

/** Known misfits, by set, place, quantity and deviations. */
const MISFITS: Readonly<Record<string, string>> = {
  'sample greens, between, height, 1.96': UNREAD,
  'sample greens, between, slope, 1': CAUTIOUS,
  'sample greens, beyond, height, 1': SMOOTHER,
  'sample greens, beyond, slope, 1': SMOOTHER,
  'sample greens, beyond, slope, 1.96': SMOOTHER,
  'sample greens, smooth bank, slope, 1': SMOOTHER,
  'other greens, between, height, 1.96': UNREAD,
  'other greens, between, slope, 1': CAUTIOUS,
  'other greens, beyond, height, 1.96': UNREAD,
  'other greens, beyond, slope, 1.96': UNREAD,
  'other greens, smooth bank, height, 1': UNREAD,
  'other greens, smooth bank, height, 1.96': UNREAD,
  'other greens, smooth bank, slope, 1': UNREAD,
  'other greens, smooth bank, slope, 1.96': UNREAD,
  'rough ground, between, height, 1.96': UNREAD,
  'rough ground, between, slope, 1.96': UNREAD,
  'rough ground, beyond, height, 1': UNREAD,
  'rough ground, beyond, height, 1.96': UNREAD,
  'rough ground, beyond, slope, 1': UNREAD,
  'rough ground, beyond, slope, 1.96': UNREAD,
};

function invented(
  name: string,
  source: string,
  surveys: Parameters<typeof calibrate>[0],
  kinds: readonly PlaceKind[],
): CheckRow[] {
  const found = calibrate(surveys);
  return kinds.flatMap((kind) =>
    (['height', 'slope'] as const).flatMap((quantity) => {
      const what = `${quantity === 'height' ? 'Height' : 'Slope over 1 m'}, ${name}, ${where[kind]}`;
      const scale = quantity === 'height' ? 1000 : 1;
      const unit = quantity === 'height' ? 'mm' : '%';
      const { standardised, trueRms, statedRms } = found[kind][quantity];
      const misfit = (deviations: number): string | null =>
        MISFITS[`${name}, ${kind}, ${quantity}, ${String(deviations)}`] ?? null;
      return [
        ...coverage(
          what,
          source,
          standardised,
          [misfit(1), misfit(1.96)],
          [
            `root mean square stated ${(scale * statedRms).toFixed(1)} ${unit}, true ${(scale * trueRms).toFixed(1)} ${unit}`,
          ],
        ),
        ...(kind === 'green' && name !== 'rough ground'
          ? [
              {
                quantity: `${what}: stated deviation beside the true error, root mean squares`,
                source,
                mark: 'computed',
                expected: scale * trueRms,
                ours: scale * statedRms,
                tolerance: 0.3 * scale * trueRms,
                unit,
              } as const,
            ]
          : []),
      ];
    }),
  );
}

function inventedRows(): CheckRow[] {
  const surveys = checkedOn.variations.flatMap((seed) =>
    complexes.map((complex) => survey(variation(complex, seed))),
  );
  const [from, to] = checkedOn.others;
  const others = (bumpsM: number) =>
    Array.from({ length: to - from + 1 }, (_, i) => otherGreen(from + i, bumpsM));
  return [
    ...invented('sample greens', SAMPLE, surveys, placeKinds),
    ...invented('other greens', OTHERS, others(0), placeKinds),
    ...invented('rough ground', ROUGH, others(BUMPS_M), ['near', 'between', 'beyond']),
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
    return coverage(`Height on a real hill, ${String(count)} known`, HILL, standardised);
  });
}

const group: CheckGroup = {
  title: 'Doubt of the fitted ground beside its true errors',
  measure: () => [...inventedRows(), ...hillRows()],
};

export default group;
