import { textOf } from '../import/limits.ts';
import { csvColumns, type CsvRole, csvRoles } from './csvColumns.ts';
import { readCsvTable } from './csvTable.ts';

/** What a list of points looks like, to choose its columns by. */
export interface CsvPeek {
  readonly headings: readonly string[];
  /** The first rows, cell by cell. */
  readonly rows: readonly (readonly string[])[];
  readonly rowCount: number;
  /** What each column is taken for: heading to role. */
  readonly columns: Readonly<Record<string, CsvRole>>;
}

const SHOWN_ROWS = 4;

/** The head of a list of points, with the columns as they are taken by now. Throws InputProblem as reading it does. */
export function csvPeek(
  content: Uint8Array,
  fileName: string,
  chosen: Readonly<Record<string, string>>,
): CsvPeek {
  const { headings, rows } = readCsvTable(textOf(content, fileName), fileName);
  const columns = csvColumns(headings, chosen, fileName);
  return {
    headings,
    rows: rows.slice(0, SHOWN_ROWS).map(({ cells }) => cells),
    rowCount: rows.length,
    columns: Object.fromEntries([...columns].map(([role, at]) => [headings[at] ?? '', role])),
  };
}

export const csvRoleNames = Object.keys(csvRoles) as readonly CsvRole[];
