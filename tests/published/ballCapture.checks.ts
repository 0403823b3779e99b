import { BALL_RADIUS_M, GRAVITY_MPS2, HOLE_RADIUS_M } from '../../shared/ball/constants.ts';
import { inclinedPlane } from '../../shared/ball/inclinedPlane.ts';
import { shotSimulator } from '../../shared/ball/simulator.ts';
import { FOOT_M, ordinaryDay } from './chipShots.ts';
import type { CheckGroup, CheckRow } from './row.ts';

/** Fastest speed at the closest approach at which a ball rolled past the middle at an offset drops. */
function fastestMps(ratio: number, slopePct = 0): number {
  const away = 0.3;
  const a = 1.83 ** 2 / (2 * ordinaryDay.stimpFt * FOOT_M) - ((5 / 7) * GRAVITY_MPS2 * slopePct) / 100;
  const simulator = shotSimulator(inclinedPlane(slopePct, 0, 'green'), ordinaryDay, {
    eastM: ratio * HOLE_RADIUS_M,
    northM: away,
  });
  // Fast enough to be at 0.1 m/s there: that drops at every offset asked.
  let low = Math.sqrt(2 * a * away + 0.01);
  let high = 4;
  for (let k = 0; k < 40; k += 1) {
    const middle = (low + high) / 2;
    if (simulator.traceRoll(0, 0, middle, 0).result.outcome === 'holed') low = middle;
    else high = middle;
  }
  return Math.sqrt(low * low - 2 * a * away);
}

const rigidBody: readonly (readonly [ratio: number, mps: number])[] = [
  [0.1, 1.6],
  [0.2, 1.52],
  [0.3, 1.43],
  [0.4, 1.33],
  [0.5, 1.22],
  [0.6, 1.08],
  [0.7, 0.87],
  [0.8, 0.55],
  [0.9, 0.38],
  [0.95, 0.29],
];

const group: CheckGroup = {
  title: 'Hole',
  measure() {
    const rows: CheckRow[] = [
      {
        quantity: 'fastest centred ball that drops',
        source: 'Holmes (1991), Am. J. Phys. 59(2):129',
        mark: 'from memory',
        expected: 1.63,
        ours: fastestMps(0),
        tolerance: 0.01,
        unit: 'm/s',
        fittedHere: true,
      },
      {
        quantity: 'fastest ball that falls its own radius while it crosses',
        source: 'Penner (2002), The physics of putting',
        mark: 'from memory',
        expected: 1.31,
        ours: (2 * HOLE_RADIUS_M - BALL_RADIUS_M) * Math.sqrt(GRAVITY_MPS2 / (2 * BALL_RADIUS_M)),
        tolerance: 0.01,
        unit: 'm/s',
        note: 'a bound without the far rim, from our ball, hole and gravity; the far rim lets up to 1.63 drop',
      },
    ];
    for (const [ratio, mps] of rigidBody) {
      rows.push({
        quantity: `fastest ball that drops, ${String(ratio)} of the hole's radius off centre`,
        source: 'rigid-body computation of ball, rim and wall',
        mark: 'computed',
        expected: mps,
        ours: fastestMps(ratio),
        tolerance: 0.1,
        unit: 'm/s',
        fittedHere: true,
        ...(ratio > 0.9
          ? {
              misfit:
                'the parabola falls to nothing at the rim; so grazing a ball holds so seldom that making it exact changes no chance',
            }
          : {}),
      });
    }
    for (const [way, slopePct, low, high] of [
      ['uphill', -3, 0.01, 0.03],
      ['downhill', 3, -0.03, -0.02],
    ] as const) {
      rows.push({
        quantity: `change of the centred limit ${way} on 3 %`,
        source: 'rigid-body computation',
        mark: 'computed',
        expected: [low, high],
        ours: fastestMps(0, slopePct) - fastestMps(0),
        tolerance: 0,
        unit: 'm/s',
        fittedHere: true,
      });
    }
    return rows;
  },
};
export default group;
