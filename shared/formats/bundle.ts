import { strToU8, zipSync } from 'fflate/browser';
import { recordsOf } from '../atlas/document.ts';
import type { AtlasDocument, PictureMediaType } from '../atlas/records.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { emptyFile, MOST_TEXT_BYTES, textOf } from './import/limits.ts';
import { MOST_PICTURE_BYTES } from './pictureFile.ts';
import { readAtlasFile, type ReadOptions } from './readAtlasFile.ts';
import { writeAtlasFile } from './writeAtlasFile.ts';
import { leavesFolder, readZip } from './zip/readZip.ts';

/*
 * The bundle: a zip archive of an atlas with its pictures.
 *
 *   atlas.geojson                 the atlas file, as it would be saved alone
 *   pictures/<sha-256>.jpg        each picture once, as it was kept: .jpg, .png or .webp, named by its hash
 *
 * It is unpacked in memory only, so names of entries are no paths. A picture that is not there, or is not what its name
 * says, does not keep the atlas from being opened.
 */

/** SHA-256 of some content as 64 hex digits; the host of the program has its own, faster than any of ours. */
export type Sha256 = (content: Uint8Array) => Promise<string>;

export interface AtlasContent {
  readonly document: AtlasDocument;
  /** Files of pictures by their hash, each proved by it. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  /** A sentence for each picture of the bundle that is not what its name says. */
  readonly damaged: readonly string[];
}

const ATLAS_NAME = 'atlas.geojson';
const endings: Readonly<Record<PictureMediaType, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};
const pictureName = /^pictures\/([0-9a-f]{64})\.(?:jpg|png|webp)$/;

const MOST_ENTRIES = 500;

/** Whether a file is a zip archive, by its first bytes. */
export const isBundle = (content: Uint8Array): boolean =>
  content[0] === 0x50 && content[1] === 0x4b && content[2] === 3 && content[3] === 4;

/** An atlas from the bytes of its file, alone or in a bundle. Throws InputProblem as `readAtlasFile` does. */
export async function readAtlasContent(
  content: Uint8Array,
  fileName: string,
  sha256: Sha256,
  options: ReadOptions = {},
): Promise<AtlasContent> {
  if (content.length === 0) throw emptyFile(fileName);
  if (!isBundle(content))
    return {
      document: readAtlasFile(textOf(content, fileName), fileName, options),
      pictures: new Map(),
      damaged: [],
    };
  const names = pictureNames(content, fileName);
  const entry = (name: string, mostBytes: number): Uint8Array | undefined =>
    readZip(content, fileName, (found) => found === name, { mostEntries: MOST_ENTRIES, mostBytes }).get(name);
  const atlas = entry(ATLAS_NAME, MOST_TEXT_BYTES);
  if (atlas === undefined)
    throw new InputProblem(
      'foreign-file',
      `there is no ${ATLAS_NAME} in it.`,
      fileName,
      'Choose a bundle saved by Swale.',
    );
  const place = `${fileName}, ${ATLAS_NAME}`;
  const document = readAtlasFile(textOf(atlas, place), place, options);
  const pictures = new Map<string, Uint8Array>();
  const damaged: string[] = [];
  for (const name of names) {
    const hash = pictureName.exec(name)?.[1] ?? '';
    try {
      const bytes = entry(name, MOST_PICTURE_BYTES);
      if (bytes !== undefined && (await sha256(bytes)) === hash) pictures.set(hash, bytes);
      else damaged.push(`${fileName}: a picture in it is not what its name says.`);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      damaged.push(error.message);
    }
  }
  return { document, pictures, damaged };
}

/** The bundle of an atlas and those of its pictures that are in `pictures`: the same bytes for the same content. */
export function writeBundle(document: AtlasDocument, pictures: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const files: Record<string, [Uint8Array, { level: 0 | 6 }]> = {
    [ATLAS_NAME]: [strToU8(writeAtlasFile(document)), { level: 6 }],
  };
  const sorted = recordsOf(document, 'picture').toSorted((a, b) => (a.sha256 < b.sha256 ? -1 : 1));
  for (const { sha256, mediaType } of sorted) {
    const bytes = pictures.get(sha256);
    // Packed once already, by whoever made the picture.
    if (bytes !== undefined) files[`pictures/${sha256}.${endings[mediaType]}`] = [bytes, { level: 0 }];
  }
  return zipSync(files, { mtime: '1980-01-01T00:00:00' });
}

/** The names of pictures in a bundle; refuses an archive that holds anything but an atlas with its pictures. */
function pictureNames(content: Uint8Array, fileName: string): readonly string[] {
  const names: string[] = [];
  const refused = (code: string, what: string): InputProblem =>
    new InputProblem(code, what, fileName, 'Choose a bundle saved by Swale.');
  readZip(
    content,
    fileName,
    (name) => {
      if (leavesFolder(name))
        throw refused('archive-path', `the archive names a place outside itself (${name.slice(0, 60)}).`);
      if (names.includes(name)) throw refused('foreign-entry', `the archive holds ${name} twice.`);
      if (pictureName.test(name)) names.push(name);
      else if (name !== ATLAS_NAME && !isLitter(name))
        throw refused(
          'foreign-entry',
          `the archive holds ${name.slice(0, 60)}, which is no part of an atlas.`,
        );
      return false;
    },
    { mostEntries: MOST_ENTRIES, mostBytes: 0 },
  );
  return names;
}

/** Folders, and what systems leave in an archive packed by hand. */
const isLitter = (name: string): boolean =>
  name.endsWith('/') || name.startsWith('__MACOSX/') || (name.split('/').at(-1) ?? '').startsWith('.');
