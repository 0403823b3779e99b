import { element, group } from '../../shared/plate/element.ts';
import { drawArea } from '../../shared/plate/ground.ts';
import { ballMark, flagMark } from '../../shared/plate/marks.ts';
import { segment } from '../../shared/plate/pathData.ts';
import { shapeFromRings } from '../../shared/plate/shape.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { XY } from '../../shared/plate/view.ts';
import type { AreaKind } from '../../shared/words/vocabulary.ts';
import { landmarkMark } from '../map/landmarkMark.ts';
import type { ToolId } from './tools.ts';

const WIDTH = 38;
const HEIGHT = 22;

/** The legend's picture of a tool: the very pattern, line or mark that the plate draws. */
export function swatch(id: ToolId): SvgNode {
  return element(
    'svg',
    { width: WIDTH, height: HEIGHT, viewBox: `0 0 ${String(WIDTH)} ${String(HEIGHT)}`, overflow: 'hidden' },
    picture(id),
  );
}

function picture(id: ToolId): SvgNode {
  const style = screenStyle(`swatch-${id}`);
  const ink = style.inks.ink;
  const line = (d: string, width = 1.7): SvgNode =>
    element('path', { d, fill: 'none', stroke: ink, 'stroke-width': width, 'stroke-linejoin': 'round' });
  switch (id) {
    case 'tierEdge':
      return group(
        id,
        line(segment(2, 8, 36, 6)),
        element('path', {
          d: [6, 12, 18, 24, 30].map((x) => `M${String(x - 2)} ${String(8 - x / 19)}h4l-2 8z`).join(''),
          fill: ink,
        }),
      );
    case 'ridge':
      return group(
        id,
        line(segment(2, 11, 36, 11)),
        line([7, 13, 19, 25, 31].map((x) => segment(x, 6, x, 16)).join(''), 1.3),
      );
    case 'contour':
      return group(
        id,
        line('M2 16C8 5 14 14 20 11S30 6 36 9', 1.4),
        element('rect', { x: 14, y: 6, width: 10, height: 10, fill: 'var(--sheet)' }),
        element('text', { x: 15, y: 15, 'font-size': 12, 'font-style': 'italic', fill: ink }, '.4'),
      );
    case 'wall':
      return group(
        id,
        element('rect', {
          x: 2,
          y: 8,
          width: 34,
          height: 6,
          fill: 'var(--sheet)',
          stroke: ink,
          'stroke-width': 1.4,
        }),
        line([10, 19, 28].map((x) => segment(x, 8, x, 14)).join(''), 1.2),
      );
    case 'spotHeight':
      return group(
        id,
        line(segment(3, 11, 11, 11) + segment(7, 7, 7, 15), 1.5),
        element('text', { x: 12, y: 15.5, 'font-size': 12.5, fill: ink }, '12.4'),
      );
    case 'slopeReading':
      return group(
        id,
        line(segment(11, 11, 30, 11), 1.8),
        element('path', { d: 'M35 11l-7-3.4v6.8z', fill: ink }),
        element('circle', { cx: 8, cy: 11, r: 3.2, fill: 'var(--sheet)', stroke: ink, 'stroke-width': 1.7 }),
      );
    case 'holeLocation':
      return flagMark([15, 18.5], '', false, screenStyle('swatch-flag', 0.62));
    case 'ballPosition':
      return ballMark([19, 11], '1', false, screenStyle('swatch-ball', 0.8));
    case 'landmark':
      return landmarkMark([19, 12], '', screenStyle('swatch-landmark'));
    case 'select':
      return element('path', {
        d: 'M13 3l12 9.5-6 .8 3.2 6-2.8 1.4-3-6.1-3.9 4z',
        fill: 'var(--sheet)',
        stroke: ink,
        'stroke-width': 1.5,
        'stroke-linejoin': 'round',
      });
    case 'several':
      return group(
        id,
        element('rect', {
          x: 5,
          y: 3,
          width: 28,
          height: 16,
          fill: 'none',
          stroke: ink,
          'stroke-width': 1.4,
          'stroke-dasharray': '4 3',
        }),
        element('circle', { cx: 14, cy: 11, r: 3, fill: ink }),
        element('circle', { cx: 25, cy: 9, r: 3, fill: ink }),
      );
    case 'measure':
      return group(
        id,
        element('rect', {
          x: 3,
          y: 6.5,
          width: 32,
          height: 9,
          fill: 'var(--sheet)',
          stroke: ink,
          'stroke-width': 1.4,
        }),
        line([9, 15, 21, 27].map((x) => segment(x, 6.5, x, 11)).join(''), 1.2),
      );
    default:
      return areaPicture(id);
  }
}

function areaPicture(kind: AreaKind): SvgNode {
  const small = kind === 'tee' || kind === 'tree' || kind === 'heavyRough' ? 0.7 : 0.85;
  const style = screenStyle(`swatch-${kind}`, small);
  const clip = { x: 0, y: 0, width: WIDTH, height: HEIGHT };
  const shape = shapeFromRings([outline(kind)]);
  return group(
    'swatch',
    element('rect', {
      ...clip,
      fill: kind === 'outOfBounds' || kind === 'path' || kind === 'tree' ? 'var(--t-light)' : 'var(--sheet)',
    }),
    drawArea(
      {
        id: kind,
        kind,
        name: '',
        polygon: [],
        lipHeightM: kind === 'bunker' ? 1 : null,
        treeHeightM: null,
        canopyBaseM: null,
      },
      { shape, style, clip, origin: [WIDTH / 2, HEIGHT / 2], seed: 7, keepClear: [], above: [] },
      [
        shapeFromRings([
          [
            [-20, 18],
            [60, 18],
            [60, 60],
            [-20, 60],
          ],
        ]),
      ],
    ),
    element('rect', {
      x: 0.5,
      y: 0.5,
      width: WIDTH - 1,
      height: HEIGHT - 1,
      fill: 'none',
      stroke: 'var(--rule-2)',
    }),
  );
}

function outline(kind: AreaKind): readonly XY[] {
  const box = (left: number, top: number, right: number, bottom: number): readonly XY[] => [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  switch (kind) {
    case 'green':
      return [
        [6, 40],
        [7, 20],
        [11, 12],
        [19, 7],
        [40, 5],
        [60, 40],
      ];
    case 'fringe':
      return box(-12, 4, 50, 60);
    case 'bunker':
      return box(-12, 5, 50, 60);
    case 'penaltyArea':
      return box(-12, 5, 50, 60);
    case 'outOfBounds':
      return box(13, -30, 90, 60);
    case 'path':
      return box(-12, 6, 50, 16);
    case 'tree':
      return Array.from({ length: 12 }, (_, i): XY => {
        const angle = (i * Math.PI) / 6;
        return [19 + 9 * Math.cos(angle), 11 + 9 * Math.sin(angle)];
      });
    case 'tee':
      return box(6, 5, 32, 17);
    default:
      return box(-30, -30, 70, 60);
  }
}
