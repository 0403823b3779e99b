import { type PlanePoint, planePoint } from '../geometry/points.ts';
import type { LabelRequest } from './labels.ts';
import type { DrawnShot } from './shotMark.ts';
import { type PlateStyle, textSize } from './style.ts';
import { type Box, type PlateView, projection, type XY } from './view.ts';

/** Where the start line ends: past the flag by an eighth of the distance, at least 1 m. */
export function aimEnd(shot: DrawnShot): PlanePoint {
  const east = shot.flag.eastM - shot.ball.eastM;
  const north = shot.flag.northM - shot.ball.northM;
  const length = Math.hypot(east, north);
  const reach = length + Math.max(1.2, length * 0.14);
  const a = (shot.option.aimBearingDeg * Math.PI) / 180;
  return planePoint(shot.ball.eastM + Math.sin(a) * reach, shot.ball.northM + Math.cos(a) * reach);
}

/** The texts a shot wants near its landing spot and the head of its aim line. */
export function shotLabels(view: PlateView, style: PlateStyle, shot: DrawnShot): LabelRequest[] {
  const { toDrawing } = projection(view);
  const k = style.symbolScale;
  const ink = shot.role === 'proposed' ? style.inks.propose : style.inks.ink2;
  const base = { size: textSize(style, 15), face: 'sans' as const, weight: 700 as const, ink };
  const labels: LabelRequest[] = [];
  const { landing, path } = shot.option;
  const [east, north] = path.pointsM.slice(-3);
  if (shot.landText !== '')
    labels.push({
      ...base,
      text: shot.landText,
      at: toDrawing(landing ?? planePoint(east ?? 0, north ?? 0)),
      away: 14 * k,
      leader: true,
      priority: 90,
    });
  if (shot.aimText !== '')
    labels.push({
      ...base,
      text: shot.aimText,
      at: toDrawing(aimEnd(shot)),
      away: 9 * k,
      leader: false,
      priority: 89,
    });
  return labels;
}

/** Boxes the lines of a shot cover, for texts and scattered symbols to keep clear of. */
export function shotBoxes(view: PlateView, style: PlateStyle, shot: DrawnShot): Box[] {
  const { toDrawing } = projection(view);
  const half = 5 * style.symbolScale;
  const around = ([x, y]: XY): Box => ({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
  const { pointsM } = shot.option.path;
  const count = Math.floor(pointsM.length / 3);
  const boxes: Box[] = [];
  let last: XY | null = null;
  for (let i = 0; i < count; i += 1) {
    const at = toDrawing(planePoint(pointsM[3 * i] ?? 0, pointsM[3 * i + 1] ?? 0));
    if (last !== null && Math.hypot(at[0] - last[0], at[1] - last[1]) < 2 * half && i < count - 1) continue;
    boxes.push(around(at));
    last = at;
  }
  boxes.push(around(toDrawing(aimEnd(shot))));
  return boxes;
}
