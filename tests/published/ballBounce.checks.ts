import { bounce, WY } from '../../shared/ball/bounce.ts';
import { inclinedPlane } from '../../shared/ball/inclinedPlane.ts';
import { shotSimulator } from '../../shared/ball/simulator.ts';
import { ordinaryDay, runRatio, YARD_M } from './chipShots.ts';
import type { CheckGroup, CheckRow } from './row.ts';

/** Backspin (rad/s) after the calibration impact, 18.6 m/s at 44.4 degrees from the vertical, flying east. */
function spinOut(spinInRadps: number, friction: number): number {
  const angle = (44.4 * Math.PI) / 180;
  const state = Float64Array.of(
    0,
    0,
    0,
    18.6 * Math.sin(angle),
    0,
    -18.6 * Math.cos(angle),
    0,
    -spinInRadps,
    0,
  );
  bounce(state, new Float64Array(4), {
    restitution: Float64Array.of(0.51),
    tiltRad: Float64Array.of((15.4 * Math.PI) / 180),
    friction: Float64Array.of(friction),
  });
  return -(state[WY] ?? NaN);
}

function spinKept(friction: number): number {
  let low = 0;
  let high = 2000;
  for (let k = 0; k < 50; k += 1) {
    const middle = (low + high) / 2;
    if (spinOut(middle, friction) > 0) high = middle;
    else low = middle;
  }
  return high;
}

const tour = [
  ['driver', 167, 10.9, 2686, 6, 24.1, 4],
  ['5-iron', 132, 12.1, 5361, 6, 11.1, 2.5],
  ['7-iron', 120, 16.3, 7097, 10, 3.6, 1.5],
  ['9-iron', 109, 20.4, 8647, 10, 0.2, 1.5],
  ['pitching wedge', 102, 24.2, 9304, 10, -0.7, 1.5],
] as const;

const group: CheckGroup = {
  title: 'Bounce',
  measure() {
    const rows: CheckRow[] = tour.map(([club, mph, elevationDeg, backspinRpm, stimpFt, runYd, tolerance]) => {
      const { rest, carryM } = shotSimulator(
        inclinedPlane(0, 0, 'green'),
        { ...ordinaryDay, stimpFt },
        null,
      ).trace(0, 0, {
        speedMps: mph * 0.44704,
        elevationDeg,
        bearingDeg: 0,
        backspinRpm,
        spinAxisDeg: 0,
      }).result;
      return {
        quantity: `run of a typical tour ${club} on turf of stimp ${String(stimpFt)}`,
        source: "independent model of the greenside law with Penner's constants (2002, from memory)",
        mark: 'computed',
        expected: runYd,
        ours: (rest.northM - carryM) / YARD_M,
        tolerance,
        unit: 'yd',
        note: 'sensitive to the hop cut-off by 2 to 3 yd',
      };
    });
    rows.push(
      {
        quantity: 'least backspin that survives the calibration impact, friction 0.40',
        source: "independent model, Penner's constants",
        mark: 'computed',
        expected: 870,
        ours: spinKept(0.4),
        tolerance: 30,
        unit: 'rad/s',
      },
      {
        quantity: "least backspin kept on Haake's second type of green",
        source: 'Haake (1994), Science and Golf II',
        mark: 'found',
        expected: 350,
        ours: spinKept(0.4),
        tolerance: 50,
        unit: 'rad/s',
        misfit:
          'Penner’s friction of 0.40 turns such spin over; 350 needs an effective 0.16, and chips do not feel the difference (+8 % run at 0.2)',
      },
      {
        quantity: 'backspin left of 350 rad/s with a friction of 0.16',
        source: 'independent model',
        mark: 'computed',
        expected: 3,
        ours: spinOut(350, 0.16),
        tolerance: 8,
        unit: 'rad/s',
      },
    );
    for (const [firmness, ratio] of [
      [0, 1.86],
      [0.5, 2.11],
      [1, 2.43],
    ] as const) {
      rows.push({
        quantity: `run to carry of a 46-degree chip at firmness ${String(firmness)}`,
        source: 'independent model over the assumed span of firmness',
        mark: 'computed',
        expected: ratio,
        ours: runRatio({ loftDeg: 46, carryM: 4 * YARD_M, day: { firmness } }),
        tolerance: 0.05,
        unit: '',
      });
    }
    return rows;
  },
};
export default group;
