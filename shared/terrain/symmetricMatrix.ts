/** Dense symmetric linear algebra on flat row-major arrays: just what a fit of some hundred readings takes. */

/**
 * Factors a symmetric positive definite matrix in place into L, lower triangle, with L L' = A. The strict upper triangle
 * is left as it was. Returns the log of the determinant, or NaN where the matrix is not positive definite.
 */
export function factorCholesky(a: Float64Array, n: number, log: (x: number) => number): number {
  let logDeterminant = 0;
  for (let i = 0; i < n; i += 1) {
    const rowI = i * n;
    for (let j = 0; j <= i; j += 1) {
      const rowJ = j * n;
      // Four sums side by side keep the adders busy; the order is fixed, so the result is too.
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let s3 = 0;
      let k = 0;
      for (; k + 3 < j; k += 4) {
        s0 += (a[rowI + k] as number) * (a[rowJ + k] as number);
        s1 += (a[rowI + k + 1] as number) * (a[rowJ + k + 1] as number);
        s2 += (a[rowI + k + 2] as number) * (a[rowJ + k + 2] as number);
        s3 += (a[rowI + k + 3] as number) * (a[rowJ + k + 3] as number);
      }
      for (; k < j; k += 1) s0 += (a[rowI + k] as number) * (a[rowJ + k] as number);
      const rest = (a[rowI + j] as number) - (s0 + s1 + (s2 + s3));
      if (i === j) {
        if (!(rest > 0)) return NaN;
        logDeterminant += log(rest);
        a[rowI + i] = Math.sqrt(rest);
      } else {
        a[rowI + j] = rest / (a[rowJ + j] as number);
      }
    }
  }
  return logDeterminant;
}

/** Solves L x = b in place of b, from row `from` on (the rows above must be zero in b). */
export function solveLower(l: Float64Array, n: number, b: Float64Array, from = 0): void {
  for (let i = from; i < n; i += 1) {
    const row = i * n;
    let s0 = 0;
    let s1 = 0;
    let k = from;
    for (; k + 1 < i; k += 2) {
      s0 += (l[row + k] as number) * (b[k] as number);
      s1 += (l[row + k + 1] as number) * (b[k + 1] as number);
    }
    if (k < i) s0 += (l[row + k] as number) * (b[k] as number);
    b[i] = ((b[i] as number) - (s0 + s1)) / (l[row + i] as number);
  }
}

/** Solves L' x = b in place of b. */
export function solveLowerTransposed(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i -= 1) {
    const row = i * n;
    const value = (b[i] as number) / (l[row + i] as number);
    b[i] = value;
    for (let k = 0; k < i; k += 1) b[k] = (b[k] as number) - value * (l[row + k] as number);
  }
}

/** Householder reflections Q = H0 H1 ... that bring the columns of a tall matrix to upper triangular form. */
export interface Reflections {
  readonly n: number;
  readonly columns: number;
  /** Reflection vectors, one after another, each of length n with unit length (zero above its own row). */
  readonly vectors: Float64Array;
  /** Upper triangle R, row-major columns x columns. */
  readonly triangle: Float64Array;
}

/** Reflections of a matrix given column by column (each of length n). The input is overwritten. */
export function reflectColumns(matrix: readonly Float64Array[], n: number): Reflections {
  const columns = matrix.length;
  const vectors = new Float64Array(columns * n);
  const triangle = new Float64Array(columns * columns);
  matrix.forEach((column, k) => {
    let norm2 = 0;
    for (let i = k; i < n; i += 1) norm2 += (column[i] as number) * (column[i] as number);
    const norm = Math.sqrt(norm2);
    const v = vectors.subarray(k * n, (k + 1) * n);
    for (let i = k; i < n; i += 1) v[i] = column[i] as number;
    v[k] = (v[k] as number) + ((column[k] as number) >= 0 ? norm : -norm);
    let length2 = 0;
    for (let i = k; i < n; i += 1) length2 += (v[i] as number) * (v[i] as number);
    const scale = length2 > 0 ? 1 / Math.sqrt(length2) : 0;
    for (let i = k; i < n; i += 1) v[i] = (v[i] as number) * scale;
    for (const other of matrix) reflect(v, other, k, n);
    for (let i = 0; i <= k; i += 1) triangle[i * columns + k] = column[i] as number;
  });
  return { n, columns, vectors, triangle };
}

function reflect(v: Float64Array, x: Float64Array, from: number, n: number): void {
  let dot = 0;
  for (let i = from; i < n; i += 1) dot += (v[i] as number) * (x[i] as number);
  dot *= 2;
  for (let i = from; i < n; i += 1) x[i] = (x[i] as number) - dot * (v[i] as number);
}

/** Q' x in place. */
export function applyTransposed(q: Reflections, x: Float64Array): void {
  for (let k = 0; k < q.columns; k += 1) reflect(q.vectors.subarray(k * q.n, (k + 1) * q.n), x, k, q.n);
}

/** Q x in place. */
export function apply(q: Reflections, x: Float64Array): void {
  for (let k = q.columns - 1; k >= 0; k -= 1) reflect(q.vectors.subarray(k * q.n, (k + 1) * q.n), x, k, q.n);
}

/** Q' A Q in place, for symmetric A. */
export function applyBothSides(q: Reflections, a: Float64Array): void {
  const n = q.n;
  const p = new Float64Array(n);
  for (let k = 0; k < q.columns; k += 1) {
    const v = q.vectors.subarray(k * n, (k + 1) * n);
    let inner = 0;
    for (let i = 0; i < n; i += 1) {
      let sum = 0;
      for (let j = k; j < n; j += 1) sum += (a[i * n + j] as number) * (v[j] as number);
      p[i] = 2 * sum;
      inner += 2 * sum * (v[i] as number);
    }
    for (let i = 0; i < n; i += 1) p[i] = (p[i] as number) - inner * (v[i] as number);
    for (let i = 0; i < n; i += 1) {
      const vi = v[i] as number;
      const pi = p[i] as number;
      for (let j = 0; j < n; j += 1) {
        a[i * n + j] = (a[i * n + j] as number) - vi * (p[j] as number) - pi * (v[j] as number);
      }
    }
  }
}
