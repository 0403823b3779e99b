import { InputProblem } from '../../words/inputProblem.ts';

/** What a column of a point list can hold. */
export const csvRoles = {
  point: /^(point|pt|id|name|no|number|station|punkt)$/,
  lon: /^(lon|long|longitude|lng|lon_?deg|x_?lon)$/,
  lat: /^(lat|latitude|lat_?deg|y_?lat)$/,
  east: /^(e|x|east|easting|east_?m|rechts)$/,
  north: /^(n|y|north|northing|north_?m|hoch)$/,
  heightM: /^(h|z|height|elevation|elev|ele|alt|altitude|level|rl|height_?m|elevation_?m|height_?ft)$/,
  slopePct: /^(slope|slope_?pct|grade|slope_?%|slope_?percent)$/,
  slopeDeg: /^(slope_?deg|angle|angle_?deg)$/,
  bearingDeg: /^(bearing|bearing_?deg|aspect|direction|downhill|downhill_?bearing_?deg)$/,
  accuracy: /^(accuracy|accuracy_?m|accuracy_?pct|sd|sigma|precision)$/,
  back: /^(bs|back|back_?sight|backsight)$/,
  between: /^(is|intermediate|intermediate_?sight|between)$/,
  fore: /^(fs|fore|fore_?sight|foresight)$/,
} as const;

export type CsvRole = keyof typeof csvRoles;

/** Which column holds what: guessed from the headings, overruled by `chosen` (role to heading). @throws InputProblem */
export function csvColumns(
  headings: readonly string[],
  chosen: Readonly<Record<string, string>>,
  fileName: string,
): ReadonlyMap<CsvRole, number> {
  const roles = Object.keys(csvRoles) as CsvRole[];
  const columns = new Map<CsvRole, number>();
  const spelt = headings.map((heading) =>
    heading
      .toLowerCase()
      .replace(/\((.*?)\)|\[(.*?)\]/g, '')
      .trim()
      .replaceAll(/[\s.-]+/g, '_'),
  );
  for (const role of roles) {
    const found = spelt.findIndex((heading) => csvRoles[role].test(heading));
    if (found >= 0) columns.set(role, found);
  }
  for (const [role, heading] of Object.entries(chosen)) {
    const known = roles.find((one) => one === role);
    if (known === undefined)
      throw new InputProblem(
        'unknown-column',
        `"${role}" is nothing a column can hold.`,
        fileName,
        `Use one of: ${roles.join(', ')}.`,
      );
    const found = headings.findIndex((one) => one.toLowerCase() === heading.toLowerCase());
    if (heading === '') columns.delete(known);
    else if (found < 0)
      throw new InputProblem(
        'unknown-column',
        `it has no column "${heading}".`,
        fileName,
        `Its columns are: ${headings.join(', ')}.`,
      );
    else {
      // A column holds one thing: what it was guessed to be gives way.
      for (const [other, column] of columns) if (column === found) columns.delete(other);
      columns.set(known, found);
    }
  }
  return columns;
}
