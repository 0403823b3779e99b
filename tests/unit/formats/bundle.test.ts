import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { atlasDocument, recordsOf, sameDocument } from '../../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { readAtlasContent, writeBundle } from '../../../shared/formats/bundle.ts';
import { pictureHeader } from '../../../shared/formats/pictureFile.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { processorMs } from '../../helpers/processorMs.ts';

const folder = resolve(import.meta.dirname, '../../fixtures');
const text = readFileSync(resolve(folder, 'format-4.geojson'), 'utf8');
const hashed = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');
const sha256 = (content: Uint8Array): Promise<string> => Promise.resolve(hashed(content));

/** One red point, as a PNG. */
const png = new Uint8Array(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
    'base64',
  ),
);
const withPicture = (content: Uint8Array): AtlasDocument => {
  const { records } = readAtlasFile(text, 'fixture');
  return atlasDocument(
    [...records.values()].map((record) =>
      record.type === 'picture' ? { ...record, sha256: hashed(content), mediaType: 'image/png' } : record,
    ),
  );
};

const refusal = async (content: Uint8Array): Promise<InputProblem> => {
  try {
    await readAtlasContent(content, 'b.zip', sha256);
  } catch (problem) {
    if (problem instanceof InputProblem) return problem;
    throw problem;
  }
  throw new Error('it was read');
};

/** The archive with another unpacked size stated for its last entry. */
function stating(archive: Uint8Array, size: number): Uint8Array {
  const changed = Buffer.from(archive);
  changed.writeUInt32LE(size, changed.lastIndexOf(Buffer.from('PK\u0001\u0002', 'latin1')) + 24);
  return new Uint8Array(changed);
}

describe('a bundle of an atlas with its pictures', () => {
  it('comes back as it was, and is the same bytes each time', async () => {
    const document = withPicture(png);
    const [picture] = recordsOf(document, 'picture');
    const twice = atlasDocument([
      ...document.records.values(),
      ...(picture === undefined ? [] : [{ ...picture, id: 'again', name: 'the same file, laid twice' }]),
    ]);
    const content = writeBundle(twice, new Map([[hashed(png), png]]));
    expect(writeBundle(twice, new Map([[hashed(png), png]]))).toEqual(content);
    const read = await readAtlasContent(content, 'b.zip', sha256);
    expect(sameDocument(read.document, twice)).toBe(true);
    expect([...read.pictures]).toEqual([[hashed(png), png]]);
    expect(read.damaged).toEqual([]);
  });

  it('opens without a picture that is missing, and tells of one that is not what its name says', async () => {
    const document = withPicture(png);
    const missing = await readAtlasContent(writeBundle(document, new Map()), 'b.zip', sha256);
    expect([missing.pictures.size, missing.damaged.length]).toEqual([0, 0]);
    const other = await readAtlasContent(
      writeBundle(document, new Map([[hashed(png), png.slice(0, 40)]])),
      'b.zip',
      sha256,
    );
    expect(other.pictures.size).toBe(0);
    expect(other.damaged).toEqual(['b.zip: a picture in it is not what its name says.']);
    expect(sameDocument(other.document, document)).toBe(true);
    const broken = writeBundle(document, new Map([[hashed(png), png]]));
    const at = Buffer.from(broken).indexOf(Buffer.from(png));
    broken.fill(0, at + 20, at + 30);
    const read = await readAtlasContent(broken, 'b.zip', sha256);
    expect(read.pictures.size).toBe(0);
    expect(read.damaged[0]).toContain('damaged');
  });

  it('reads a plain atlas file as before', async () => {
    const plain = await readAtlasContent(new TextEncoder().encode(text), 'a.geojson', sha256);
    expect(sameDocument(plain.document, readAtlasFile(text, 'a'))).toBe(true);
    await expect(readAtlasContent(Uint8Array.of(0xff, 0xfe, 0), 'a', sha256)).rejects.toMatchObject({
      code: 'file-not-text',
    });
  });

  it('refuses with a reason what is no bundle of ours, quickly', async () => {
    const atlas = strToU8(text);
    const began = processorMs();
    const refused: Readonly<Record<string, Uint8Array>> = {
      'foreign-file': zipSync({ 'pictures/': [] as never }),
      'archive-path': zipSync({ 'atlas.geojson': atlas, '../../evil.png': png }),
      'foreign-entry': zipSync({ 'atlas.geojson': atlas, 'notes.txt': strToU8('mine') }),
      'archive-broken': writeBundle(withPicture(png), new Map()).slice(0, 900),
      'archive-too-large': stating(zipSync({ 'atlas.geojson': atlas }), 80 * 1024 * 1024),
    };
    for (const [code, content] of Object.entries(refused))
      expect([code, (await refusal(content)).code]).toEqual([code, code]);
    // A picture that says it is small and unpacks to far more, and one that says how large it is, stay where they are.
    const name = `pictures/${'0'.repeat(64)}.png`;
    const bomb = zipSync({ 'atlas.geojson': atlas, [name]: [new Uint8Array(8 * 1024 * 1024), { level: 9 }] });
    for (const size of [100, 200 * 1024 * 1024]) {
      const read = await readAtlasContent(stating(bomb, size), 'b.zip', sha256);
      expect([read.pictures.size, read.damaged.length, read.document.records.size > 5]).toEqual([0, 1, true]);
    }
    expect(processorMs() - began).toBeLessThan(10_000);
  });
});

describe('the head of a picture', () => {
  const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
    new Uint8Array(
      parts.flatMap((part) => (typeof part === 'string' ? [...Buffer.from(part, 'latin1')] : [...part])),
    );
  const filled = new Array<number>(20).fill(0);

  it('tells its kind and size', () => {
    const jpeg = bytes(
      [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xff, 0xdb, 0, 3, 9, 0xff, 0xc2, 0, 17, 8],
      [0x0b, 0xb8, 0x0f, 0xa0, 3],
      filled,
    );
    expect(pictureHeader(jpeg, 'p')).toEqual({ mediaType: 'image/jpeg', widthPx: 4000, heightPx: 3000 });
    const webp = bytes(
      'RIFF',
      [0, 0, 0, 0],
      'WEBPVP8X',
      [10, 0, 0, 0, 0, 0, 0, 0, 0x9f, 0x0f, 0, 0xb7, 0x0b, 0],
      filled,
    );
    expect(pictureHeader(webp, 'p')).toEqual({ mediaType: 'image/webp', widthPx: 4000, heightPx: 3000 });
    const lossless = bytes(
      'RIFF',
      [0, 0, 0, 0],
      'WEBPVP8L',
      [0, 0, 0, 0, 0x2f, 0x9f, 0xcf, 0xed, 0x02],
      filled,
    );
    expect(pictureHeader(lossless, 'p')).toEqual({ mediaType: 'image/webp', widthPx: 4000, heightPx: 3000 });
    const large = bytes(
      '\x89PNG\r\n\x1a\n',
      [0, 0, 0, 13],
      'IHDR',
      [0, 0, 0x75, 0x30, 0, 0, 0x75, 0x30],
      filled,
    );
    expect(() => pictureHeader(large, 'big.png')).toThrow('30000 by 30000 pixels');
    expect(() => pictureHeader(png, 'dot.png')).toThrow('nothing in the picture');
    for (const odd of [new Uint8Array(), strToU8('<svg onload="alert(1)"/>'), jpeg.slice(0, 12)])
      expect(() => pictureHeader(odd, 'p')).toThrow('not a picture that can be shown');
  });
});
