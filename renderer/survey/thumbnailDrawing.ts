import { holesInOrder } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { planePoint } from '../../shared/geometry/points.ts';
import { boundingBox } from '../../shared/geometry/ring.ts';
import { element, group } from '../../shared/plate/element.ts';
import { paintOrder } from '../../shared/plate/ground.ts';
import { closedPath } from '../../shared/plate/pathData.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { projection } from '../../shared/plate/view.ts';
import { PlaneIndex } from '../../shared/atlas/planeIndex.ts';
import { homeOf } from './surveyView.ts';

const WIDTH = 72;
const HEIGHT = 48;

/** An atlas at a glance: the ground about its first green, too small for patterns. */
export function thumbnailDrawing(document: AtlasDocument): SvgNode {
  const box = boundingBox(homeOf(document, holesInOrder(document)[0]?.id ?? null));
  const { inks } = screenStyle('thumbnail');
  const frame = { x: 0, y: 0, width: WIDTH, height: HEIGHT };
  const paths: SvgNode[] = [];
  if (box !== null) {
    const { westM, southM, eastM, northM } = box;
    const { toDrawing } = projection({
      centre: planePoint((westM + eastM) / 2, (southM + northM) / 2),
      unitsPerM: Math.min(WIDTH / Math.max(eastM - westM, 1), HEIGHT / Math.max(northM - southM, 1)),
      upBearingDeg: 0,
      box: frame,
    });
    const index = new PlaneIndex();
    index.moveTo(document);
    const seen = index.areasIn(box);
    for (const kind of paintOrder) {
      const d = seen
        .filter(({ record }) => record.kind === kind)
        .map(({ polygon }) => closedPath(polygon.map((ring) => ring.map(toDrawing))))
        .join('');
      if (d === '') continue;
      const edged = kind === 'green' || kind === 'bunker';
      paths.push(
        element('path', {
          'data-kind': kind,
          d,
          fill: inks.fills[kind],
          'fill-rule': 'evenodd',
          stroke: edged ? inks.ink : inks.tall,
          'stroke-width': edged ? 1 : 0.5,
        }),
      );
    }
  }
  return element(
    'svg',
    { width: WIDTH, height: HEIGHT, viewBox: `0 0 ${String(WIDTH)} ${String(HEIGHT)}`, overflow: 'hidden' },
    element('rect', { ...frame, fill: paths.length > 0 ? inks.fills.lightRough : inks.sheet }),
    group('thumbnail', ...paths),
  );
}
