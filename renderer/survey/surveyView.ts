import { compareIds, recordsOf } from '../../shared/atlas/document.ts';
import type { AreaRecord, AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { type Box, boundingBox } from '../../shared/geometry/ring.ts';
import { LastMade } from '../../shared/plate/lastMade.ts';
import type { Measurements } from '../../shared/plate/measurements.ts';
import type { ReliefDrawing } from '../../shared/plate/relief.ts';
import type { TerrainArea } from '../../shared/terrain/terrainInput.ts';
import { slope, spotHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { SurveyDrawing } from '../map/surveyDrawing.ts';
import type { Ground } from './useGround.ts';
import {
  areaShapes,
  indexOf,
  lineShapes,
  meets,
  type PlaneShape,
  planeShape,
  terrainArea,
} from './planeShapes.ts';

export interface ViewOptions {
  readonly holeId: string | null;
  readonly heldId: string | null;
  readonly ground: Ground | null;
  readonly units: UnitsPreference;
  readonly grid: boolean;
  readonly overPicture: boolean;
  readonly measureHere: readonly PlanePoint[];
}

/** The document as the plate shows it: ground in the order of cover, evidence, flags and balls of the hole. */
export function surveyDrawing(document: AtlasDocument, options: ViewOptions): SurveyDrawing {
  const { holeId, heldId, ground, units } = options;
  const doubtful = new Set(
    ground?.read.readings.filter(({ verdict }) => verdict === 'contradicts').map(({ id }) => id),
  );
  const lines = lineShapes(document);
  const relief: ReliefDrawing = ground?.relief ?? bareRelief(lines);
  const playLine = holeId === null ? undefined : document.records.get(holeId);
  return {
    areasIn: (box) => areasIn(document, box),
    lines: [
      ...lines.flatMap(({ record, points }) =>
        record.kind === 'contour' || record.kind === 'wall'
          ? [
              {
                id: record.id,
                kind: record.kind,
                points,
                text: record.heightM === null ? '' : withUnit(spotHeight(record.heightM, units)),
              },
            ]
          : [],
      ),
      ...(playLine?.type === 'hole' && playLine.line !== null
        ? [
            {
              id: playLine.id,
              kind: 'play' as const,
              points: planeShape(document, playLine).points,
              text: '',
            },
          ]
        : []),
    ],
    relief,
    measurementsIn: (box) => ({
      ...measurementsIn(document, box, doubtful, units),
      measureHere: options.measureHere,
    }),
    marks: {
      balls: placesOf(document, 'ballPosition', holeId, heldId),
      flags: placesOf(document, 'holeLocation', holeId, heldId),
    },
    landmarks: recordsOf(document, 'landmark').flatMap((landmark) => {
      const [at] = planeShape(document, landmark).points;
      return at === undefined ? [] : [{ id: landmark.id, at, name: landmark.name }];
    }),
    base: areaShapes(document).length === 0 ? 'blank' : 'lightRough',
    grid: options.grid,
    overPicture: options.overPicture,
    units,
  };
}

type Areas = readonly PlaneShape<AreaRecord>[];
const byId = (areas: Areas): Areas => areas.toSorted((a, b) => compareIds(a.record, b.record));
const sortedBefore = new WeakMap<Areas, Areas>();
/** More than these are put in order all at once, and stay so until one of them changes. */
const FEW = 300;

/** Areas of a part of the sheet, in an order that does not hang on how they were found. */
function areasIn(document: AtlasDocument, box: Box): readonly TerrainArea[] {
  const index = indexOf(document);
  const near = index.areasIn(box);
  if (near.length <= FEW) return byId(near).map(terrainArea);
  const all = index.of('area');
  const sorted = sortedBefore.get(all) ?? byId(all);
  sortedBefore.set(all, sorted);
  return sorted.filter((area) => meets(area.box, box)).map(terrainArea);
}

const heightsBefore = new LastMade<PlaneShape, Measurements['heights'][number]>();

/** Heights and slopes of a part of the sheet: of thousands, only those to be seen are worded, and each but once. */
function measurementsIn(
  document: AtlasDocument,
  box: Box,
  doubtful: ReadonlySet<string>,
  units: UnitsPreference,
): Pick<Measurements, 'heights' | 'slopes'> {
  const heights: Measurements['heights'][number][] = [];
  const slopes: Measurements['slopes'][number][] = [];
  // In the document's order: to sort thousands takes longer than to look at each.
  for (const shape of indexOf(document).of('spotHeight')) {
    const { record, points } = shape;
    const [at] = points;
    if (at === undefined || !meets(shape.box, box)) continue;
    const { id } = record;
    const doubted = doubtful.has(id);
    heights.push(
      heightsBefore.get(shape, [units, doubted], () => ({
        ...{ id, at, text: spotHeight(record.heightM, units).text, doubtful: doubted },
      })),
    );
  }
  for (const { record, points, box: own } of indexOf(document).of('slopeReading')) {
    const [at] = points;
    if (at === undefined || !meets(own, box)) continue;
    const { id, slopePct, downhillBearingDeg } = record;
    slopes.push({ id, at, downhillBearingDeg, text: withUnit(slope(slopePct)) });
  }
  return { heights, slopes };
}

function placesOf(
  document: AtlasDocument,
  type: 'ballPosition' | 'holeLocation',
  holeId: string | null,
  heldId: string | null,
): SurveyDrawing['marks']['balls'] {
  return recordsOf(document, type)
    .filter((place) => place.holeId === holeId)
    .flatMap((place) => {
      const [at] = planeShape(document, place).points;
      return at === undefined ? [] : [{ id: place.id, label: place.label, at, chosen: place.id === heldId }];
    });
}

/** Tier edges and ridges before there is a surface: drawn without a side that falls. */
const bareRelief = (lines: ReturnType<typeof lineShapes>): ReliefDrawing => ({
  greens: [],
  slopeClasses: [],
  contours: [],
  arrows: [],
  lines: lines.flatMap(({ record, points }) =>
    record.kind === 'tierEdge' || record.kind === 'ridge' ? [{ kind: record.kind, points }] : [],
  ),
  downhillAt: null,
});

/** What to show of a hole at first: its green with some ground round it, else all there is, else an empty sheet of 40 yd. */
export function homeOf(document: AtlasDocument, holeId: string | null): readonly PlanePoint[] {
  const hole = holeId === null ? undefined : document.records.get(holeId);
  const green =
    hole?.type === 'hole' && hole.greenId !== null ? document.records.get(hole.greenId) : undefined;
  if (green?.type === 'area') {
    const outer = planeShape(document, green).polygon[0] ?? [];
    const box = boundingBox(outer);
    if (box !== null)
      return [
        { eastM: box.westM - 8, northM: box.southM - 8 },
        { eastM: box.eastM + 8, northM: box.northM + 8 },
      ];
  }
  if (hole?.type === 'hole' && hole.line !== null) return planeShape(document, hole).points;
  const all = areaShapes(document).flatMap(({ polygon }) => polygon[0] ?? []);
  if (all.length > 0) return all;
  return [
    { eastM: -20, northM: -16 },
    { eastM: 20, northM: 16 },
  ];
}
