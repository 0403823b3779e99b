import type { CsvRole } from '../../shared/formats/csv/csvColumns.ts';
import { type CsvPeek, csvRoleNames } from '../../shared/formats/csv/csvPeek.ts';

interface ColumnChooserProps {
  readonly csv: CsvPeek;
  /** Heading of the column that holds each thing; empty for a thing no column holds. */
  readonly choose: (columns: Readonly<Record<string, string>>) => void;
}

const roleWords: Readonly<Record<CsvRole, string>> = {
  point: 'name of the point',
  lon: 'longitude',
  lat: 'latitude',
  east: 'east',
  north: 'north',
  heightM: 'height',
  slopePct: 'slope, %',
  slopeDeg: 'slope, degrees',
  bearingDeg: 'bearing it falls in',
  accuracy: 'accuracy',
  back: 'back sight',
  between: 'sight between',
  fore: 'fore sight',
};

/** The first rows of a list with what each column holds, guessed from its heading and changed at will. */
export function ColumnChooser({ csv, choose }: ColumnChooserProps): React.JSX.Element {
  const { headings, rows, rowCount, columns } = csv;
  const set = (heading: string, role: string): void => {
    const next = Object.entries({ ...columns, [heading]: role }).filter(
      ([other, held]) => held !== '' && (other === heading || held !== role),
    );
    const byRole = new Map(next.map(([other, held]) => [held, other]));
    choose(Object.fromEntries(csvRoleNames.map((one) => [one, byRole.get(one) ?? ''])));
  };
  return (
    <div className="bringin-columns">
      <table>
        <caption>
          {rowCount.toLocaleString('en')} {rowCount === 1 ? 'row' : 'rows'}; say what each column holds
        </caption>
        <thead>
          <tr>
            {headings.map((heading, i) => (
              <th key={`${heading} ${String(i)}`} scope="col">
                <span>{heading}</span>
                <select
                  aria-label={`${heading} holds`}
                  value={columns[heading] ?? ''}
                  onChange={({ target }) => set(heading, target.value)}
                >
                  <option value="">nothing wanted</option>
                  {csvRoleNames.map((role) => (
                    <option key={role} value={role}>
                      {roleWords[role]}
                    </option>
                  ))}
                </select>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, r) => (
            <tr key={r}>
              {cells.map((cell, c) => (
                <td key={c}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
