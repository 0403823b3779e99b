import { InputProblem } from '../../words/inputProblem.ts';
import { readZip } from '../zip/readZip.ts';
import { emptyFile, MOST_TEXT_BYTES, refuseLarge } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { readKml } from './readKml.ts';

const MOST_ENTRIES = 1_000;

/** The first KML document of a KMZ archive; pictures and everything else in it stay packed. Throws InputProblem. */
export function readKmz(content: Uint8Array, fileName: string): MapContent {
  if (content.length === 0) throw emptyFile(fileName);
  refuseLarge(content.length, fileName, MOST_TEXT_BYTES);
  let found = false;
  const first = (name: string): boolean => {
    if (found || !/\.kml$/i.test(name)) return false;
    found = true;
    return true;
  };
  const [entry] = readZip(content, fileName, first, {
    mostEntries: MOST_ENTRIES,
    mostBytes: MOST_TEXT_BYTES,
  });
  if (entry === undefined)
    throw new InputProblem(
      'foreign-file',
      'there is no KML document in it.',
      fileName,
      'Unpack it and choose the file inside.',
    );
  const [name, document] = entry;
  return { ...readKml(document, `${fileName}, ${name.slice(-80)}`), format: 'KMZ' };
}
