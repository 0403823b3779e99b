import { InputProblem } from '../../words/inputProblem.ts';

export interface CsvTable {
  readonly headings: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
  /** Whether numbers have a decimal comma. */
  readonly decimalComma: boolean;
}

const MOST_ROWS = 200_000;

/** Text with separators as a table: commas, semicolons, tabs or runs of blanks, quoted cells, a heading or none. */
export function readCsvTable(text: string, fileName: string): CsvTable {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const sample = plain
    .slice(0, 4096)
    .split(/\r?\n|\r/)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const first = sample[0] ?? '';
  const separator = ['\t', ';', ','].find((one) => first.includes(one)) ?? ' ';
  const rows = cellsOf(plain, separator, fileName).filter(
    ({ cells }) => cells.some((cell) => cell !== '') && !(cells[0] ?? '').startsWith('#'),
  );
  const [head, ...rest] = rows;
  if (head === undefined)
    throw new InputProblem('file-empty', 'there is no row in it.', fileName, 'Choose another file.');
  const numeric = (cell: string): boolean => /^[+-]?[\d.,]+(e[+-]?\d+)?$/i.test(cell);
  const headed = !head.cells.every((cell) => cell === '' || numeric(cell));
  const body = headed ? rest : rows;
  const width = head.cells.length;
  const ragged = body.find(({ cells }) => cells.length !== width);
  if (ragged !== undefined)
    throw new InputProblem(
      'ragged-row',
      `it has ${String(ragged.cells.length)} cells where the first row has ${String(width)}.`,
      `${fileName}, line ${String(ragged.line)}`,
      'Complete the row; a file that ends so was cut short.',
    );
  const decimalComma =
    separator !== ',' && body.some(({ cells }) => cells.some((cell) => /^[+-]?\d+,\d+$/.test(cell)));
  return {
    headings: headed ? head.cells : head.cells.map((_, i) => `column ${String(i + 1)}`),
    rows: body,
    decimalComma,
  };
}

function cellsOf(text: string, separator: string, fileName: string): { line: number; cells: string[] }[] {
  const rows: { line: number; cells: string[] }[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let line = 1;
  let rowLine = 1;
  const endCell = (): void => {
    cells.push(cell.trim());
    cell = '';
  };
  const endRow = (): void => {
    endCell();
    rows.push({ line: rowLine, cells: separator === ' ' ? cells.filter((one) => one !== '') : cells });
    cells = [];
    if (rows.length > MOST_ROWS)
      throw new InputProblem(
        'too-many',
        `it has more than ${String(MOST_ROWS)} rows.`,
        fileName,
        'Cut out the course.',
      );
  };
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charAt(i);
    if (c === '\n') line += 1;
    if (quoted) {
      if (c === '"' && text.charAt(i + 1) === '"') {
        cell += '"';
        i += 1;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"' && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (c === separator) endCell();
    else if (c === '\n' || c === '\r') {
      if (c === '\r' && text.charAt(i + 1) === '\n') continue;
      endRow();
      rowLine = line;
    } else cell += c;
  }
  if (quoted)
    throw new InputProblem(
      'file-truncated',
      'a quotation mark is not closed.',
      `${fileName}, line ${String(rowLine)}`,
      'It was cut short, or a mark is missing.',
    );
  if (cell !== '' || cells.length > 0) endRow();
  return rows;
}
