import { element, group } from './element.ts';
import { plainText, textWidth } from './labels.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';

/** What a picture is of, for whoever meets it away from the window. */
export interface PictureHead {
  readonly title: string;
  readonly lines: readonly string[];
}

const MARGIN = 16;
/** However narrow the drawing is, its head is told in lines of at least this width. */
const LEAST_WIDTH = 420;

/** A drawing on a sheet of its own, with a margin and its head above it. */
export function headed(drawing: SvgNode, head: PictureHead, style: PlateStyle): SvgNode {
  const margin = MARGIN * style.symbolScale;
  const drawn = { width: Number(drawing.attributes['width']), height: Number(drawing.attributes['height']) };
  const room = Math.max(drawn.width, LEAST_WIDTH * style.symbolScale);
  const titleSize = textSize(style, 19);
  const size = textSize(style, 13.5);
  let y = margin;
  const row = (
    text: string,
    rowSize: number,
    look: { weight?: 600; ink: string; face?: 'serif' },
  ): SvgNode => {
    y += rowSize * 1.35;
    return plainText(text, margin, y - rowSize * 0.3, { size: rowSize, ...look });
  };
  const words = [
    ...wrapped(head.title, room, (text) => textWidth(text, titleSize, 'serifItalic', 600) * 1.1).map((text) =>
      row(text, titleSize, { weight: 600, face: 'serif', ink: style.inks.ink }),
    ),
    ...head.lines
      .flatMap((line) => wrapped(line, room, (text) => textWidth(text, size)))
      .map((text) => row(text, size, { ink: style.inks.ink2 })),
  ];
  const top = y + 10 * style.symbolScale;
  const [width, height] = [room + 2 * margin, top + drawn.height + margin];
  return element(
    'svg',
    { width, height, viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': head.title },
    group('head', ...words),
    { ...drawing, attributes: { ...drawing.attributes, x: margin, y: top } },
  );
}

/** Text in lines no wider than there is room, broken between words. */
function wrapped(text: string, room: number, width: (text: string) => number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && width(longer) > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
