import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { PlaybookFont } from '../../shared/playbook/playbookCss.ts';

const sans = 'Atkinson Hyperlegible Next';
const serif = 'Source Serif 4';
/** The letters the playbook is set in. */
const faces: readonly Omit<PlaybookFont, 'woff2Base64'>[] = [
  { family: sans, weight: 400, style: 'normal' },
  { family: sans, weight: 600, style: 'normal' },
  { family: sans, weight: 700, style: 'normal' },
  { family: serif, weight: 400, style: 'italic' },
  { family: serif, weight: 600, style: 'normal' },
];

/** The fonts of a playbook with their files, read from the font packages, to be carried in the page itself. */
export function inlineFonts(): Promise<readonly PlaybookFont[]> {
  const { resolve } = createRequire(import.meta.url);
  return Promise.all(
    faces.map(async (face) => {
      const name = face.family.toLowerCase().replaceAll(' ', '-');
      const file = resolve(`@fontsource/${name}/files/${name}-latin-${face.weight}-${face.style}.woff2`);
      return { ...face, woff2Base64: await readFile(file, 'base64') };
    }),
  );
}
