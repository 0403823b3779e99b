import { element } from '../../shared/plate/element.ts';
import { markup } from '../../shared/plate/markup.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { plateTokensCss } from '../../shared/plate/tokens.ts';
import type { PlaybookFont } from '../../shared/playbook/playbookCss.ts';

/** What of a plan can be kept as a picture. */
export type Pictured = 'plate' | 'section' | 'leaves';

/** A PNG has this many dots to a drawing unit: sharp on any screen, and near 200 to the inch in print. */
const DOTS_PER_UNIT = 2;

/** A drawing as a file of its own: light colours and its letters inside, so that it looks the same anywhere. */
export function pictureSvg(drawing: SvgNode, fonts: readonly PlaybookFont[]): string {
  const letters = fonts
    .map(
      ({ family, weight, style, woff2Base64 }) =>
        `@font-face{font-family:'${family}';font-weight:${weight};font-style:${style};src:url(data:font/woff2;base64,${woff2Base64})format('woff2')}`,
    )
    .join('');
  const sheet = element('rect', { width: '100%', height: '100%', fill: 'var(--sheet)' });
  return markup({
    ...drawing,
    children: [element('style', {}, plateTokensCss + letters), sheet, ...drawing.children],
  });
}

/** Lets the person keep a drawing as a file. */
export async function savePicture(
  drawing: SvgNode,
  kind: 'svg' | 'png',
  fileName: string,
  fonts: readonly PlaybookFont[],
): Promise<void> {
  const svg = new Blob([pictureSvg(drawing, fonts)], { type: 'image/svg+xml' });
  download(kind === 'svg' ? svg : await pngOf(svg, drawing), `${fileName}.${kind}`);
}

async function pngOf(svg: Blob, { attributes }: SvgNode): Promise<Blob> {
  const url = URL.createObjectURL(svg);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(Number(attributes['width']) * DOTS_PER_UNIT);
    canvas.height = Math.round(Number(attributes['height']) * DOTS_PER_UNIT);
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas to draw the picture on');
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    if (png === null) throw new Error('the picture could not be written as PNG');
    return png;
  } finally {
    URL.revokeObjectURL(url);
  }
}

function download(blob: Blob, fileName: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
