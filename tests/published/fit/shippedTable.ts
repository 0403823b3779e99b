/** A constant that a fit came to, beside the one that ships. */
export interface FittedConstant {
  readonly name: string;
  readonly shipped: number;
  readonly fitted: number;
  /** Decimals it ships with: it agrees where it rounds to what ships. */
  readonly decimals: number;
}

/** Room for a fit that lies on the edge of rounding, in units of the last decimal. */
const EDGE = 1e-6;

export const agrees = ({ shipped, fitted, decimals }: FittedConstant): boolean =>
  Math.abs(fitted - shipped) <= (0.5 + EDGE) * 10 ** -decimals;

/** Prints the constants with what ships, and makes the script fail where any of them is another. */
export function compareWithShipped(constants: readonly FittedConstant[]): void {
  const wide = Math.max(...constants.map(({ name }) => name.length));
  console.log(`\n${'constant'.padEnd(wide)}  shipped   fitted  agrees`);
  for (const constant of constants) {
    const { name, shipped, fitted, decimals } = constant;
    // One decimal more than ships, to show how near it is.
    const [a, b] = [shipped.toFixed(decimals), fitted.toFixed(decimals + 1)];
    const verdict = agrees(constant) ? 'yes' : 'NO';
    console.log(`${name.padEnd(wide)}  ${a.padStart(7)}  ${b.padStart(7)}  ${verdict}`);
  }
  const apart = constants.filter((constant) => !agrees(constant)).length;
  if (apart === 0) return;
  console.error(`${String(apart)} of ${String(constants.length)} do not round to what ships.`);
  process.exitCode = 1;
}
