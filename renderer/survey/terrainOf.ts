import { findRecord, frameOf, recordsOf } from '../../shared/atlas/document.ts';
import { gridNodes } from '../../shared/atlas/gridNodes.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { inBox } from '../../shared/geometry/box.ts';
import { type Box, boundingBox } from '../../shared/geometry/ring.ts';
import type { PlanePolygon } from '../../shared/geometry/points.ts';
import type { TerrainInput } from '../../shared/terrain/terrainInput.ts';
import {
  areaShapes,
  lineShapes,
  meets,
  planeShape,
  readingsOf,
  terrainArea,
  widened,
} from './planeShapes.ts';

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
  const near = ({ box: own }: { readonly box: Box }): boolean => meets(own, extent);
  const areas = areaShapes(document).filter(near);
  const lines = lineShapes(document).filter(near);
  const readings = readingsOf(document);
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
    heights: readings.heights.filter(near).flatMap(({ record, points }) => {
      const [at] = points;
      return at === undefined
        ? []
        : [{ id: record.id, at, heightM: record.heightM, accuracyM: record.accuracyM }];
    }),
    slopes: readings.slopes.filter(near).flatMap(({ record, points }) => {
      const [at] = points;
      const { id, slopePct, downhillBearingDeg, accuracyPct } = record;
      return at === undefined ? [] : [{ id, at, slopePct, downhillBearingDeg, accuracyPct }];
    }),
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

const stepped = ({ westM, southM, eastM, northM }: Box): Box => ({
  westM: Math.floor(westM / STEP_M) * STEP_M,
  southM: Math.floor(southM / STEP_M) * STEP_M,
  eastM: Math.ceil(eastM / STEP_M) * STEP_M,
  northM: Math.ceil(northM / STEP_M) * STEP_M,
});
