import { stances } from '../player/stance.ts';
import { techniqueRules } from '../player/technique.ts';
import { techniqueName } from '../planner/optionName.ts';
import type { Technique } from '../words/vocabulary.ts';
import { element, group } from './element.ts';
import { plainText } from './labels.ts';
import { openPath, segment } from './pathData.ts';
import { dashes, strokes } from './pattern.ts';
import { type PlateStyle, textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { XY } from './view.ts';

const WIDTH = 156;
const HEIGHT = 168;
/** A foot as drawn: half length and half width. */
const FOOT: XY = [17, 6.5];
/** From the line of the toes to the ball, shorter for a putter. */
const REACH = { putter: 30, other: 40 } as const;

/**
 * Feet, ball and clubface from above, the start line up the sheet. A right-hander stands left of the line with the left
 * foot in front; for a left-hander everything but the words is mirrored.
 */
export function drawStance(technique: Technique, handed: 'right' | 'left', style: PlateStyle): SvgNode {
  const { ballForward, frontShare, openDeg, feetApart } = stances[technique];
  const { faceOpenDeg, putter } = techniqueRules[technique];
  const { inks } = style;
  const k = style.symbolScale;
  const side = handed === 'right' ? 1 : -1;
  const lineX = WIDTH / 2 + side * 40;
  const x = (towardLine: number): number => (lineX + side * towardLine) * k;
  const middleY = 92;
  const half = (feetApart * 2 * FOOT[1]) / 2;
  const ballY = middleY - ballForward * half;
  const toes = -(putter ? REACH.putter : REACH.other);
  // Opening turns the feet about their middle, the front foot away from the line.
  const open = (openDeg * Math.PI) / 180;
  const foot = (front: boolean): XY => {
    const along = front ? half : -half;
    return [toes - FOOT[0] - along * Math.sin(open), middleY - along * Math.cos(open)];
  };
  const size = textSize(style, 13);
  const feet = [true, false].map((front) => {
    const [across, y] = foot(front);
    const share = Math.round(100 * (front ? frontShare : 1 - frontShare));
    return group(
      'foot',
      element('ellipse', {
        cx: x(across),
        cy: y * k,
        rx: FOOT[0] * k,
        ry: FOOT[1] * k,
        fill: inks.sheet,
        stroke: inks.ink,
        'stroke-width': 1.5 * k,
      }),
      plainText(`${share} %`, x(across - FOOT[0] - 4), y * k + size * 0.35, {
        size,
        ink: inks.ink2,
        anchor: handed === 'right' ? 'end' : 'start',
      }),
    );
  });
  const toeLine = [1.7, -1.7].map((t): XY => [
    x(toes - t * half * Math.sin(open)),
    (middleY - t * half * Math.cos(open)) * k,
  ]);
  const face = (faceOpenDeg * Math.PI) / 180;
  // Square is across the line; open turns the face to the player's far side.
  const blade = [-1, 1].map((t): XY => [
    x(t * 11 * Math.cos(face)),
    (ballY + 6 + t * 11 * Math.sin(face)) * k,
  ]);
  const tip: XY = [lineX * k, 14 * k];
  const front = handed === 'right' ? 'left' : 'right';
  const place = ballForward > 0.2 ? 'forward' : ballForward < -0.2 ? 'back' : 'in the middle';
  const description =
    `${techniqueName(technique)}, ${handed}-handed, from above: ball ${place}, ` +
    `${Math.round(100 * frontShare)} % of the weight on the front (${front}) foot` +
    `${openDeg > 0 ? `, feet turned ${front}` : ''}${faceOpenDeg > 0 ? `, face turned ${handed}` : ''}.`;
  return element(
    'svg',
    {
      width: WIDTH * k,
      height: HEIGHT * k,
      viewBox: `0 0 ${WIDTH * k} ${HEIGHT * k}`,
      role: 'img',
      'aria-label': description,
    },
    element('title', {}, description),
    strokes(segment(lineX * k, (HEIGHT - 8) * k, tip[0], tip[1] + 8 * k), inks.propose, 1.6 * k, {
      'stroke-dasharray': dashes(style, 5, 4),
    }),
    element('path', {
      d: `${openPath([[tip[0] - 4.5 * k, tip[1] + 10 * k], tip, [tip[0] + 4.5 * k, tip[1] + 10 * k]])}Z`,
      fill: inks.sheet,
      stroke: inks.propose,
      'stroke-width': 1.5 * k,
    }),
    strokes(openPath(toeLine), inks.edge, 1.2 * k, { 'stroke-dasharray': dashes(style, 3, 3) }),
    ...feet,
    strokes(openPath(blade), inks.ink, 3.4 * k, { 'stroke-linecap': 'round' }),
    element('circle', {
      cx: lineX * k,
      cy: ballY * k,
      r: 4.6 * k,
      fill: inks.sheet,
      stroke: inks.ink,
      'stroke-width': 1.7 * k,
    }),
    plainText('front', x(toes - FOOT[0]), 22 * k, { size, ink: inks.ink2, anchor: 'middle' }),
  );
}
