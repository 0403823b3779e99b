import { creditLines } from '../../atlas/credits.ts';
import { headerOf } from '../../atlas/document.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import { InputProblem } from '../../words/inputProblem.ts';

/** @throws InputProblem for an atlas on a blank canvas, which no map can show at its place */
export function refuseUnplaced(document: AtlasDocument, format: string): void {
  const header = headerOf(document);
  if (!header.placed)
    throw new InputProblem(
      'atlas-unplaced',
      `The atlas is drawn on a blank canvas: ${format} would put it where nothing of it lies.`,
      header.name,
      'Place it on the earth first; the atlas file itself and lists with metres can be had without.',
    );
}

/** The name and the credits of imported data, for the head of a file. */
export function titleOf(document: AtlasDocument): { readonly name: string; readonly credits: string } {
  return { name: headerOf(document).name, credits: creditLines(document).join('; ') };
}

export const escapeXml = (text: string): string =>
  text
    // Control characters have no place in XML 1.0 at all.
    // eslint-disable-next-line no-control-regex
    .replaceAll(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
