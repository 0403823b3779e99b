import { pow, sin } from '../numeric/elementary.ts';
import { BALL_MASS_KG, BALL_RADIUS_M } from './constants.ts';

/** The air of the day. */
export interface Air {
  readonly densityKgM3: number;
  /** Kinematic viscosity, m^2/s. */
  readonly viscosityM2s: number;
  /**
   * Wind as a velocity in the plane, m/s; the same at every height. Over short grass a logarithmic profile (roughness
   * 1 cm, assumed) has it a third stronger at 10 m than at 2 m: what is felt at head height is a little too little for
   * a high pitch, what a weather station at 10 m tells too much for a chip.
   */
  readonly windEastMps: number;
  readonly windNorthMps: number;
}

/** Standard air at sea level and 15 degrees C (ISO 2533; from memory). */
export const standardAir = { densityKgM3: 1.225, viscosityM2s: 1.46e-5 } as const;

/** Below this Reynolds number the boundary layer is taken as laminar, above the other as turbulent (Choi et al. 2006; from memory). */
const RE_LOW = 4e4;
const RE_HIGH = 8e4;
const CD_LOW = 0.47;
/** Lift coefficient of a fast-spinning slow ball. Not established, even in sign: kept small. Assumed. */
const CL_LOW = 0.1;
/** Beyond this spin ratio the fitted lift stops growing: twice as far as anything measured. */
const SPIN_RATIO_CAP = 0.6;

const CELLS = 1024;
const liftTable = new Float64Array(CELLS + 2);
for (let i = 0; i < liftTable.length; i += 1) liftTable[i] = 0.54 * pow(i / CELLS, 0.8);

/** 0.54 S^0.4 by a table in sqrt S, within 1e-6 of the power: a power costs more than the rest of a step. */
function smitsSmithLift(spinRatio: number): number {
  const x = Math.sqrt(Math.min(spinRatio, SPIN_RATIO_CAP)) * CELLS;
  const i = Math.floor(x);
  const low = liftTable[i] as number; // x is within [0, CELLS]
  return low + ((liftTable[i + 1] as number) - low) * (x - i);
}

/** Where the size of the spin stands in a motion, and how many numbers that has. */
export const SPIN = 6;
export const MOTION_SIZE = 7;

/** Constants of `aerodynamicAcceleration` worked out once: flat, because hot code reads it. */
export function airConstants(air: Air): Float64Array {
  const area = Math.PI * BALL_RADIUS_M * BALL_RADIUS_M;
  return Float64Array.of(
    (0.5 * air.densityKgM3 * area) / BALL_MASS_KG,
    (2 * BALL_RADIUS_M) / air.viscosityM2s,
    air.windEastMps,
    air.windNorthMps,
  );
}

/**
 * Acceleration by drag and lift, m/s^2, into out[0..2], for a velocity (m/s), a spin vector (rad/s) and its size, in
 * motion[0..6]. They come in an array because engines wrap every number that is passed to a call, the size because whoever
 * asks several times within a step knows it.
 *
 * Above Re 80,000 Smits & Smith (1994, "A new aerodynamic model of a golf ball in flight"; from memory):
 * C_D = 0.24 + 0.18 S + 0.06 sin(pi (Re - 90,000) / 200,000), C_L = 0.54 S^0.4 with S = w r / V. Below Re 40,000, where
 * every chip lies and nothing spinning was measured, C_D is 0.47 and the lift weak; a smooth step joins them.
 */
export function aerodynamicAcceleration(air: Float64Array, motion: Float64Array, out: Float64Array): void {
  const ux = (motion[0] as number) - (air[2] as number);
  const uy = (motion[1] as number) - (air[3] as number);
  const vz = motion[2] as number;
  const wx = motion[3] as number;
  const wy = motion[4] as number;
  const wz = motion[5] as number;
  const speed = Math.sqrt(ux * ux + uy * uy + vz * vz);
  const reynolds = speed * (air[1] as number);
  const spin = motion[SPIN] as number;
  const surface = spin * BALL_RADIUS_M;
  let drag = CD_LOW;
  let liftPerSpin = surface > 0 ? (CL_LOW * BALL_RADIUS_M) / (surface + speed) : 0;
  if (reynolds > RE_LOW) {
    const ratio = Math.min(surface / speed, SPIN_RATIO_CAP);
    const high = 0.24 + 0.18 * ratio + 0.06 * sin((Math.PI * (Math.min(reynolds, 2.1e5) - 9e4)) / 2e5);
    const x = Math.min(1, (reynolds - RE_LOW) / (RE_HIGH - RE_LOW));
    const share = x * x * (3 - 2 * x);
    drag += (high - drag) * share;
    if (spin > 0) liftPerSpin += (smitsSmithLift(ratio) / spin - liftPerSpin) * share;
  }
  const k = (air[0] as number) * speed;
  const d = -k * drag;
  // Lift acts along spin x velocity; of length C_L V^2 however the axis lies, less what of it lies along the flight.
  const l = k * liftPerSpin;
  out[0] = d * ux + l * (wy * vz - wz * uy);
  out[1] = d * uy + l * (wz * ux - wx * vz);
  out[2] = d * vz + l * (wx * uy - wy * ux);
}

/** Share of its spin a ball loses per metre flown: 2e-5 / r (Smits & Smith 1994; from memory, agrees with a found restatement). */
export const SPIN_DECAY_PER_M = 2e-5 / BALL_RADIUS_M;
