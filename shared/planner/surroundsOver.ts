import { DEPENDS_ON_FLAG, NOT_REACHED, NOTHING_PLAIN, type SurroundsMap } from './surroundsMap.ts';

/**
 * The maps of several flags of one hole as one: mean strokes over the flags, and the plain choice where all of them ask
 * for the same, DEPENDS_ON_FLAG where they do not. Cells are those of the first map widened over all of them; a cell that
 * some map does not reach goes by those that do, and out of play for one is out of play for all.
 */
export function surroundsOver(maps: readonly SurroundsMap[]): SurroundsMap {
  const [first, ...others] = maps;
  if (first === undefined) throw new RangeError('no maps to put together');
  if (others.length === 0) return first;
  const { cellM } = first;
  const cells = (spanM: number): number => Math.ceil(spanM / cellM - 1e-9);
  const beforeWest = cells(first.westM - Math.min(...maps.map(({ westM }) => westM)));
  const beforeSouth = cells(first.southM - Math.min(...maps.map(({ southM }) => southM)));
  const westM = first.westM - beforeWest * cellM;
  const southM = first.southM - beforeSouth * cellM;
  const columns = cells(Math.max(...maps.map((map) => map.westM + map.columns * cellM)) - westM);
  const rows = cells(Math.max(...maps.map((map) => map.southM + map.rows * cellM)) - southM);
  const count = columns * rows;
  const strokes = new Float32Array(count);
  const simple = new Uint8Array(count).fill(NOTHING_PLAIN);
  const reached = new Uint16Array(count);
  const perFlag = maps.map((map) => {
    const own = new Uint8Array(count).fill(NOT_REACHED);
    for (let k = 0; k < count; k += 1) {
      const column = k % columns;
      const c = Math.floor((westM + (column + 0.5) * cellM - map.westM) / cellM);
      const r = Math.floor((southM + ((k - column) / columns + 0.5) * cellM - map.southM) / cellM);
      if (c < 0 || r < 0 || c >= map.columns || r >= map.rows) continue;
      const code = map.simple[r * map.columns + c] ?? NOTHING_PLAIN;
      own[k] = code;
      if (reached[k] === 0) simple[k] = code;
      else if (simple[k] !== code) simple[k] = DEPENDS_ON_FLAG;
      strokes[k] = (strokes[k] ?? 0) + (map.strokes[r * map.columns + c] ?? NaN);
      reached[k] = (reached[k] ?? 0) + 1;
    }
    return { flagId: map.flagId, simple: own };
  });
  for (let k = 0; k < count; k += 1) {
    const value = (strokes[k] ?? NaN) / (reached[k] ?? 0);
    strokes[k] = value;
    if (Number.isNaN(value)) simple[k] = NOTHING_PLAIN;
  }
  return {
    flagId: maps.map(({ flagId }) => flagId).join(' '),
    westM,
    southM,
    cellM,
    columns,
    rows,
    strokes,
    simple,
    perFlag,
  };
}
