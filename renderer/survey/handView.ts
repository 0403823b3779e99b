import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { bearingDeg } from '../../shared/geometry/bearing.ts';
import { planePoint, type PlanePoint, type PlanePolygon } from '../../shared/geometry/points.ts';
import { distanceM, polygonAreaM2 } from '../../shared/geometry/ring.ts';
import { circle, turnedAbout } from '../../shared/geometry/turn.ts';
import { bearing, paces, rise, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { emptyHand, type HandDrawing } from '../map/handDrawing.ts';
import { groupBox, thingsOf } from './group.ts';
import { type Drag, drawsOutline, type HandState } from './handState.ts';
import { isThing, planeShape } from './planeShapes.ts';
import { type Sketch, sketchFacts } from './sketch.ts';
import { areaWordsOf, sideWords } from './words.ts';

export interface PointedOut {
  readonly at: PlanePoint;
  readonly ink: 'alert' | 'doubt';
}

/** Height of the fitted ground, or null where nothing is measured yet. */
export type HeightAt = ((at: PlanePoint) => number) | null;

/** What the hand shows over the plate just now. */
export function handDrawing(
  state: HandState,
  document: AtlasDocument,
  units: UnitsPreference,
  heightAt: HeightAt,
  pointedOut: PointedOut | null,
  readOnly: boolean,
): HandDrawing {
  const { drag, waiting, cursor, snap, heldId, corner, tool } = state;
  const sketch = state.sketch ?? state.measured;
  const record = heldId === null ? undefined : document.records.get(heldId);
  const base: HandDrawing = { ...emptyHand, cursor, snap, pointedOut };
  const closed = drawsOutline(state);
  const drawn: Pick<HandDrawing, 'sketch' | 'label'> =
    sketch === null
      ? { sketch: null, label: null }
      : {
          sketch: {
            corners: sketch.corners,
            along: sketch.along,
            next: sketch.next,
            stroke: sketch.stroke ?? [],
            closed,
          },
          label: sketchLabel(sketch, closed, units, heightAt),
        };
  const waits = waiting === null ? null : { at: waiting.at, waits: true };
  if (drag?.kind === 'crown') {
    const polygon = [circle(drag.centre, drag.radiusM)];
    return {
      ...base,
      held: { polygon, closed: true, handles: false, corner: null, turner: false },
      label: { at: lowest(polygon[0] ?? []), lines: [`${sideWords(2 * drag.radiusM, units)} across`] },
    };
  }
  if (drag?.kind === 'frame' || state.others.length > 0)
    return { ...base, ...drawn, ...groupShown(state, document, units, readOnly) };
  if (!isThing(record)) return { ...base, ...drawn, point: waits };
  const shape = planeShape(document, record);
  const point = shape.points[0];
  const isPoint = record.type !== 'area' && record.type !== 'line';
  const polygon = record.type === 'area' ? shape.polygon : [shape.points];
  const shown = drag === null ? polygon : dragged(polygon, drag);
  const held = isPoint
    ? null
    : {
        polygon: shown,
        closed: record.type === 'area',
        handles: tool === 'select' && !readOnly && drag?.kind !== 'move' && drag?.kind !== 'turn',
        corner,
        turner: tool === 'select' && !readOnly && drag === null,
      };
  const moved = drag?.kind === 'move' && point !== undefined ? movedBy(point, drag) : point;
  return {
    ...base,
    ...drawn,
    held,
    point: waits ?? (isPoint && moved !== undefined ? { at: moved, waits: false } : null),
    label: drag === null ? drawn.label : dragLabel(drag, shown, record.type === 'area', units),
  };
}

/** Several things held, as the drag under way leaves them, and the frame being pulled. */
function groupShown(
  { heldId, others, drag, tool }: HandState,
  document: AtlasDocument,
  units: UnitsPreference,
  readOnly: boolean,
): Pick<HandDrawing, 'group' | 'label'> {
  const things = heldId === null ? [] : thingsOf(document, [heldId, ...others]);
  const shapes = things.map((thing) => ({ type: thing.type, ...planeShape(document, thing) }));
  const at = (points: readonly PlanePoint[]): readonly PlanePoint[] =>
    drag === null ? points : (dragged([points], drag)[0] ?? points);
  const box = drag === null && tool === 'select' && !readOnly ? groupBox(document, things) : null;
  const all = shapes.flatMap(({ polygon, points }) => [...polygon.flat(), ...points]);
  return {
    group: {
      areas: shapes.filter(({ type }) => type === 'area').map(({ polygon }) => polygon.map(at)),
      lines: shapes.filter(({ type }) => type === 'line').map(({ points }) => at(points)),
      points: shapes
        .filter(({ type }) => type !== 'area' && type !== 'line')
        .flatMap(({ points }) => at(points)),
      frame: drag?.kind === 'frame' ? [drag.from, drag.to] : null,
      turner: box === null ? null : planePoint((box.westM + box.eastM) / 2, box.northM),
    },
    label: drag === null || all.length === 0 ? null : dragLabel(drag, [at(all)], false, units),
  };
}

function sketchLabel(
  sketch: Sketch,
  closed: boolean,
  units: UnitsPreference,
  heightAt: HeightAt,
): HandDrawing['label'] {
  const facts = sketchFacts(sketch, closed);
  const last = sketch.corners.at(-1);
  if (facts === null) return null;
  const length = `${sideWords(facts.sideM, units)}, ${withUnit(paces(facts.sideM, units))}`;
  const side =
    sketch.along.length > 0
      ? `${length}, along the edge`
      : `${length}, at ${withUnit(bearing(facts.sideBearingDeg))}`;
  const around = `${closed ? 'around' : 'in all'} ${sideWords(facts.aroundM, units)}`;
  const fall =
    heightAt === null || last === undefined || sketch.next === null
      ? ''
      : `, ${rise(heightAt(sketch.next) - heightAt(last), units)}`;
  const points = [
    ...sketch.corners,
    ...(sketch.stroke ?? []),
    ...sketch.along,
    ...(sketch.next === null ? [] : [sketch.next]),
  ];
  return {
    at: lowest(points),
    lines: [side + fall, closed ? `${around}, area ${areaWordsOf(facts.areaM2, units)}` : around],
  };
}

/** The southernmost point: labels stand below what is drawn, where the hand does not look. */
function lowest(points: readonly PlanePoint[]): PlanePoint {
  const west = Math.min(...points.map(({ eastM }) => eastM));
  const east = Math.max(...points.map(({ eastM }) => eastM));
  const south = Math.min(...points.map(({ northM }) => northM));
  return planePoint((west + east) / 2, south);
}

const movedBy = (at: PlanePoint, { from, to }: Extract<Drag, { kind: 'move' }>): PlanePoint =>
  planePoint(at.eastM + to.eastM - from.eastM, at.northM + to.northM - from.northM);

function dragged(polygon: PlanePolygon, drag: Drag): PlanePolygon {
  switch (drag.kind) {
    case 'move':
      return polygon.map((ring) => ring.map((at) => movedBy(at, drag)));
    case 'turn':
      return polygon.map((ring) => ring.map((at) => turnedAbout(at, drag.centre, drag.turnDeg)));
    case 'corner':
      return polygon.map((ring, r) =>
        r !== drag.ring
          ? ring
          : drag.isNew
            ? ring.toSpliced(drag.index, 0, drag.to)
            : ring.map((at, i) => (i === drag.index ? drag.to : at)),
      );
    case 'crown':
    case 'frame':
      return polygon;
  }
}

function dragLabel(
  drag: Drag,
  shown: PlanePolygon,
  closed: boolean,
  units: UnitsPreference,
): HandDrawing['label'] {
  switch (drag.kind) {
    case 'move': {
      const lengthM = distanceM(drag.from, drag.to);
      if (lengthM === 0) return null;
      const at = withUnit(bearing(bearingDeg(drag.from, drag.to)));
      return {
        at: lowest(shown[0]?.length ? shown[0] : [drag.to]),
        lines: [`${sideWords(lengthM, units)} at ${at}`],
      };
    }
    case 'turn':
      return {
        at: lowest(shown[0] ?? []),
        lines: [
          `turned ${String(Math.round(Math.abs(drag.turnDeg)))}° ${drag.turnDeg < 0 ? 'left' : 'right'}`,
        ],
      };
    case 'corner': {
      const ring = shown[drag.ring] ?? [];
      const before = ring[(drag.index - 1 + ring.length) % ring.length] ?? drag.to;
      const after = ring[(drag.index + 1) % ring.length] ?? drag.to;
      return {
        at: drag.to,
        lines: [
          `sides ${sideWords(distanceM(before, drag.to), units)} and ${sideWords(distanceM(drag.to, after), units)}`,
          ...(closed ? [`area ${areaWordsOf(polygonAreaM2(shown), units)}`] : []),
        ],
      };
    }
    case 'crown':
    case 'frame':
      return null;
  }
}
