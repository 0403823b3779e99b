import { recordsOf } from '../../atlas/document.ts';
import type { AreaRecord, AtlasDocument, HoleRecord, RecordId } from '../../atlas/records.ts';
import type { LocalFrame } from '../../geometry/localFrame.ts';
import type { LonLat, PlanePoint } from '../../geometry/points.ts';
import { insideDistanceM } from '../../geometry/ring.ts';
import type { GroupEntry } from './groupRecords.ts';
import type { leftOutList } from './leftOutList.ts';
import type { MapFeature } from './mapFeature.ts';
import type { Meaning } from './meaning.ts';

/** A flag or ball further than this from every green belongs to none. */
const NEAR_GREEN_M = 60;
/** A hole's line ends on its green, or this near. */
const LINE_TO_GREEN_M = 30;

/** A hole, flag or ball of the file: they need the greens first. */
export interface LaterThing {
  readonly feature: MapFeature;
  readonly meaning: Meaning;
}

interface Around {
  readonly prefix: string;
  /** What the file brings besides. */
  readonly entries: readonly GroupEntry[];
  readonly leftOut: ReturnType<typeof leftOutList>;
  /** The hole of flags and balls that name none; by the nearest green where it is not said. */
  readonly holeId: RecordId | undefined;
}

/** Holes with the greens they end on, then flags and balls with the holes they name or lie by; and how many are known. */
export function holesAndPoints(
  document: AtlasDocument,
  frame: LocalFrame,
  things: readonly LaterThing[],
  { prefix, entries: areas, leftOut, holeId }: Around,
): { readonly entries: readonly GroupEntry[]; readonly known: number } {
  const entries: GroupEntry[] = [];
  let known = 0;
  const greens = [
    ...recordsOf(document, 'area'),
    ...areas.flatMap(({ record }) => (record.type === 'area' ? [record] : [])),
  ].flatMap((record) =>
    record.kind === 'green' ? [{ record, polygon: record.rings.map((ring) => ring.map(frame.toPlane)) }] : [],
  );
  const nearestGreen = (at: PlanePoint, reachM: number): AreaRecord | null => {
    let best: AreaRecord | null = null;
    let distance = reachM;
    for (const { record, polygon } of greens) {
      const away = -insideDistanceM(at, polygon);
      if (away < distance) [best, distance] = [record, away];
    }
    return best;
  };
  const holes: HoleRecord[] = [...recordsOf(document, 'hole')];
  const addHole = (feature: MapFeature, positions: readonly LonLat[]): void => {
    const ref = (feature.tags.get('ref') ?? '').trim();
    const label = (ref === '' ? nextLabel(holes.map((hole) => hole.label)) : ref).slice(0, 12);
    const there = holes.findIndex((hole) => hole.label === label);
    const before = holes[there];
    if (document.records.has(`${prefix}-${feature.id}`)) known += 1;
    else if (before !== undefined && !saysNothing(before))
      leftOut.add('holes already there', `There is a hole ${label}; it stays as it is.`, feature.place);
    else {
      const par = Number(feature.tags.get('par'));
      const end = positions.at(-1);
      const hole: HoleRecord = {
        type: 'hole',
        id: before?.id ?? `${prefix}-${feature.id}`,
        label,
        order: before?.order ?? (/^\d{1,4}$/.test(label) ? Number(label) : holes.length + 1),
        name: before === undefined || before.name === '' ? shortName(feature.name) : before.name,
        par: before?.par ?? (Number.isInteger(par) && par >= 2 && par <= 9 ? par : null),
        greenId: end === undefined ? null : (nearestGreen(frame.toPlane(end), LINE_TO_GREEN_M)?.id ?? null),
        line: positions,
      };
      if (before === undefined) holes.push(hole);
      else holes[there] = hole;
      entries.push({
        record: hole,
        how: 'Lines tagged golf=hole, with ref as the label and par; the green is where they end.',
      });
    }
  };
  const taken = new Map<string, string[]>();
  for (const record of [...recordsOf(document, 'holeLocation'), ...recordsOf(document, 'ballPosition')]) {
    const key = `${record.type} ${record.holeId}`;
    taken.set(key, [...(taken.get(key) ?? []), record.label]);
  }
  const addPoint = (
    feature: MapFeature,
    meaning: Extract<Meaning, { as: 'flag' | 'ball' }>,
    at: LonLat,
  ): void => {
    const green = nearestGreen(frame.toPlane(at), NEAR_GREEN_M);
    const hole =
      holes.find(
        ({ label }) => meaning.hole !== null && label.toLowerCase() === meaning.hole.toLowerCase(),
      ) ??
      holes.find(({ id }) => id === holeId) ??
      (green === null ? undefined : holes.find(({ greenId }) => greenId === green.id));
    if (hole === undefined) {
      leftOut.add(
        'points by no hole',
        'Flags and balls belong to a hole with a green near them: trace or import those first.',
        feature.place,
      );
      return;
    }
    const id = `${prefix}-${feature.id}`;
    if (document.records.has(id)) {
      known += 1;
      return;
    }
    const flag = meaning.as === 'flag';
    const key = `${flag ? 'holeLocation' : 'ballPosition'} ${hole.id}`;
    const labels = taken.get(key) ?? [];
    const wanted = meaning.label?.slice(0, 12) ?? '';
    const label =
      wanted !== '' && !labels.includes(wanted) ? wanted : flag ? nextLetter(labels) : nextLabel(labels);
    taken.set(key, [...labels, label]);
    const common = { id, holeId: hole.id, label, name: shortName(feature.name), at };
    entries.push(
      flag
        ? {
            record: { type: 'holeLocation', ...common },
            how: 'Points named as flags become hole locations of the hole they name, or whose green is nearest.',
          }
        : {
            record: { type: 'ballPosition', ...common, lie: 'clean', coverOverride: null },
            how: 'Other points become ball positions of the hole they name, or whose green is nearest.',
          },
    );
  };
  // Holes first, so that flags and balls find them.
  for (const { feature, meaning } of things)
    if (meaning.as === 'hole' && feature.geometry.kind === 'line')
      addHole(feature, feature.geometry.positions);
  for (const { feature, meaning } of things)
    if ((meaning.as === 'flag' || meaning.as === 'ball') && feature.geometry.kind === 'point')
      addPoint(feature, meaning, feature.geometry.at);
  return { entries, known };
}

/** A hole that so far is a label alone, as a new atlas has one: what the file says of it goes there. */
const saysNothing = ({ greenId, line }: HoleRecord): boolean => greenId === null && line === null;

export const shortName = (text: string): string => text.slice(0, 200);

export function nextLabel(labels: readonly string[]): string {
  for (let n = 1; ; n += 1) if (!labels.includes(String(n))) return String(n);
}

export function nextLetter(labels: readonly string[]): string {
  for (let n = 0; n < 26; n += 1) {
    const letter = String.fromCharCode(65 + n);
    if (!labels.includes(letter)) return letter;
  }
  return nextLabel(labels);
}
