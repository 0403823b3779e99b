import { pow } from '../numeric/elementary.ts';
import { type Air, standardAir } from './aerodynamics.ts';
import { GRAVITY_MPS2 } from './constants.ts';

/** What a person knows of the air; what is left out is as in the standard atmosphere. */
export interface AirSaid {
  readonly heightAboveSeaM?: number;
  readonly temperatureC?: number;
}

/** Standard atmosphere (ISO 2533, from memory): kelvin and pascal at sea level, kelvin lost a metre, gas constant of dry air. */
const SEA_LEVEL_K = 288.15;
const SEA_LEVEL_PA = 101_325;
const LAPSE_K_PER_M = 0.0065;
const GAS_CONSTANT = 287.05287;
const ZERO_CELSIUS_K = 273.15;
const EARTH_RADIUS_M = 6_356_766;

/** The temperature of the standard atmosphere at a height, degrees C. */
export const standardTemperatureC = (heightAboveSeaM: number): number =>
  SEA_LEVEL_K - ZERO_CELSIUS_K - LAPSE_K_PER_M * heightAboveSeaM;

/**
 * Density and viscosity of dry air at the standard pressure of its height: rho = p / (R T), and Sutherland's formula
 * 1.458e-6 T^1.5 / (T + 110.4) over rho (US Standard Atmosphere 1976, from memory). What the weather does to the pressure
 * is up to 3 % either way, and damp air is lighter by up to 2 % on a hot day: neither is asked for, nor is what warmth does
 * to the ball itself. With nothing said it is `standardAir` to the last bit.
 */
export function airOf({ heightAboveSeaM, temperatureC }: AirSaid): Pick<Air, 'densityKgM3' | 'viscosityM2s'> {
  if (heightAboveSeaM === undefined && temperatureC === undefined) return standardAir;
  const height = heightAboveSeaM ?? 0;
  const kelvin = ZERO_CELSIUS_K + (temperatureC ?? standardTemperatureC(height));
  const exponent = GRAVITY_MPS2 / (GAS_CONSTANT * LAPSE_K_PER_M);
  // Gravity weakens with height; the formula takes it as even over a height that is so much less.
  const evenM = (EARTH_RADIUS_M * height) / (EARTH_RADIUS_M + height);
  const pressure = SEA_LEVEL_PA * pow(1 - (LAPSE_K_PER_M * evenM) / SEA_LEVEL_K, exponent);
  const densityKgM3 = pressure / (GAS_CONSTANT * kelvin);
  return { densityKgM3, viscosityM2s: (1.458e-6 * pow(kelvin, 1.5)) / (kelvin + 110.4) / densityKgM3 };
}
