import {
  aerodynamicAcceleration,
  airConstants,
  SPIN_DECAY_PER_M,
  standardAir,
} from '../../shared/ball/aerodynamics.ts';
import { airOf } from '../../shared/ball/air.ts';
import { BALL_RADIUS_M } from '../../shared/ball/constants.ts';
import { inclinedPlane } from '../../shared/ball/inclinedPlane.ts';
import type { Conditions } from '../../shared/ball/shot.ts';
import { shotSimulator } from '../../shared/ball/simulator.ts';
import { chip, ordinaryDay, YARD_M } from './chipShots.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const G = 9.80665;
const vacuum = { air: { densityKgM3: 0, viscosityM2s: 1.46e-5 } };

function inVacuum(speedMps: number, elevationDeg: number, slopePct: number) {
  return shotSimulator(inclinedPlane(slopePct, 0, 'green'), ordinaryDay, null, vacuum).trace(0, 0, {
    speedMps,
    elevationDeg,
    bearingDeg: 0,
    backspinRpm: 5000,
    spinAxisDeg: 0,
  }).result;
}

/** Closed form of the carry on a plane falling by slope s along the line: 2 v^2 cos^2 (tan e + s) / g. */
const carryOnPlane = (v: number, elevationDeg: number, slopePct: number): number => {
  const e = (elevationDeg * Math.PI) / 180;
  return (2 * v * v * Math.cos(e) ** 2 * (Math.tan(e) + slopePct / 100)) / G;
};

const tour = [
  ['driver', 167, 10.9, 2686, 275],
  ['5-iron', 132, 12.1, 5361, 194],
  ['7-iron', 120, 16.3, 7097, 172],
  ['9-iron', 109, 20.4, 8647, 148],
  ['pitching wedge', 102, 24.2, 9304, 136],
] as const;

const vacuumShare = (loftDeg: number, carryYd: number): number => {
  const shot = chip({ loftDeg, carryM: carryYd * YARD_M });
  return 100 * (1 - shot.carryM / carryOnPlane(shot.launch.speedMps, shot.launch.elevationDeg, 0));
};

/** Drag coefficient without spin at a Reynolds number, from the deceleration of our flight. */
function dragAt(reynolds: number): number {
  const air = airConstants({ ...standardAir, windEastMps: 0, windNorthMps: 0 });
  const speed = (reynolds * standardAir.viscosityM2s) / (2 * BALL_RADIUS_M);
  const out = new Float64Array(3);
  aerodynamicAcceleration(air, Float64Array.of(0, speed, 0, 0, 0, 0, 0), out);
  return -(out[1] ?? NaN) / ((air[0] ?? NaN) * speed * speed);
}

const group: CheckGroup = {
  title: 'Flight',
  measure() {
    const rows: CheckRow[] = [];
    for (const [speed, elevation, slope] of [
      [8, 30, 0],
      [15, 50, 0],
      [15, 50, 5],
      [25, 20, -4],
    ] as const) {
      rows.push({
        quantity: `carry without air, ${String(speed)} m/s at ${String(elevation)} degrees, fall ${String(slope)} %`,
        source: 'parabola over a plane in closed form',
        mark: 'computed',
        expected: carryOnPlane(speed, elevation, slope),
        ours: inVacuum(speed, elevation, slope).carryM,
        tolerance: 1e-6,
        unit: 'm',
      });
    }
    rows.push({
      quantity: 'height without air, 15 m/s at 50 degrees',
      source: 'v^2 sin^2 / 2g',
      mark: 'computed',
      expected: (15 * Math.sin((50 * Math.PI) / 180)) ** 2 / (2 * G),
      ours: inVacuum(15, 50, 0).apexM,
      tolerance: 1e-6,
      unit: 'm',
    });
    for (const [heightAboveSeaM, densityKgM3] of [
      [0, 1.225],
      [1000, 1.1117],
      [2000, 1.0066],
    ] as const) {
      rows.push({
        quantity: `density of the air at ${String(heightAboveSeaM)} m above the sea`,
        source: 'standard atmosphere, ISO 2533 and US Standard Atmosphere 1976',
        mark: 'from memory',
        expected: densityKgM3,
        // The temperature of sea level is said, the others are left to the formula.
        ours: airOf({ heightAboveSeaM, ...(heightAboveSeaM === 0 && { temperatureC: 15 }) }).densityKgM3,
        tolerance: 0.00006,
        unit: 'kg/m3',
      });
    }
    rows.push(
      {
        quantity: 'viscosity of the air at 2000 m above the sea',
        source: 'US Standard Atmosphere 1976',
        mark: 'from memory',
        expected: 17.15,
        ours: 1e6 * airOf({ heightAboveSeaM: 2000 }).viscosityM2s,
        tolerance: 0.02,
        unit: 'mm2/s',
      },
      {
        quantity: 'drag coefficient of a ball without spin at Re 30,000',
        source: 'Choi, Jeon & Choi (2006), Phys. Fluids 18:041702',
        mark: 'from memory',
        expected: 0.5,
        ours: dragAt(3e4),
        tolerance: 0.05,
        unit: '',
        fittedHere: true,
      },
      {
        quantity: 'the same at Re 100,000',
        source: 'Choi, Jeon & Choi (2006), Phys. Fluids 18:041702',
        mark: 'from memory',
        expected: 0.25,
        ours: dragAt(1e5),
        tolerance: 0.02,
        unit: '',
      },
      {
        quantity: 'spin lost a second, per mile an hour of speed',
        source: 'Smits & Smith (1994), restated in a physics-of-golf book',
        mark: 'found',
        expected: 4e-4,
        ours: SPIN_DECAY_PER_M * 0.44704,
        tolerance: 0.3e-4,
        unit: '',
        note: 'Ours is their constant as recalled, in other units.',
      },
      {
        quantity: 'what the air takes off a 4.2 yd chip',
        source: 'independent model',
        mark: 'computed',
        expected: 1.5,
        ours: vacuumShare(46, 4.2),
        tolerance: 1,
        unit: '%',
      },
      {
        quantity: 'what the air takes off a 20 yd pitch',
        source: 'independent model',
        mark: 'computed',
        expected: 7,
        ours: vacuumShare(56, 20),
        tolerance: 3,
        unit: '%',
        misfit:
          'the loft of the other computation is not on record, and the lift of a slow ball is not established: with ours doubled it takes off 9.6 %',
      },
    );
    const iron = (day: Conditions): number =>
      shotSimulator(inclinedPlane(0, 0, 'fairway'), day, null).trace(0, 0, {
        speedMps: 120 * 0.44704,
        elevationDeg: 16.3,
        bearingDeg: 0,
        backspinRpm: 7097,
        spinAxisDeg: 0,
      }).result.carryM;
    rows.push({
      quantity: 'what a mile above the sea adds to the carry of a 7-iron',
      source: 'trade rules of some 6 to 10 %',
      mark: 'common practice',
      expected: [6, 10],
      ours: 100 * (iron({ ...ordinaryDay, heightAboveSeaM: 1609.344 }) / iron(ordinaryDay) - 1),
      tolerance: 0,
      unit: '%',
    });
    for (const [club, mph, elevationDeg, backspinRpm, carryYd] of tour) {
      const shot = shotSimulator(inclinedPlane(0, 0, 'fairway'), ordinaryDay, null).trace(0, 0, {
        speedMps: mph * 0.44704,
        elevationDeg,
        bearingDeg: 0,
        backspinRpm,
        spinAxisDeg: 0,
      }).result;
      rows.push({
        quantity: `carry of a typical tour ${club}`,
        source: 'tour averages of launch and carry',
        mark: 'from memory',
        expected: carryYd,
        ours: shot.carryM / YARD_M,
        tolerance: 0.05 * carryYd,
        unit: 'yd',
        ...(club === 'driver'
          ? { misfit: 'the drag fit of 1994 is of older balls; ours is a model for shots under 60 yd' }
          : {}),
      });
    }
    return rows;
  },
};
export default group;
