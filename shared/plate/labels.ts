import { element } from './element.ts';
import type { PlateStyle } from './style.ts';
import { sansFamily, serifFamily } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, XY } from './view.ts';
import { grown, overlaps } from './view.ts';

/** A text that wants a place near a point. */
export interface LabelRequest {
  readonly text: string;
  readonly at: XY;
  readonly size: number;
  readonly face: 'sans' | 'serifItalic';
  readonly weight: 400 | 600 | 700;
  readonly ink: string;
  /** Clear distance from the point; 0 lets the text sit on the point itself. */
  readonly away: number;
  /** Draw a fine line to the point when the text had to move off. */
  readonly leader: boolean;
  /** Whether it says the truth in a place; without it any place does. */
  readonly suits?: (box: Box) => boolean;
  /** Where it would rather not stand, if there is room elsewhere. */
  readonly shuns?: (box: Box) => boolean;
  /** Higher goes first and stays; what finds no place is left out unless it is essential. */
  readonly priority: number;
}

export interface PlacedLabel {
  readonly request: LabelRequest;
  readonly box: Box;
}

/** Width of a text, estimated a little generously from the letter shapes of the two faces. */
export function textWidth(
  text: string,
  size: number,
  face: LabelRequest['face'] = 'sans',
  weight = 400,
): number {
  let em = 0;
  for (const c of text) {
    if ("il.,:;|!'’ \u00a0".includes(c)) em += 0.29;
    else if ('fjrt()-1'.includes(c)) em += 0.42;
    else if ('mwMW½%'.includes(c)) em += 0.88;
    else if (c >= 'A' && c <= 'Z') em += 0.67;
    else em += 0.57;
  }
  return em * size * (face === 'serifItalic' ? 0.9 : 1) * (weight >= 600 ? 1.05 : 1);
}

const directions: readonly XY[] = [
  [0.7, -0.7],
  [-0.7, -0.7],
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [0.7, 0.7],
  [-0.7, 0.7],
];

/**
 * Finds each text a place inside `within` where it meets neither the taken boxes nor an earlier text: the nearest of
 * eight directions at growing distances. Texts with no such place are left out; nothing is ever drawn over another.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  taken: readonly Box[],
  within: Box,
): readonly PlacedLabel[] {
  const busy = [...taken];
  const placed: PlacedLabel[] = [];
  const inOrder = [...requests].sort((a, b) => b.priority - a.priority);
  for (const request of inOrder) {
    const box = firstFree(request, busy, within);
    if (box === null) continue;
    busy.push(box);
    placed.push({ request, box });
  }
  return placed;
}

function firstFree(request: LabelRequest, busy: readonly Box[], within: Box): Box | null {
  const width = textWidth(request.text, request.size, request.face, request.weight);
  const height = request.size * 1.12;
  const [x, y] = request.at;
  const centred = (cx: number, cy: number): Box => ({ x: cx - width / 2, y: cy - height / 2, width, height });
  const candidates: Box[] = request.away === 0 ? [centred(x, y)] : [];
  const base = Math.max(request.away, 4);
  for (const step of [0, 0.8, 1.7, 2.8, 4]) {
    const gap = base + step * request.size;
    for (const [dx, dy] of directions)
      candidates.push(centred(x + dx * gap + Math.sign(dx) * (width / 2), y + dy * (gap + height / 2)));
  }
  const free = (box: Box): boolean =>
    box.x >= within.x &&
    box.y >= within.y &&
    box.x + box.width <= within.x + within.width &&
    box.y + box.height <= within.y + within.height &&
    !busy.some((other) => overlaps(box, other)) &&
    (request.suits?.(box) ?? true);
  const { shuns } = request;
  const best = shuns === undefined ? undefined : candidates.find((box) => free(box) && !shuns(box));
  return best ?? candidates.find(free) ?? null;
}

/** Placed texts with their halo, and a leader where one was asked for and the text stands off. */
export function drawLabel(label: PlacedLabel, style: PlateStyle): SvgNode {
  const { request, box } = label;
  const k = style.symbolScale;
  const middle: XY = [box.x + box.width / 2, box.y + box.height / 2];
  const nearest: XY = [
    Math.min(Math.max(request.at[0], box.x + box.width * 0.15), box.x + box.width * 0.85),
    request.at[1] < middle[1] ? box.y + 1 : box.y + box.height,
  ];
  const gap = Math.hypot(nearest[0] - request.at[0], nearest[1] - request.at[1]);
  const leader =
    request.leader && gap > 7 * k
      ? element('line', {
          x1: nearest[0],
          y1: nearest[1],
          x2: request.at[0] + ((nearest[0] - request.at[0]) * 5 * k) / gap,
          y2: request.at[1] + ((nearest[1] - request.at[1]) * 5 * k) / gap,
          stroke: request.ink,
          'stroke-width': 1.1 * k,
        })
      : null;
  return element(
    'g',
    { 'data-part': 'label' },
    leader,
    haloText(request.text, middle[0], box.y + box.height * 0.78, style, {
      size: request.size,
      face: request.face,
      weight: request.weight,
      ink: request.ink,
      anchor: 'middle',
    }),
  );
}

export interface TextLook {
  readonly size: number;
  readonly face?: 'sans' | 'serif' | 'serifItalic';
  readonly weight?: 400 | 600 | 700;
  readonly ink: string;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly turnDeg?: number;
  /** Width of the halo where the usual one leaves a line showing between the letters. */
  readonly haloWidth?: number;
}

export function plainText(text: string, x: number, y: number, look: TextLook): SvgNode {
  return element('text', { x, y, ...textAttributes(look, x, y) }, text);
}

/** Text on a halo, 3 units on screen and wider over the black patterns of paper, so that it reads on any ground. */
export function haloText(text: string, x: number, y: number, style: PlateStyle, look: TextLook): SvgNode {
  return element(
    'text',
    {
      x,
      y,
      ...textAttributes(look, x, y),
      stroke: style.inks.halo,
      'stroke-width': look.haloWidth ?? (style.mono ? 4 : 3 * style.symbolScale),
      'stroke-linejoin': 'round',
      'paint-order': 'stroke',
    },
    text,
  );
}

function textAttributes(look: TextLook, x: number, y: number): Record<string, string | number | undefined> {
  const face = look.face ?? 'sans';
  return {
    'font-family': face === 'sans' ? sansFamily : serifFamily,
    'font-size': look.size,
    'font-style': face === 'serifItalic' ? 'italic' : undefined,
    'font-weight': look.weight === undefined || look.weight === 400 ? undefined : look.weight,
    'text-anchor': look.anchor === undefined || look.anchor === 'start' ? undefined : look.anchor,
    fill: look.ink,
    transform:
      look.turnDeg === undefined || look.turnDeg === 0
        ? undefined
        : `rotate(${look.turnDeg.toFixed(1)} ${x.toFixed(2)} ${y.toFixed(2)})`,
  };
}

/** The place a label keeps others from, with its halo. */
export const labelClearance = (label: PlacedLabel): Box => grown(label.box, 3);
