import { distanceM, nearestOnRing } from '../../geometry/ring.ts';
import { recordsOf } from '../document.ts';
import { putRecords, removeRecords } from '../edits.ts';
import type { BallPosition, HoleLocation, HoleRecord } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { areaPlace, type AreaShape, holeName, type Survey } from './survey.ts';

/** Outlines this close everywhere are one thing traced or imported twice. */
const SAME_M = 0.05;

export function duplicateChecks(survey: Survey): readonly Finding[] {
  const { document } = survey;
  const holes = new Map(survey.holes.map((hole) => [hole.id, hole]));
  const inHole = (record: HoleLocation | BallPosition): string => {
    const hole = holes.get(record.holeId);
    return hole === undefined ? '' : `${holeName(document, hole)}, `;
  };
  return [
    ...duplicateAreas(survey),
    ...sameLabels(
      survey.holes,
      () => '',
      (hole) => holeName(document, hole),
      'hole-label',
    ),
    ...sameLabels(
      recordsOf(document, 'holeLocation'),
      (r) => r.holeId,
      (r) => `${inHole(r)}flag ${r.label}`,
      'flag-label',
    ),
    ...sameLabels(
      recordsOf(document, 'ballPosition'),
      (r) => r.holeId,
      (r) => `${inHole(r)}ball ${r.label}`,
      'ball-label',
    ),
  ];
}

function duplicateAreas(survey: Survey): readonly Finding[] {
  const byKey = new Map<string, AreaShape[]>();
  const found: Finding[] = [];
  for (const area of survey.areas) {
    // Centres within 5 cm can fall into neighbouring cells of 1 m, so each looks into the four it may touch.
    const east = area.centre.eastM;
    const north = area.centre.northM;
    const cells = new Set(
      [-SAME_M, SAME_M].flatMap((dx) =>
        [-SAME_M, SAME_M].map(
          (dy) => `${area.record.kind},${String(Math.floor(east + dx))},${String(Math.floor(north + dy))}`,
        ),
      ),
    );
    const twin = [...cells].flatMap((key) => byKey.get(key) ?? []).find((other) => sameOutline(area, other));
    if (twin !== undefined)
      found.push(
        finding('duplicate-area', 'warning', [twin.record.id, area.record.id], {
          place: areaPlace(survey, area),
          at: survey.frame.toLonLat(area.centre),
          what: `It is the same outline as ${twin.record.name === '' ? twin.record.id : twin.record.name}.`,
          remedy: 'Take one of them out.',
          mend: removeRecords('took out an area traced twice', [area.record.id]),
        }),
      );
    const own = `${area.record.kind},${String(Math.floor(east))},${String(Math.floor(north))}`;
    byKey.set(own, [...(byKey.get(own) ?? []), area]);
  }
  return found;
}

function sameOutline(a: AreaShape, b: AreaShape): boolean {
  if (distanceM(a.centre, b.centre) > SAME_M) return false;
  const [left = [], right = []] = [a.polygon[0], b.polygon[0]];
  return (
    left.every((point) => nearestOnRing(point, right).distanceM < SAME_M) &&
    right.every((point) => nearestOnRing(point, left).distanceM < SAME_M)
  );
}

type Labelled = HoleRecord | HoleLocation | BallPosition;

function sameLabels<T extends Labelled>(
  records: readonly T[],
  group: (record: T) => string,
  place: (record: T) => string,
  check: string,
): readonly Finding[] {
  const taken = new Set(records.map((record) => `${group(record)} ${record.label}`));
  const seen = new Map<string, T>();
  return records.flatMap((record) => {
    const key = `${group(record)} ${record.label}`;
    const earlier = seen.get(key);
    if (earlier === undefined) {
      seen.set(key, record);
      return [];
    }
    let next = 1;
    while (taken.has(`${group(record)} ${String(next)}`)) next += 1;
    return [
      finding(`duplicate-${check}`, 'error', [earlier.id, record.id], {
        place: place(record),
        at: record.type === 'hole' ? null : record.at,
        what: `The label ${record.label} is used twice.`,
        remedy: 'Give one of them another label.',
        mend: putRecords(`relabelled ${record.label} as ${String(next)}`, [
          { ...record, label: String(next) },
        ]),
      }),
    ];
  });
}
