import type { Inflate, Unzlib } from 'fflate/browser';

/** What is unpacked at a time, so that a block that holds too much is noticed early. */
const PIECE_BYTES = 65_536;

/**
 * Unpacks into a buffer of the promised size. Throws RangeError as soon as more comes out than was promised, whatever the
 * packed size: a bomb goes no further than one piece.
 */
export function boundedInflate(inflater: Inflate | Unzlib, packed: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  let length = 0;
  inflater.ondata = (chunk) => {
    if (length + chunk.length > size) throw new RangeError('a block holds more than its header says');
    out.set(chunk, length);
    length += chunk.length;
  };
  for (let i = 0; i < packed.length; i += PIECE_BYTES)
    inflater.push(packed.subarray(i, i + PIECE_BYTES), i + PIECE_BYTES >= packed.length);
  return out;
}
