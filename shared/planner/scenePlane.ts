import type { AreaRecord, AtlasDocument } from '../atlas/records.ts';
import { gridNodes } from '../atlas/gridNodes.ts';
import type { LonLat, PlanePoint, PlanePolygon } from '../geometry/points.ts';
import { localFrame } from '../geometry/localFrame.ts';
import type { TerrainArea, TerrainInput } from '../terrain/terrainInput.ts';
import { InputProblem } from '../words/inputProblem.ts';
import { conditionsOf } from './conditionsOf.ts';
import type { Scene } from './scene.ts';
import { sceneRecords } from './sceneRecords.ts';

/** Ground kept around the green, the balls and the flags, metres. */
const MARGIN_M = 12;
/** The box is widened to whole steps, so that a small drag of a ball keeps it, metres. */
const BOX_STEP_M = 5;

/** A scene before its ground is fitted. */
export type ScenePlane = Omit<Scene, 'key' | 'groundKey' | 'surfaceKey' | 'surface' | 'ground'>;

/** Throws InputProblem as sceneRecords does, and for bad positions and a green without elevation evidence. */
export function scenePlane(document: AtlasDocument, holeId: string): ScenePlane {
  const records = sceneRecords(document, holeId);
  const { hole, greenRecord } = records;
  const place = `Hole ${hole.label}`;
  const frame = localFrame(records.anchor);
  const toPlane = (at: LonLat): PlanePoint => {
    const point = frame.toPlane(at);
    if (!Number.isFinite(point.eastM) || !Number.isFinite(point.northM)) {
      throw new InputProblem('bad-position', 'a position is not a number.', place, 'Correct or remove it.');
    }
    return point;
  };
  const ring = (positions: readonly LonLat[]): readonly PlanePoint[] => positions.map(toPlane);
  const polygon = (area: AreaRecord): PlanePolygon => area.rings.map(ring);

  const green = { record: greenRecord, polygon: polygon(greenRecord) };
  const flags = records.flagRecords.map((record) => ({ record, at: toPlane(record.at) }));
  const balls = records.ballRecords.map((record) => ({ record, at: toPlane(record.at) }));
  const extent = box([...green.polygon.flat(), ...flags.map((f) => f.at), ...balls.map((b) => b.at)]);
  const inside = (points: readonly PlanePoint[]): boolean => touches(extent, points);

  const areas: TerrainArea[] = records.areas
    .map((area) => ({
      id: area.id,
      kind: area.kind,
      name: area.name,
      polygon: polygon(area),
      lipHeightM: area.lipHeightM,
      treeHeightM: area.treeHeightM,
      canopyBaseM: area.canopyBaseM,
      ...(area.id === greenRecord.id && area.grain !== undefined && { grain: area.grain }),
    }))
    .filter((area) => inside(area.polygon[0] ?? []));
  const lines = records.lines
    .map((line) => ({
      id: line.id,
      kind: line.kind,
      name: line.name,
      heightM: line.heightM,
      points: ring(line.positions),
    }))
    .filter((line) => inside(line.points));
  const planes = records.planes
    .map(({ id, at, reachM, slopePct, downhillBearingDeg, accuracyPct }) => ({
      id,
      at: toPlane(at),
      reachM,
      slopePct,
      downhillBearingDeg,
      accuracyPct,
    }))
    .filter((plane) => inside([plane.at]));
  const grids = records.grids
    .map((grid) => ({
      id: grid.id,
      nodes: gridNodes(grid, frame).filter((node) => inside([node.at])),
      accuracyM: grid.accuracyM,
    }))
    .filter(({ nodes }) => nodes.length > 0);
  const input: TerrainInput = {
    areas,
    heights: records.heights
      .map(({ id, at, heightM, accuracyM }) => ({ id, at: toPlane(at), heightM, accuracyM }))
      .filter((height) => inside([height.at])),
    slopes: records.slopes
      .map(({ id, at, slopePct, downhillBearingDeg, accuracyPct }) => ({
        id,
        at: toPlane(at),
        slopePct,
        downhillBearingDeg,
        accuracyPct,
      }))
      .filter((slope) => inside([slope.at])),
    ...(planes.length > 0 && { planes }),
    ...(grids.length > 0 && { grids }),
    breaklines: lines.flatMap(({ id, kind, points }) =>
      kind === 'tierEdge' || kind === 'ridge' ? [{ id, points }] : [],
    ),
    contours: lines.flatMap(({ id, kind, points, heightM }) =>
      kind === 'contour' && heightM !== null ? [{ id, points, heightM }] : [],
    ),
    walls: lines.flatMap(({ id, kind, name, points, heightM }) =>
      kind === 'wall' && heightM !== null ? [{ id, name, points, heightM }] : [],
    ),
    extent,
  };
  if ([input.heights, input.contours, input.slopes, planes, grids].every(({ length }) => length === 0)) {
    throw new InputProblem(
      'green-without-elevation',
      `the green${greenRecord.name === '' ? '' : ` “${greenRecord.name}”`} has no heights or slope readings.`,
      place,
      'Add spot heights or slope readings on and around it.',
    );
  }
  return {
    hole,
    frame,
    input,
    green,
    flags,
    balls,
    conditions: conditionsOf(records.conditions),
    player: records.player,
  };
}

type Extent = TerrainInput['extent'];

function box(points: readonly PlanePoint[]): Extent {
  const east = points.map((point) => point.eastM);
  const north = points.map((point) => point.northM);
  const down = (value: number): number => Math.floor((value - MARGIN_M) / BOX_STEP_M) * BOX_STEP_M;
  const up = (value: number): number => Math.ceil((value + MARGIN_M) / BOX_STEP_M) * BOX_STEP_M;
  return {
    westM: down(Math.min(...east)),
    southM: down(Math.min(...north)),
    eastM: up(Math.max(...east)),
    northM: up(Math.max(...north)),
  };
}

/** Whether the bounding box of the points meets the extent. */
function touches(extent: Extent, points: readonly PlanePoint[]): boolean {
  const east = points.map((point) => point.eastM);
  const north = points.map((point) => point.northM);
  return (
    Math.min(...east) <= extent.eastM &&
    Math.max(...east) >= extent.westM &&
    Math.min(...north) <= extent.northM &&
    Math.max(...north) >= extent.southM
  );
}
