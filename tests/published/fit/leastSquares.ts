/**
 * Least squares by Gauss-Newton with finite differences, the same work every time: `rounds` steps of `damping` from a
 * start, each difference taken over its own `step`.
 */
export function leastSquares(
  residuals: (at: readonly number[]) => readonly number[],
  start: readonly number[],
  steps: readonly number[],
  rounds: number,
  damping: number,
): readonly number[] {
  let at = start;
  const count = start.length;
  for (let round = 0; round < rounds; round += 1) {
    const here = residuals(at);
    const columns = steps.map((step, i) => {
      const there = residuals(at.map((value, k) => (k === i ? value + step : value)));
      return there.map((r, k) => r - (here[k] ?? 0));
    });
    // Normal equations in steps, by elimination; a little on the diagonal keeps what nothing tells apart in place.
    const rows = columns.map((a, i) => [
      ...columns.map((b, k) => dot(a, b) + (i === k ? 1e-9 : 0)),
      -dot(a, here),
    ]);
    for (let i = 0; i < count; i += 1) {
      const pivot = rows[i] ?? [];
      for (let k = 0; k < count; k += 1) {
        if (k === i) continue;
        const share = (rows[k]?.[i] ?? 0) / (pivot[i] ?? 1);
        rows[k] = (rows[k] ?? []).map((value, j) => value - share * (pivot[j] ?? 0));
      }
    }
    at = at.map(
      (value, i) => value + damping * (steps[i] ?? 0) * ((rows[i]?.[count] ?? 0) / (rows[i]?.[i] ?? 1)),
    );
  }
  return at;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * (b[k] ?? 0), 0);
