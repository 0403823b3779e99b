import type { CoverRaster } from './coverRaster.ts';

/**
 * Which ground has been looked at: a byte for each block of 8 x 8 cells of cover, row by row from the south-west; then one
 * for each block of 4 x 4 of those that a ball may have flown over; last whether it was asked if anything stands on the
 * ground at all. Blocks at the edge stand for all beyond. Whoever wants to know puts bytes of his own in `into` to look.
 */
export interface GroundReads {
  into: Uint8Array;
  readonly westM: number;
  readonly southM: number;
  readonly blockM: number;
  readonly columns: number;
  readonly rows: number;
  /** Of the blocks flown over: how many to a metre, and their rows. */
  readonly airPerM: number;
  readonly airColumns: number;
  readonly airRows: number;
  /** Where the blocks flown over begin. */
  readonly airFrom: number;
}

/** Cells of cover to the side of a block, as a power of two. */
export const BLOCK_BITS = 3;
const AIR_BLOCKS = 4;

export function groundReads({ westM, southM, cellM, columns, rows }: CoverRaster): GroundReads {
  const cells = 1 << BLOCK_BITS;
  const across = Math.ceil(columns / cells);
  const up = Math.ceil(rows / cells);
  const airColumns = Math.ceil(across / AIR_BLOCKS);
  const airRows = Math.ceil(up / AIR_BLOCKS);
  const airFrom = across * up;
  return {
    into: new Uint8Array(airFrom + airColumns * airRows + 1),
    westM,
    southM,
    blockM: cells * cellM,
    columns: across,
    rows: up,
    airPerM: 1 / (AIR_BLOCKS * cells * cellM),
    airColumns,
    airRows,
    airFrom,
  };
}

/** Bytes for a look of its own. */
export const nothingRead = ({ into }: GroundReads): Uint8Array => new Uint8Array(into.length);

export function noteAnythingStands({ into }: GroundReads): void {
  into[into.length - 1] = 1;
}

/** Eight to a byte, to keep. */
export function packed(bytes: Uint8Array): Uint8Array {
  const bits = new Uint8Array(Math.ceil(bytes.length / 8));
  for (let i = 0; i < bytes.length; i += 1) {
    if (bytes[i] !== 0) bits[i >> 3] = (bits[i >> 3] as number) | (1 << (i & 7));
  }
  return bits;
}

/** Notes all of a kept look once more. */
export function noteAgain(bits: Uint8Array, into: Uint8Array): void {
  for (let i = 0; i < bits.length; i += 1) {
    const eight = bits[i] as number;
    if (eight === 0) continue;
    for (let k = 0; k < 8; k += 1) if ((eight & (1 << k)) !== 0) into[8 * i + k] = 1;
  }
}

/** Whether two kept looks at the same ground have anything in common. */
export function meet(a: Uint8Array, b: Uint8Array): boolean {
  return a.some((eight, i) => (eight & (b[i] ?? 0)) !== 0);
}
