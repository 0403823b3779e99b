import { putRecords } from '../edits.ts';
import type { BallPosition, HoleLocation, HoleRecord } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { holeName, type Survey } from './survey.ts';

/** Holes, flags of a hole or balls of a hole that share a label. */
export function labelChecks(survey: Survey): readonly Finding[] {
  const { document } = survey;
  const holes = new Map(survey.holes.map((hole) => [hole.id, hole]));
  const inHole = (record: HoleLocation | BallPosition): string => {
    const hole = holes.get(record.holeId);
    return hole === undefined ? '' : `${holeName(document, hole)}, `;
  };
  return [
    ...sameLabels(
      survey.holes,
      () => '',
      (hole) => holeName(document, hole),
      'hole-label',
    ),
    ...sameLabels(
      survey.index.of('holeLocation').map(({ record }) => record),
      (r) => r.holeId,
      (r) => `${inHole(r)}flag ${r.label}`,
      'flag-label',
    ),
    ...sameLabels(
      survey.index.of('ballPosition').map(({ record }) => record),
      (r) => r.holeId,
      (r) => `${inHole(r)}ball ${r.label}`,
      'ball-label',
    ),
  ];
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
