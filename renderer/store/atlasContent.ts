import { recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { writeBundle } from '../../shared/formats/bundle.ts';
import { writeAtlasFile } from '../../shared/formats/writeAtlasFile.ts';
import type { Pictures } from '../library/pictures.ts';

/** What an atlas is written to a file as. */
export interface WrittenAtlas {
  readonly content: Uint8Array;
  readonly ending: '.geojson' | '.zip';
  /** Names of pictures whose files are nowhere to be had. */
  readonly missing: readonly string[];
}

/**
 * The atlas as the bytes of a file: a bundle with its pictures where it has any or `asBundle` asks for one, else the plain
 * atlas file.
 */
export async function writtenAtlas(
  document: AtlasDocument,
  pictures: Pictures,
  asBundle: boolean,
): Promise<WrittenAtlas> {
  const records = recordsOf(document, 'picture');
  if (records.length === 0 && !asBundle)
    return {
      content: new TextEncoder().encode(writeAtlasFile(document)),
      ending: '.geojson',
      missing: [],
    };
  const files = new Map<string, Uint8Array>();
  for (const { sha256 } of records) {
    const content = files.has(sha256) ? null : await pictures.load(sha256);
    if (content !== null) files.set(sha256, content);
  }
  return {
    content: writeBundle(document, files),
    ending: '.zip',
    missing: records.filter(({ sha256 }) => !files.has(sha256)).map(({ name }) => name),
  };
}
