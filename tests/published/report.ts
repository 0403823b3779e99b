import { checkGroups } from './groups.ts';
import { type CheckRow, verdict } from './row.ts';

const number = (value: number): string =>
  Math.abs(value) >= 1e5 ? value.toFixed(1) : String(Number(value.toPrecision(6)));
const expected = (row: CheckRow): string =>
  typeof row.expected === 'number'
    ? number(row.expected)
    : `${number(row.expected[0])} to ${number(row.expected[1])}`;

let unexplained = 0;
for (const group of await checkGroups()) {
  console.log(`\n${group.title}\n${'-'.repeat(group.title.length)}`);
  for (const row of group.measure()) {
    const result = verdict(row);
    if ((result === 'misses') !== (row.misfit !== undefined)) unexplained += 1;
    console.log(
      `${result.padEnd(7)} ${row.quantity}: expected ${expected(row)}, ours ${number(row.ours)} ${row.unit} (tolerance ${number(row.tolerance)})${row.fittedHere === true ? ' [fitted on this row]' : ''}`,
    );
    console.log(`        source: ${row.source} [${row.mark}]`);
    if (row.misfit !== undefined) console.log(`        misfit: ${row.misfit}`);
    if (row.note !== undefined) console.log(`        note: ${row.note}`);
  }
}
if (unexplained > 0) {
  console.error(`\n${String(unexplained)} rows do not come out as stated.`);
  process.exitCode = 1;
}
