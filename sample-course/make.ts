/** Writes the sample atlases beside this file: `npx tsx sample-course/make.ts`. The same every time. */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { atlasDocument } from '../shared/atlas/document.ts';
import type { AtlasDocument, AtlasHeader } from '../shared/atlas/records.ts';
import { writeAtlasFile } from '../shared/formats/atlasFile.ts';
import { localFrame } from '../shared/geometry/localFrame.ts';
import { lonLat } from '../shared/geometry/points.ts';
import type { Complex } from './complex.ts';
import { kettleHollow } from './kettleHollow.ts';
import { longWithy } from './longWithy.ts';
import { days, players } from './people.ts';
import { sheepwash } from './sheepwash.ts';
import { lowerLawn, theTerrace } from './stations.ts';
import { surveyed } from './survey.ts';

const NOTE =
  'Invented ground, players and days; any likeness is chance. It lies nowhere: the anchor is a nominal one in the open ' +
  'Atlantic, so that a map program shows every outline in its true shape and size with nothing underneath.';

const anchor = lonLat(-30, 45);

function atlas(kind: AtlasHeader['kind'], name: string, complexes: readonly Complex[]): AtlasDocument {
  const frame = localFrame(anchor);
  return atlasDocument([
    { type: 'atlas', id: 'atlas', name, kind, placed: false, anchor, note: NOTE },
    ...complexes.flatMap((complex) => surveyed(complex, frame)),
    ...days,
    ...players,
  ]);
}

export const osselDown = (): AtlasDocument =>
  atlas('course', 'Ossel Down', [sheepwash, longWithy, kettleHollow]);
export const osselPractice = (): AtlasDocument =>
  atlas('practiceGround', 'Ossel Down practice ground', [lowerLawn, theTerrace]);

if (process.argv[1] === import.meta.filename) {
  for (const [file, document] of [
    ['ossel-down.geojson', osselDown()],
    ['ossel-practice.geojson', osselPractice()],
  ] as const) {
    writeFileSync(resolve(import.meta.dirname, file), writeAtlasFile(document));
    console.log(`${file}: ${String(document.records.size)} records`);
  }
}
