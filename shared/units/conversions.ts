/** Exact by definition: the international yard of 1959. */
export const METRES_PER_YARD = 0.9144;
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;
/** Metres per second in one mile per hour, kilometre per hour and knot. */
export const MPS_PER_MPH = 0.44704;
export const MPS_PER_KMH = 1 / 3.6;
export const MPS_PER_KNOT = 1852 / 3600;

export const yardsFromMetres = (lengthM: number): number => lengthM / METRES_PER_YARD;
export const metresFromYards = (yards: number): number => yards * METRES_PER_YARD;
export const feetFromMetres = (lengthM: number): number => lengthM / METRES_PER_FOOT;
export const metresFromFeet = (feet: number): number => feet * METRES_PER_FOOT;
export const inchesFromMetres = (lengthM: number): number => lengthM / METRES_PER_INCH;
export const metresFromInches = (inches: number): number => inches * METRES_PER_INCH;
export const pacesFromMetres = (lengthM: number, paceM: number): number => lengthM / paceM;
export const metresFromPaces = (paces: number, paceM: number): number => paces * paceM;
export const fahrenheitFromCelsius = (celsius: number): number => 32 + 1.8 * celsius;
export const celsiusFromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
export const mphFromMps = (speedMps: number): number => speedMps / MPS_PER_MPH;
export const mpsFromMph = (mph: number): number => mph * MPS_PER_MPH;
