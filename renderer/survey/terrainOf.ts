import { compareIds, findRecord, frameOf, recordsOf } from '../../shared/atlas/document.ts';
import { gridNodes } from '../../shared/atlas/gridNodes.ts';
import { isShapeOf } from '../../shared/atlas/planeIndex.ts';
import type { AtlasDocument, SlopeReading, SpotHeight } from '../../shared/atlas/records.ts';
import { inBox } from '../../shared/geometry/box.ts';
import { type Box, boundingBox } from '../../shared/geometry/ring.ts';
import type { PlanePolygon } from '../../shared/geometry/points.ts';
import type { TerrainInput } from '../../shared/terrain/terrainInput.ts';
import { indexOf, type PlaneShape, planeShape, terrainArea, widened } from './planeShapes.ts';

/** Ground about the green that its surface is fitted over, metres; the box grows in whole steps so that it seldom changes. */
const MARGIN_M = 15;
const STEP_M = 5;

export interface SurveyTerrain {
  readonly input: TerrainInput;
  readonly greens: readonly PlanePolygon[];
  readonly ridgeIds: readonly string[];
}

/** What the surface about a hole's green is fitted to; null while there is no green or nothing is measured. */
export function terrainOf(document: AtlasDocument, holeId: string | null): SurveyTerrain | null {
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);
  const green =
    hole === undefined || hole.greenId === null ? undefined : findRecord(document, 'area', hole.greenId);
  if (green === undefined) return null;
  const box = boundingBox(planeShape(document, green).polygon[0] ?? []);
  if (box === null) return null;
  const extent = stepped(widened(box, MARGIN_M));
  // Of thousands only those near by are looked at, in an order that does not hang on how they were found.
  const byId = <T extends { readonly record: { readonly id: string } }>(shapes: readonly T[]): readonly T[] =>
    shapes.toSorted((a, b) => compareIds(a.record, b.record));
  const index = indexOf(document);
  const areas = byId(index.areasIn(extent));
  const lines = byId(index.linesIn(extent));
  const points = byId(index.pointsIn(extent));
  const { toPlane } = frameOf(document);
  const planes = recordsOf(document, 'planeByEye').flatMap((plane) => {
    const { id, reachM, slopePct, downhillBearingDeg, accuracyPct } = plane;
    const at = toPlane(plane.at);
    return inBox(at, extent) ? [{ id, at, reachM, slopePct, downhillBearingDeg, accuracyPct }] : [];
  });
  const grids = recordsOf(document, 'elevationGrid')
    .map((grid) => ({
      id: grid.id,
      nodes: gridNodes(grid, frameOf(document)).filter(({ at }) => inBox(at, extent)),
      accuracyM: grid.accuracyM,
    }))
    .filter(({ nodes }) => nodes.length > 0);
  const input: TerrainInput = {
    ...(planes.length > 0 && { planes }),
    ...(grids.length > 0 && { grids }),
    areas: areas.map(terrainArea),
    heights: points.flatMap((shape) => (isShapeOf(shape, 'spotHeight') ? heightOf(shape) : [])),
    slopes: points.flatMap((shape) => (isShapeOf(shape, 'slopeReading') ? slopeOf(shape) : [])),
    breaklines: lines.flatMap(({ record, points }) =>
      record.kind === 'tierEdge' || record.kind === 'ridge' ? [{ id: record.id, points }] : [],
    ),
    contours: lines.flatMap(({ record, points }) =>
      record.kind === 'contour' && record.heightM !== null
        ? [{ id: record.id, points, heightM: record.heightM }]
        : [],
    ),
    walls: [],
    extent,
  };
  const evidence = [input.heights, input.slopes, input.contours, planes, grids];
  if (evidence.every(({ length }) => length === 0)) return null;
  return {
    input,
    greens: areas.filter(({ record }) => record.kind === 'green').map(({ polygon }) => polygon),
    ridgeIds: lines.filter(({ record }) => record.kind === 'ridge').map(({ record }) => record.id),
  };
}

/** Whether two grounds are made of the very same things: cheap to tell, and nearly always so after an edit elsewhere. */
export function sameTerrain({ input: a }: SurveyTerrain, { input: b }: SurveyTerrain): boolean {
  const same = (one: readonly unknown[], other: readonly unknown[]): boolean =>
    one.length === other.length && one.every((item, i) => item === other[i]);
  return (
    same(a.areas, b.areas) &&
    same(a.heights, b.heights) &&
    same(a.slopes, b.slopes) &&
    [a, b].every(
      ({ breaklines, contours, planes, grids }) =>
        breaklines.length + contours.length + (planes ?? []).length + (grids ?? []).length === 0,
    ) &&
    a.extent.westM === b.extent.westM &&
    a.extent.southM === b.extent.southM &&
    a.extent.eastM === b.extent.eastM &&
    a.extent.northM === b.extent.northM
  );
}

const heights = new WeakMap<PlaneShape, TerrainInput['heights']>();
/** The reading as terrain knows it, the same object for as long as it stays the same. */
function heightOf(shape: PlaneShape<SpotHeight>): TerrainInput['heights'] {
  const { record, points } = shape;
  const [at] = points;
  const made =
    heights.get(shape) ??
    (at === undefined ? [] : [{ id: record.id, at, heightM: record.heightM, accuracyM: record.accuracyM }]);
  heights.set(shape, made);
  return made;
}

const slopes = new WeakMap<PlaneShape, TerrainInput['slopes']>();
function slopeOf(shape: PlaneShape<SlopeReading>): TerrainInput['slopes'] {
  const { id, slopePct, downhillBearingDeg, accuracyPct } = shape.record;
  const [at] = shape.points;
  const made =
    slopes.get(shape) ?? (at === undefined ? [] : [{ id, at, slopePct, downhillBearingDeg, accuracyPct }]);
  slopes.set(shape, made);
  return made;
}

const stepped = ({ westM, southM, eastM, northM }: Box): Box => ({
  westM: Math.floor(westM / STEP_M) * STEP_M,
  southM: Math.floor(southM / STEP_M) * STEP_M,
  eastM: Math.ceil(eastM / STEP_M) * STEP_M,
  northM: Math.ceil(northM / STEP_M) * STEP_M,
});
