import type { LocalFrame } from '../../geometry/localFrame.ts';
import type { PlanePoint, PlanePolygon } from '../../geometry/points.ts';
import { type Box, centroid, distanceM } from '../../geometry/ring.ts';
import { type Crossing, selfIntersection } from '../../geometry/selfIntersection.ts';
import type { UnitsPreference } from '../../units/preference.ts';
import { kindWords } from '../../words/coverWords.ts';
import { compareIds, frameOf } from '../document.ts';
import type { PlaneIndex } from '../planeIndex.ts';
import { type PlaneShape, planeShape } from '../planeShape.ts';
import type { AreaRecord, AtlasDocument, HoleRecord } from '../records.ts';
import type { Finding } from './finding.ts';

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
  readonly index: PlaneIndex;
  /** Those the findings are worded in. */
  readonly units: UnitsPreference;
  /** In the order of play. */
  readonly holes: readonly HoleRecord[];
  /** "Hole 4" or "Station S1" for the nearest green, or nothing when none is within 120 m. */
  readonly near: (at: PlanePoint) => string;
}

const REACH_M = 120;
const shapes = new WeakMap<PlaneShape<AreaRecord>, AreaShape>();

/** The area with its centre and crossing: half a second for the thousands of a large atlas at first, nothing afterwards. */
export function areaShape(shape: PlaneShape<AreaRecord>): AreaShape {
  const before = shapes.get(shape);
  if (before !== undefined) return before;
  const made = shapeOf(shape);
  shapes.set(shape, made);
  return made;
}

/** What the checks of a document work on; the index has to stand at that document. */
export function surveyOf(document: AtlasDocument, index: PlaneIndex, units: UnitsPreference): Survey {
  const holes = index
    .of('hole')
    .map(({ record }) => record)
    .toSorted((a, b) => a.order - b.order || compareIds(a, b));
  const greens = holes.flatMap((hole) => {
    const green = greenOf(document, hole);
    return green === null ? [] : [{ centre: green.centre, label: holeName(document, hole) }];
  });
  const near = (at: PlanePoint): string => {
    let best = { distance: REACH_M, label: '' };
    for (const { centre, label } of greens) {
      const distance = distanceM(at, centre);
      if (distance < best.distance) best = { distance, label };
    }
    return best.label;
  };
  return { document, frame: frameOf(document), index, units, holes, near };
}

/** The green of a hole if it has one and it is a green. */
export function greenOf(document: AtlasDocument, { greenId }: HoleRecord): AreaShape | null {
  const record = greenId === null ? undefined : document.records.get(greenId);
  return record?.type === 'area' && record.kind === 'green' ? areaShape(planeShape(document, record)) : null;
}

/** The finding told from the nearest hole: "Hole 4, " goes before its place. */
export function told(survey: Survey, found: Finding, at: PlanePoint): Finding {
  const hole = survey.near(at);
  return hole === '' ? found : { ...found, place: `${hole}, ${found.place}` };
}

export function holeName(document: AtlasDocument, hole: HoleRecord): string {
  const header = document.records.get('atlas');
  return `${header?.type === 'atlas' && header.kind === 'practiceGround' ? 'Station' : 'Hole'} ${hole.label}`;
}

/** "bunker Front left". */
export const areaPlace = ({ kind, name, id }: AreaRecord): string =>
  `${kindWords[kind]} ${name === '' ? id : name}`;

function shapeOf({ record, polygon, box }: PlaneShape<AreaRecord>): AreaShape {
  let crossing: AreaShape['crossing'] = null;
  for (let ring = 0; ring < polygon.length && crossing === null; ring += 1) {
    const found = selfIntersection(polygon[ring] ?? []);
    if (found !== null) crossing = { ring, crossing: found };
  }
  return { record, polygon, box, centre: centroid(polygon[0] ?? []), crossing };
}
