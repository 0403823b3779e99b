import type { LocalFrame } from '../../geometry/localFrame.ts';
import type { LonLat, PlanePoint, PlanePolygon } from '../../geometry/points.ts';
import { type Box, boundingBox, centroid, distanceM } from '../../geometry/ring.ts';
import { type Crossing, selfIntersection } from '../../geometry/selfIntersection.ts';
import { kindWords } from '../../words/coverWords.ts';
import { frameOf, holesInOrder, planePolygon, recordsOf } from '../document.ts';
import type { AreaRecord, AtlasDocument, HoleRecord } from '../records.ts';

/** An area in the plane with what the checks ask of it, worked out once for each record. */
export interface AreaShape {
  readonly record: AreaRecord;
  readonly polygon: PlanePolygon;
  readonly box: Box;
  readonly centre: PlanePoint;
  /** The first ring that crosses itself. */
  readonly crossing: { readonly ring: number; readonly crossing: Crossing } | null;
}

/** What every check works on. */
export interface Survey {
  readonly document: AtlasDocument;
  readonly frame: LocalFrame;
  readonly areas: readonly AreaShape[];
  readonly holes: readonly HoleRecord[];
  /** "Hole 4" or "Station S1" for the nearest green, or nothing when none is within 120 m. */
  readonly near: (at: LonLat) => string;
}

const REACH_M = 120;
const shapes = new WeakMap<LocalFrame, WeakMap<AreaRecord, AreaShape>>();

export function surveyOf(document: AtlasDocument): Survey {
  const frame = frameOf(document);
  const known = shapes.get(frame) ?? new WeakMap<AreaRecord, AreaShape>();
  shapes.set(frame, known);
  const areas = recordsOf(document, 'area').map((record) => {
    const shape = known.get(record) ?? shapeOf(record, frame);
    known.set(record, shape);
    return shape;
  });
  const holes = holesInOrder(document);
  const greens = new Map(
    areas.filter(({ record }) => record.kind === 'green').map((area) => [area.record.id, area]),
  );
  const near = (at: LonLat): string => {
    const point = frame.toPlane(at);
    let best = { distance: REACH_M, label: '' };
    for (const hole of holes) {
      const green = hole.greenId === null ? undefined : greens.get(hole.greenId);
      if (green === undefined) continue;
      const distance = distanceM(point, green.centre);
      if (distance < best.distance) best = { distance, label: holeName(document, hole) };
    }
    return best.label;
  };
  return { document, frame, areas, holes, near };
}

export function holeName(document: AtlasDocument, hole: HoleRecord): string {
  const header = document.records.get('atlas');
  return `${header?.type === 'atlas' && header.kind === 'practiceGround' ? 'Station' : 'Hole'} ${hole.label}`;
}

/** "Hole 4, bunker Front left". */
export function areaPlace(survey: Survey, { record, centre }: AreaShape): string {
  const hole = survey.near(survey.frame.toLonLat(centre));
  const words = `${kindWords[record.kind]}${record.name === '' ? ` ${record.id}` : ` ${record.name}`}`;
  return hole === '' ? words : `${hole}, ${words}`;
}

function shapeOf(record: AreaRecord, frame: LocalFrame): AreaShape {
  const polygon = planePolygon(frame, record.rings);
  const outer = polygon[0] ?? [];
  let crossing: AreaShape['crossing'] = null;
  for (let ring = 0; ring < polygon.length && crossing === null; ring += 1) {
    const found = selfIntersection(polygon[ring] ?? []);
    if (found !== null) crossing = { ring, crossing: found };
  }
  return {
    record,
    polygon,
    box: boundingBox(outer) ?? { westM: 0, southM: 0, eastM: 0, northM: 0 },
    centre: centroid(outer),
    crossing,
  };
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.westM <= b.eastM && b.westM <= a.eastM && a.southM <= b.northM && b.southM <= a.northM;
}

export function inBox({ eastM, northM }: PlanePoint, box: Box): boolean {
  return eastM >= box.westM && eastM <= box.eastM && northM >= box.southM && northM <= box.northM;
}
