import type { Finding } from '../../shared/atlas/checks/finding.ts';
import { frameOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { slope, smallHeight, withUnit } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import type { Ground } from './useGround.ts';

/** Something to look at, with where it is and the edit that mends it if there is one. */
export interface LookAt {
  readonly id: string;
  readonly ink: 'alert' | 'doubt';
  readonly text: string;
  readonly remedy: string;
  readonly at: PlanePoint | null;
  readonly recordId: string | null;
  readonly mend: Edit | null;
}

/** What the checks of the document say. */
export function findingsOf(document: AtlasDocument, findings: readonly Finding[]): readonly LookAt[] {
  const { toPlane } = frameOf(document);
  return findings.map(({ id, place, at, what, remedy, mend, recordIds }) => ({
    id,
    ink: 'alert',
    text: place === '' ? what : `${withoutIds(place, recordIds)}: ${afterColon(what)}`,
    remedy,
    at: at === null ? null : toPlane(at),
    recordId: recordIds[0] ?? null,
    mend,
  }));
}

/** Readings the others contradict. */
export function doubtsOf(ground: Ground | null, units: UnitsPreference): readonly LookAt[] {
  if (ground === null) return [];
  return ground.read.readings
    .filter(({ verdict }) => verdict === 'contradicts')
    .map(({ id, kind, at, othersDiffer, unit }): LookAt => {
      // What the others say less what was read: a reading above them makes it negative.
      const words =
        unit === 'm'
          ? `stands ${withUnit(smallHeight(Math.abs(othersDiffer), units))} ${othersDiffer < 0 ? 'above' : 'below'} its neighbours`
          : `is ${withUnit(slope(Math.abs(othersDiffer)))} off its neighbours`;
      const name = kind === 'height' ? 'A spot height' : kind === 'slope' ? 'A slope reading' : 'A contour';
      return {
        id: `reading ${id}`,
        ink: 'alert',
        text: `${name} ${words}.`,
        remedy: 'Measure it again, or take it out.',
        at,
        recordId: id,
        mend: null,
      };
    });
}

/** A sentence as the rest of one: names keep their capital. */
const afterColon = (what: string): string =>
  what.replace(/^(It|Its|The|A|An)\b/, (word) => word.toLowerCase());

/** A place without the ids of unnamed things, which say nothing to a person. */
const withoutIds = (place: string, ids: readonly string[]): string =>
  ids.reduce((words, id) => words.replace(` (${id})`, '').replace(` ${id}`, ''), place);
