import { inBox, widened } from '../../geometry/box.ts';
import type { PlanePoint, PlanePolygon } from '../../geometry/points.ts';
import { planePoint } from '../../geometry/points.ts';
import { centroid, distanceM, insideDistanceM } from '../../geometry/ring.ts';
import { kindWords } from '../../words/coverWords.ts';
import { compareIds, headerOf } from '../document.ts';
import { gridNodes } from '../gridNodes.ts';
import { putRecords, useRecord } from '../edits.ts';
import type { BallPosition, ElevationGrid, HoleLocation, HoleRecord } from '../records.ts';
import { aroundBall, clearPlace, isNoBall } from './clearOf.ts';
import { finding, type Finding } from './finding.ts';
import { type AreaShape, greenOf, holeName, type Survey } from './survey.ts';

/** Common practice for hole locations: four paces of a yard from the edge of the green. */
const FROM_EDGE_M = 4 * 0.9144;
/** Readings this far beyond a green still bear on its edge. */
const NEAR_GREEN_M = 5;
const FEW_READINGS = 6;

export function holeChecks(survey: Survey): readonly Finding[] {
  const { document, index } = survey;
  const flags = byHole(index.of('holeLocation').map(({ record }) => record));
  const balls = index.of('ballPosition').map(({ record }) => record);
  const ballsOf = byHole(balls);
  return [
    ...survey.holes.flatMap((hole) => {
      const green = greenOf(document, hole);
      const own = flags.get(hole.id) ?? [];
      return [
        ...wholeHole(survey, hole, green, own, ballsOf.get(hole.id) ?? []),
        ...(green === null ? [] : own.flatMap((flag) => flagPlace(survey, hole, green, flag))),
      ];
    }),
    ...balls.flatMap((ball) => ballPlace(survey, ball)),
    ...inUse(survey),
  ];
}

function wholeHole(
  survey: Survey,
  hole: HoleRecord,
  green: AreaShape | null,
  flags: readonly HoleLocation[],
  balls: readonly BallPosition[],
): readonly Finding[] {
  const place = holeName(survey.document, hole);
  if (green === null)
    return [
      finding('hole-without-green', 'error', [hole.id], {
        place,
        at: null,
        what: 'It has no green.',
        remedy: 'Trace its green, or choose one of those traced.',
      }),
    ];
  const at = survey.frame.toLonLat(green.centre);
  const found: Finding[] = [];
  if (flags.length === 0)
    found.push(
      finding('hole-without-flag', 'error', [hole.id], {
        place,
        at,
        what: 'It has no hole location.',
        remedy: 'Pin one on its green.',
      }),
    );
  if (balls.length === 0)
    found.push(
      finding('hole-without-ball', 'note', [hole.id], {
        place,
        at,
        what: 'It has no ball position.',
        remedy: 'Pin the spots where balls are likely to stop.',
      }),
    );
  // Places of flags on sheets and pages are counted along it; a station is played from all round.
  const { kind, placed } = headerOf(survey.document);
  if (kind === 'course' && hole.line === null && flags.length > 0)
    found.push(
      finding('hole-without-line', 'note', [hole.id], {
        place,
        at,
        what: `It has no line of play, so its flags are told as if it were played ${placed ? 'to the north' : 'up the sheet'}.`,
        remedy: 'Draw it from Holes and stations.',
      }),
    );
  const readings = readingsNear(survey, green);
  if (readings < FEW_READINGS)
    found.push(
      finding(
        readings === 0 ? 'green-without-elevation' : 'green-with-few-readings',
        readings === 0 ? 'error' : 'warning',
        [green.record.id],
        {
          place: `${place}, green`,
          at,
          what:
            readings === 0
              ? 'The green has no heights or slopes.'
              : `The green has only ${String(readings)} heights and slopes.`,
          remedy: 'Read spot heights or slopes on it: twelve or more show its shape.',
        },
      ),
    );
  return found;
}

function readingsNear({ frame, index }: Survey, green: AreaShape): number {
  const { polygon } = green;
  const box = widened(green.box, NEAR_GREEN_M);
  const near = (point: PlanePoint): boolean =>
    inBox(point, box) && insideDistanceM(point, polygon) > -NEAR_GREEN_M;
  let count = 0;
  for (const { record, points } of index.pointsIn(box)) {
    if (record.type === 'spotHeight' || record.type === 'slopeReading' || record.type === 'planeByEye')
      count += points.filter(near).length;
  }
  for (const { record, points } of index.linesIn(box))
    if (record.kind === 'contour' && record.heightM !== null) count += points.filter(near).length;
  for (const { record } of index.of('elevationGrid')) {
    const known = nodesNear.get(green) ?? new WeakMap<ElevationGrid, number>();
    nodesNear.set(green, known);
    const nodes = known.get(record) ?? gridNodes(record, frame).filter(({ at }) => near(at)).length;
    known.set(record, nodes);
    count += nodes;
  }
  return count;
}

/** Nodes of elevation grids near a green, counted once while both stay the same: a grid has tens of thousands. */
const nodesNear = new WeakMap<AreaShape, WeakMap<ElevationGrid, number>>();

function flagPlace(
  survey: Survey,
  hole: HoleRecord,
  green: AreaShape,
  flag: HoleLocation,
): readonly Finding[] {
  const at = survey.frame.toPlane(flag.at);
  const inside = insideDistanceM(at, green.polygon);
  if (inside >= FROM_EDGE_M) return [];
  const place = `${holeName(survey.document, hole)}, flag ${flag.label}`;
  const better = towardsMiddle(at, green.polygon);
  const mend =
    better === null
      ? null
      : putRecords(`moved flag ${flag.label} four paces in`, [
          { ...flag, at: survey.frame.toLonLat(better) },
        ]);
  return [
    inside < 0
      ? finding('flag-off-green', 'error', [flag.id], {
          place,
          at: flag.at,
          what: 'The flag stands off the green.',
          remedy: 'Move it onto the green.',
          mend,
        })
      : finding('flag-near-edge', 'warning', [flag.id], {
          place,
          at: flag.at,
          what: 'The flag stands nearer to the edge than four paces.',
          remedy: 'Move it in if the greenkeeper would not cut the hole there; the Committee decides.',
          mend,
        }),
  ];
}

/** The first place on the way to the middle of the green that is far enough from its edge. */
function towardsMiddle(from: PlanePoint, polygon: PlanePolygon): PlanePoint | null {
  const middle = centroid(polygon[0] ?? []);
  const steps = Math.ceil(distanceM(from, middle) / 0.1);
  for (let step = 1; step <= steps; step += 1) {
    const share = step / steps;
    const at = planePoint(
      from.eastM + share * (middle.eastM - from.eastM),
      from.northM + share * (middle.northM - from.northM),
    );
    if (insideDistanceM(at, polygon) > FROM_EDGE_M + 0.01) return at;
  }
  return null;
}

const noBall = { tree: 'warning', penaltyArea: 'warning', outOfBounds: 'error' } as const;

function ballPlace(survey: Survey, ball: BallPosition): readonly Finding[] {
  const at = survey.frame.toPlane(ball.at);
  const hole = survey.document.records.get(ball.holeId);
  const place = `${hole?.type === 'hole' ? `${holeName(survey.document, hole)}, ` : ''}ball ${ball.label}`;
  const around = aroundBall(survey.index, at).toSorted((a, b) => compareIds(a.record, b.record));
  if (around.length === 0) return [];
  const clear = clearPlace(survey.index, at);
  const mend =
    clear === null
      ? null
      : putRecords(`moved ball ${ball.label} clear`, [{ ...ball, at: survey.frame.toLonLat(clear) }]);
  return around.flatMap(({ record }) => {
    if (!isNoBall(record.kind)) return [];
    return [
      finding(`ball-in-${record.kind}`, noBall[record.kind], [ball.id, record.id], {
        place,
        at: ball.at,
        what:
          record.kind === 'tree'
            ? `The ball lies under the crown of ${record.name === '' ? 'a tree' : record.name}.`
            : `The ball lies ${record.kind === 'outOfBounds' ? 'out of bounds' : `in the ${kindWords[record.kind]}`}.`,
        remedy: 'Move it to where a ball can be played, or mend the outline.',
        mend,
      }),
    ];
  });
}

/** Exactly one day and one player must be in use for a plan. */
function inUse({ index }: Survey): readonly Finding[] {
  return (['conditions', 'player'] as const).flatMap((type) => {
    const records = index.of(type).map(({ record }) => record);
    const used = records.filter((record) => record.inUse);
    if (used.length === 1) return [];
    const first = used[0] ?? records[0];
    const what = type === 'player' ? 'player' : 'day';
    return [
      finding(`${type}-in-use`, 'error', [], {
        place: type === 'player' ? 'Players' : 'Conditions',
        at: null,
        what: used.length === 0 ? `No ${what} is in use.` : `More than one ${what} is in use.`,
        remedy: records.length === 0 ? `Add a ${what}.` : 'Choose one.',
        mend: first === undefined ? null : useRecord(`chose ${first.name}`, type, first.id),
      }),
    ];
  });
}

function byHole<T extends { readonly holeId: string }>(
  records: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const record of records) {
    const group = groups.get(record.holeId);
    if (group === undefined) groups.set(record.holeId, [record]);
    else group.push(record);
  }
  return groups;
}
