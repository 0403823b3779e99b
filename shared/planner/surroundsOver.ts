import { techniques } from '../words/vocabulary.ts';
import type { SurroundsMap } from './surroundsMap.ts';

const NOTHING = 255;

/**
 * The maps of several flags of one hole as one: mean strokes over the flags, and the technique that is the plain choice for
 * most of them, the simpler one where two are chosen equally often. Cells are those of the first map widened over all of
 * them; a cell that some map does not reach goes by those that do, and out of play for one is out of play for all.
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
  const strokes = new Float32Array(columns * rows).fill(NaN);
  const simple = new Uint8Array(columns * rows).fill(NOTHING);
  const votes = new Uint16Array(techniques.length);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const eastM = westM + (column + 0.5) * cellM;
      const northM = southM + (row + 0.5) * cellM;
      let sum = 0;
      let reached = 0;
      votes.fill(0);
      for (const map of maps) {
        const c = Math.floor((eastM - map.westM) / cellM);
        const r = Math.floor((northM - map.southM) / cellM);
        if (c < 0 || r < 0 || c >= map.columns || r >= map.rows) continue;
        sum += map.strokes[r * map.columns + c] ?? NaN;
        reached += 1;
        const code = map.simple[r * map.columns + c] ?? NOTHING;
        if (code !== NOTHING) votes[code] = (votes[code] ?? 0) + 1;
      }
      const k = row * columns + column;
      if (reached > 0) strokes[k] = sum / reached;
      let most = 0;
      for (const [code, count] of votes.entries()) {
        if (count <= most) continue;
        most = count;
        simple[k] = code;
      }
    }
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
  };
}
