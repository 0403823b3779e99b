export type Column = readonly [heading: string, align: 'left' | 'right'];

/** Text in columns under headings, two spaces apart. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(([heading], i) =>
    Math.max(heading.length, ...rows.map((row) => (row[i] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(([, align], i) => {
        const cell = cells[i] ?? '';
        const width = widths[i] ?? 0;
        return align === 'left' ? cell.padEnd(width) : cell.padStart(width);
      })
      .join('  ')
      .trimEnd();
  return [line(columns.map(([heading]) => heading)), ...rows.map(line)].join('\n');
}
