import { deflateSync } from 'node:zlib';
import { crc32 } from '../../../shared/formats/zip/crc32.ts';

/** A grey PNG: `shade` gives each pixel 0 black to 255 white, rows from the top. */
export function pngOf(width: number, height: number, shade: (x: number, y: number) => number): Buffer {
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) rows[y * (width + 1) + 1 + x] = shade(x, y);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const part = (name: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
    const ends = Buffer.alloc(8);
    ends.writeUInt32BE(data.length, 0);
    ends.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
  };
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    part('IHDR', head),
    part('IDAT', deflateSync(rows, { level: 1 })),
    part('IEND', Buffer.alloc(0)),
  ]);
}
