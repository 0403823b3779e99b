import { calibrate, complexes, rms, survey, variation, within } from '../unit/terrain/calibration.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const SOURCE =
  'Worked out: five invented complexes, each as it is and with its swells moved once, whose true ground is a formula';
const NORMAL = 'Normal distribution: 68.3 and 95.0 % lie within 1 and 1.96 deviations';

const group: CheckGroup = {
  title: 'Doubt of the fitted ground beside its true errors',
  measure: () => {
    const surveys = [0, 1].flatMap((seed) => complexes.map((complex) => survey(variation(complex, seed))));
    const green = calibrate(surveys, 'green');
    const round = calibrate(surveys, 'round');
    const rows: CheckRow[] = [];
    for (const quantity of ['height', 'slope'] as const) {
      const what = quantity === 'height' ? 'height' : 'slope over 1 m';
      const all = [...green[quantity].standardised, ...round[quantity].standardised];
      const scale = quantity === 'height' ? 1000 : 1;
      const unit = quantity === 'height' ? 'mm' : '%';
      rows.push(
        {
          quantity: `${what}: rms of errors over stated deviations, all ground`,
          source: SOURCE,
          mark: 'computed',
          expected: 1,
          ours: rms(all),
          tolerance: 0.25,
          unit: '',
          fittedHere: true,
        },
        {
          quantity: `${what}: within 1 deviation, all ground`,
          source: NORMAL,
          mark: 'computed',
          expected: 68.3,
          ours: 100 * within(all, 1),
          tolerance: 15,
          unit: '%',
          fittedHere: true,
          note: 'True errors are nearly nought on quiet ground and large on few banks, so more than 68 % lie within.',
        },
        {
          quantity: `${what}: within 1.96 deviations, all ground`,
          source: NORMAL,
          mark: 'computed',
          expected: 95,
          ours: 100 * within(all, 1.96),
          tolerance: 5,
          unit: '%',
          fittedHere: true,
        },
        {
          quantity: `${what} on greens: stated deviation beside the true error, root mean squares`,
          source: SOURCE,
          mark: 'computed',
          expected: [scale * green[quantity].trueRms, 1.6 * scale * green[quantity].trueRms],
          ours: scale * green[quantity].statedRms,
          tolerance: 0,
          unit,
          fittedHere: true,
          note: 'The low end is the true error: doubt errs on the safe side.',
        },
      );
    }
    return rows;
  },
};

export default group;
