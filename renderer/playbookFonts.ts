import sans400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2?url';
import sans600 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2?url';
import sans700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2?url';
import serif400i from '@fontsource/source-serif-4/files/source-serif-4-latin-400-italic.woff2?url';
import serif600 from '@fontsource/source-serif-4/files/source-serif-4-latin-600-normal.woff2?url';
import type { PlaybookFont } from '../shared/playbook/playbookCss.ts';

const sans = 'Atkinson Hyperlegible Next';
const serif = 'Source Serif 4';
const faces: readonly (Omit<PlaybookFont, 'woff2Base64'> & { readonly url: string })[] = [
  { family: sans, weight: 400, style: 'normal', url: sans400 },
  { family: sans, weight: 600, style: 'normal', url: sans600 },
  { family: sans, weight: 700, style: 'normal', url: sans700 },
  { family: serif, weight: 400, style: 'italic', url: serif400i },
  { family: serif, weight: 600, style: 'normal', url: serif600 },
];

let fonts: Promise<readonly PlaybookFont[]> | null = null;

/** The letters of the pages, to be carried inside them; read once. */
export function playbookFonts(): Promise<readonly PlaybookFont[]> {
  fonts ??= Promise.all(
    faces.map(async ({ url, ...face }) => {
      const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
      let binary = '';
      for (const byte of bytes) binary += String.fromCharCode(byte);
      return { ...face, woff2Base64: btoa(binary) };
    }),
  );
  return fonts;
}
