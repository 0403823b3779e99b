import { unzipSync } from 'fflate';
import { InputProblem } from '../../words/inputProblem.ts';
import { emptyFile, MOST_TEXT_BYTES, refuseLarge } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { readKml } from './readKml.ts';

const MOST_ENTRIES = 1_000;
/** Packed size of the document: bounds the time of unpacking, whatever unpacked size the archive states. */
const MOST_PACKED_BYTES = 4 * 1024 * 1024;

/**
 * The first KML document of a KMZ archive; pictures and everything else in it stay packed. Nothing is written anywhere, so
 * names of entries are no paths. Throws InputProblem.
 */
export function readKmz(content: Uint8Array, fileName: string): MapContent {
  if (content.length === 0) throw emptyFile(fileName);
  refuseLarge(content, fileName, MOST_TEXT_BYTES);
  let entries = 0;
  const chosen: string[] = [];
  const refuse = (code: string, what: string): never => {
    throw new InputProblem(code, what, fileName, 'Unpack it and choose the .kml file inside.');
  };
  let files: Readonly<Record<string, Uint8Array>>;
  try {
    files = unzipSync(content, {
      filter: ({ name, size, originalSize }) => {
        entries += 1;
        if (entries > MOST_ENTRIES)
          refuse('archive-too-large', `the archive has more than ${String(MOST_ENTRIES)} entries.`);
        if (chosen.length > 0 || !/\.kml$/i.test(name)) return false;
        // The unpacked size that the archive states is also the size of the buffer it is unpacked into.
        if (originalSize > MOST_TEXT_BYTES || size > MOST_PACKED_BYTES)
          refuse(
            'archive-too-large',
            `the document inside takes ${String(Math.round(size / 1048576))} MB packed and ${String(Math.round(originalSize / 1048576))} MB unpacked.`,
          );
        chosen.push(name);
        return true;
      },
    });
  } catch (error) {
    if (error instanceof InputProblem) throw error;
    throw new InputProblem(
      'archive-broken',
      'the archive is damaged or cut short.',
      fileName,
      'Use another copy, or unpack it and choose the .kml file inside.',
    );
  }
  const [name = ''] = chosen;
  const document = files[name];
  if (document === undefined) return refuse('foreign-file', 'there is no KML document in it.');
  return { ...readKml(document, `${fileName}, ${shortName(name)}`), format: 'KMZ' };
}

const shortName = (name: string): string => name.slice(-80);
