import { coverCode } from '../words/vocabulary.ts';
import { markSand } from './bunkerChange.ts';
import { BLOCK_BITS, type GroundReads, nothingRead, packed } from './groundReads.ts';
import type { GroundObstacle } from './obstacles.ts';
import type { Surface } from './surface.ts';
import type { SurveyedGround } from './surveyedGround.ts';
import type { TerrainInput } from './terrainInput.ts';

/** A ground with what it was made from. */
export interface MadeGround {
  readonly input: TerrainInput;
  readonly ground: SurveyedGround<Surface>;
}

const GREEN = coverCode('green');
const FRINGE = coverCode('fringe');
/**
 * How far from an obstacle a ball may be noted that meets it, metres: in the air as a flight keeps beside it; on the
 * ground as the longest piece of a roll goes, with room for where that piece was looked at, and as far from the circle
 * about it as a ball comes down that is said to have struck it.
 */
const BESIDE_IN_AIR_M = 0.5;
const BESIDE_ON_GROUND_M = 3;

/**
 * The blocks (packed, as in `GroundReads`) where a ball could tell two grounds apart: whatever looked at none of them comes
 * out the same on either, bit for bit. Null where that may be anywhere: another box, another fit of the heights, another
 * grain, or a change to where green or fringe lies. The two must stand on one surface, the same object, to be compared at all.
 */
export function groundChange(before: MadeGround, after: MadeGround): Uint8Array | null {
  const [a, b] = [before.ground, after.ground];
  const sameBox = (['westM', 'southM', 'eastM', 'northM'] as const).every(
    (side) => a.extent[side] === b.extent[side],
  );
  if (!sameBox || a.surface !== b.surface) return null;
  if (textOf(greensOf(before)) !== textOf(greensOf(after))) return null;
  const { reads } = b;
  const changed = nothingRead(reads);
  const things = apart(a.obstacles.map(plainObstacle), b.obstacles.map(plainObstacle));
  if (things === null || !markCover(a, b, changed)) return null;
  markSand(before, after, changed);
  for (const { ring } of things) {
    const box = boxOf(
      ring.filter((_, i) => i % 2 === 0),
      ring.filter((_, i) => i % 2 === 1),
    );
    markGround(reads, changed, aboutMiddle(ring), BESIDE_ON_GROUND_M);
    markAir(reads, changed, box);
  }
  if (a.obstacles.length > 0 !== b.obstacles.length > 0) changed[changed.length - 1] = 1;
  return packed(changed);
}

const greensOf = ({ input }: MadeGround) =>
  input.areas.filter(({ kind }) => kind === 'green').map(({ polygon, grain }) => ({ polygon, grain }));

/** Names are not of the ground. */
const plainObstacle = ({ kind, ringM, bottomM, topM }: GroundObstacle) => ({
  kind,
  ring: Array.from(ringM),
  bottomM,
  topM,
});

const textOf = (value: unknown): string => JSON.stringify(value);

/** What only one of two lists has; null where the rest does not stand in the same order. */
function apart<T>(before: readonly T[], after: readonly T[]): readonly T[] | null {
  const texts = [before.map(textOf), after.map(textOf)] as const;
  const [inBefore, inAfter] = [new Set(texts[0]), new Set(texts[1])];
  const shared = [texts[0].filter((one) => inAfter.has(one)), texts[1].filter((one) => inBefore.has(one))];
  if (textOf(shared[0]) !== textOf(shared[1])) return null;
  return [
    ...before.filter((_, i) => !inAfter.has(texts[0][i] ?? '')),
    ...after.filter((_, i) => !inBefore.has(texts[1][i] ?? '')),
  ];
}

/** Marks the blocks in which a cell has another cover; false where green or fringe has come or gone. */
function markCover(a: MadeGround['ground'], b: MadeGround['ground'], changed: Uint8Array): boolean {
  const { codes, columns } = b.cover;
  const old = a.cover.codes;
  const { columns: across } = b.reads;
  for (let k = 0; k < codes.length; k += 1) {
    const [was, is] = [old[k] as number, codes[k] as number];
    if (was === is) continue;
    if (was === GREEN || is === GREEN || was === FRINGE || is === FRINGE) return false;
    const column = k % columns;
    changed[(((k - column) / columns) >> BLOCK_BITS) * across + (column >> BLOCK_BITS)] = 1;
  }
  return true;
}

type Box = readonly [west: number, south: number, east: number, north: number];

const boxOf = (east: readonly number[], north: readonly number[]): Box => [
  Math.min(...east),
  Math.min(...north),
  Math.max(...east),
  Math.max(...north),
];

/** The box about the circle that holds all corners and lies about their middle (as `whatWasStruck` draws it). */
function aboutMiddle(ring: readonly number[]): Box {
  const corners = ring.length / 2;
  const at = (k: number): readonly [number, number] => [ring[2 * k] ?? 0, ring[2 * k + 1] ?? 0];
  let [east, north, reach] = [0, 0, 0];
  for (let k = 0; k < corners; k += 1) {
    east += at(k)[0] / corners;
    north += at(k)[1] / corners;
  }
  for (let k = 0; k < corners; k += 1) {
    const [x, y] = at(k);
    reach = Math.max(reach, Math.sqrt((x - east) * (x - east) + (y - north) * (y - north)));
  }
  return [east - reach, north - reach, east + reach, north + reach];
}

function markGround(reads: GroundReads, changed: Uint8Array, box: Box, besideM: number): void {
  const { columns, rows, blockM } = reads;
  markBlocks(reads, changed, { columns, rows, blockM, from: 0 }, box, besideM);
}

function markAir(reads: GroundReads, changed: Uint8Array, box: Box): void {
  const { airColumns, airRows, airPerM, airFrom } = reads;
  const blocks = { columns: airColumns, rows: airRows, blockM: 1 / airPerM, from: airFrom };
  markBlocks(reads, changed, blocks, box, BESIDE_IN_AIR_M);
}

/** Marks the blocks that a box, widened, meets; a box beyond the edge marks the blocks at the edge. */
function markBlocks(
  { westM, southM }: GroundReads,
  changed: Uint8Array,
  blocks: { readonly columns: number; readonly rows: number; readonly blockM: number; readonly from: number },
  [west, south, east, north]: Box,
  besideM: number,
): void {
  const { columns, rows, blockM, from } = blocks;
  const within = (atM: number, startM: number, count: number): number =>
    Math.min(count - 1, Math.max(0, Math.floor((atM - startM) / blockM)));
  const last = within(east + besideM, westM, columns);
  const top = within(north + besideM, southM, rows);
  for (let row = within(south - besideM, southM, rows); row <= top; row += 1) {
    for (let column = within(west - besideM, westM, columns); column <= last; column += 1) {
      changed[from + row * columns + column] = 1;
    }
  }
}
