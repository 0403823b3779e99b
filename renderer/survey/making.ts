import { findRecord, frameOf, headerOf, holesInOrder, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords, together } from '../../shared/atlas/edits.ts';
import { mapPositions } from '../../shared/atlas/moving.ts';
import type {
  AreaRecord,
  AtlasDocument,
  AtlasRecord,
  HoleRecord,
  LineRecord,
} from '../../shared/atlas/records.ts';
import { cutArea, lineWords, newArea, ringsOf, splitArea } from '../../shared/atlas/shaping.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { bandAlong } from '../../shared/geometry/topology.ts';
import { circle } from '../../shared/geometry/turn.ts';
import { parseDegrees, parseLength, parseSlopePct } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { nextLetter, nextNumber } from '../store/labels.ts';
import { groupBox, groupWords } from './group.ts';
import { drawsOutline, type HandContext, type Purpose, type WaitingPoint } from './handState.ts';
import { isThing, type Thing } from './planeShapes.ts';
import { type ToolId, toolOf } from './tools.ts';
import { heightUnit } from './words.ts';

/** An edit for what was drawn, and which thing the hand holds after it. */
export interface Drawn {
  readonly edit: Edit;
  readonly heldId: string | null;
}

export interface SketchDone {
  readonly tool: ToolId;
  readonly purpose: Purpose;
  readonly corners: readonly PlanePoint[];
  /** A round shape about its only corner, metres. */
  readonly radiusM?: number;
  readonly typed: Readonly<Record<string, string>>;
}

/** One standard deviation of a staff read by eye, metres, and of a digital level, percent: changed in the panel. */
const USUAL_HEIGHT_ACCURACY_M = 0.006;
const USUAL_SLOPE_ACCURACY_PCT = 0.3;
const LEAST_CROWN_M = 0.3;

/** What an outline or line makes of the document. Throws InputProblem for what was typed and for shapes that cannot be. */
export function finishedSketch(context: HandContext, done: SketchDone): Drawn {
  const { document, newId } = context;
  const { tool, purpose, corners, typed } = done;
  if (purpose.kind === 'cut' || purpose.kind === 'split') {
    const area = findRecord(document, 'area', purpose.areaId);
    if (area === undefined) throw gone();
    const edit =
      purpose.kind === 'cut'
        ? cutArea(document, area, corners, newId)
        : splitArea(document, area, corners, newId);
    return { edit, heldId: area.id };
  }
  if (purpose.kind === 'lineOfPlay') {
    const hole = findRecord(document, 'hole', purpose.holeId);
    if (hole === undefined) throw gone();
    const line = corners.map(frameOf(document).toLonLat);
    return { edit: putRecords(`drew the line of play of ${hole.label}`, [{ ...hole, line }]), heldId: null };
  }
  const { id: kind, group } = toolOf(tool);
  const id = newId();
  const name = (typed['name'] ?? '').trim();
  if (group === 'area' && !drawsOutline(done)) {
    const bare = context.units.system === 'yards' ? 'yd' : 'm';
    const widthM = parseLength(typed['width'] ?? '', bare, context.units.paceM, 'Width');
    const [band] = bandAlong(corners, widthM);
    if (band === undefined)
      throw new InputProblem(
        'no-band',
        'No path of that width can be made.',
        'Width',
        `Give a width above nothing, such as 2 ${bare}.`,
      );
    return tracedArea(context, {
      ...newArea(document, id, kind, []),
      name,
      rings: ringsOf(document, band),
    });
  }
  if (group === 'area') {
    const ring =
      done.radiusM === undefined
        ? corners
        : circle(corners[0] ?? planePoint(0, 0), Math.max(LEAST_CROWN_M, done.radiusM));
    return tracedArea(context, {
      ...newArea(document, id, kind, ring),
      name,
      ...measures(kind, typed, context.units),
    });
  }
  if (group !== 'line') throw new RangeError(`the tool "${tool}" draws nothing`);
  const line: LineRecord = {
    type: 'line',
    id,
    kind,
    name,
    positions: corners.map(frameOf(document).toLonLat),
    heightM:
      kind === 'contour' || kind === 'wall' ? lengthTyped(typed['height'], context.units, 'Height') : null,
  };
  return { edit: putRecords(`drew a ${lineWords[kind]}`, [line]), heldId: id };
}

/** A traced area; the first green belongs to the hole in hand, which is made where there is none. */
function tracedArea({ document, holeId, newId }: HandContext, area: AreaRecord): Drawn {
  const annotation = `traced ${article(kindWords[area.kind])}`;
  const put = putRecords(annotation, [area]);
  if (area.kind !== 'green') return { edit: put, heldId: area.id };
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);
  const missing = hole?.greenId === null || hole === undefined;
  if (!missing) return { edit: put, heldId: area.id };
  const owner = hole ?? newHole(document, newId());
  return {
    edit: together(annotation, [put, putRecords(annotation, [{ ...owner, greenId: area.id }])]),
    heldId: area.id,
  };
}

/** Holes are numbered on; stations of a practice ground are S1, S2 and on. */
export function newHole(document: AtlasDocument, id: string): HoleRecord {
  const holes = holesInOrder(document);
  const practice = headerOf(document).kind === 'practiceGround';
  const taken = new Set(holes.map(({ label }) => label));
  let number = 1;
  const labelOf = (n: number): string => (practice ? `S${n}` : String(n));
  while (taken.has(labelOf(number))) number += 1;
  const order = holes.reduce((most, hole) => Math.max(most, hole.order), 0) + 1;
  return { type: 'hole', id, label: labelOf(number), order, name: '', par: null, greenId: null, line: null };
}

function measures(
  kind: AreaRecord['kind'],
  typed: Readonly<Record<string, string>>,
  units: UnitsPreference,
): Partial<AreaRecord> {
  if (kind === 'bunker') return { lipHeightM: lengthTyped(typed['lip'], units, 'Lip height') };
  if (kind === 'tree')
    return {
      treeHeightM: lengthTyped(typed['treeHeight'], units, 'Height'),
      canopyBaseM: lengthTyped(typed['canopyBase'], units, 'Crown begins'),
    };
  return {};
}

/** A typed height or nothing; a bare number is in feet or metres. */
export function lengthTyped(text: string | undefined, units: UnitsPreference, place: string): number | null {
  const typed = (text ?? '').trim();
  return typed === '' ? null : parseLength(typed, heightUnit(units), units.paceM, place);
}

/** A bearing in degrees, or one of the eight winds. */
export function bearingTyped(text: string, place: string): number {
  const wind = winds.indexOf(text.trim().toUpperCase());
  if (wind >= 0) return wind * 45;
  const degrees = parseDegrees(text, place);
  if (degrees < 0 || degrees > 360)
    throw new InputProblem(
      'bad-bearing',
      'A bearing lies between 0 and 360 degrees.',
      place,
      'North is 0, east is 90.',
    );
  return degrees;
}
const winds = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'];

export interface PointDone {
  readonly kind: WaitingPoint['kind'] | 'holeLocation' | 'ballPosition' | 'landmark';
  readonly at: PlanePoint;
  readonly typed: Readonly<Record<string, string>>;
}

/** A point put down, with its value where it has one. */
export function placedPoint(context: HandContext, { kind, at, typed }: PointDone): Drawn {
  const { document, holeId, newId, units } = context;
  const id = newId();
  const position = frameOf(document).toLonLat(at);
  const value = (typed['value'] ?? '').trim();
  if (kind === 'landmark')
    return { edit: putRecords('set a landmark', [{ type: kind, id, name: '', at: position }]), heldId: id };
  if (kind === 'spotHeight') {
    const heightM = parseLength(value, heightUnit(units), units.paceM, 'Height');
    return {
      edit: putRecords('added a spot height', [
        { type: kind, id, at: position, heightM, accuracyM: USUAL_HEIGHT_ACCURACY_M },
      ]),
      heldId: id,
    };
  }
  if (kind === 'slopeReading') {
    const slopePct = parseSlopePct(value, 'Slope');
    const downhillBearingDeg = bearingTyped(typed['bearing'] ?? '', 'Falls towards');
    return {
      edit: putRecords('added a slope reading', [
        { type: kind, id, at: position, slopePct, downhillBearingDeg, accuracyPct: USUAL_SLOPE_ACCURACY_PCT },
      ]),
      heldId: id,
    };
  }
  const hole =
    (holeId === null ? undefined : findRecord(document, 'hole', holeId)) ?? newHole(document, newId());
  const withHole = (annotation: string, record: AtlasRecord): Edit =>
    document.records.has(hole.id)
      ? putRecords(annotation, [record])
      : together(annotation, [putRecords(annotation, [hole]), putRecords(annotation, [record])]);
  if (kind === 'holeLocation') {
    const flags = recordsOf(document, 'holeLocation').filter((flag) => flag.holeId === hole.id);
    const label = nextLetter(flags);
    const flag = { type: kind, id, holeId: hole.id, label, name: '', at: position } as const;
    return { edit: withHole(`stood flag ${label}`, flag), heldId: id };
  }
  const balls = recordsOf(document, 'ballPosition').filter((ball) => ball.holeId === hole.id);
  const label = nextNumber(balls);
  const ball = {
    type: kind,
    id,
    holeId: hole.id,
    label,
    name: '',
    at: position,
    lie: 'clean',
    coverOverride: null,
  } as const;
  return { edit: withHole(`pinned ball ${label}`, ball), heldId: id };
}

/** Copies beside the things themselves: their common width and a little to the east, flags and balls under the next labels. */
export function copyThings(
  { document, newId }: HandContext,
  things: readonly Thing[],
): { readonly edit: Edit; readonly ids: readonly string[] } {
  const box = groupBox(document, things);
  const frame = frameOf(document);
  const asideM = box === null ? 1 : box.eastM - box.westM + 1;
  const copies: Thing[] = [];
  for (const thing of things) {
    const moved = mapPositions(thing, (at) => {
      const { eastM, northM } = frame.toPlane(at);
      return frame.toLonLat(planePoint(eastM + asideM, northM));
    });
    if (!isThing(moved)) throw new RangeError('a copy of a thing is a thing');
    const id = newId();
    const others = [...document.records.values(), ...copies].filter(({ type }) => type === thing.type);
    copies.push(
      moved.type === 'holeLocation'
        ? { ...moved, id, label: nextLetter(sameHole(others, moved.holeId)) }
        : moved.type === 'ballPosition'
          ? { ...moved, id, label: nextNumber(sameHole(others, moved.holeId)) }
          : { ...moved, id },
    );
  }
  return { edit: putRecords(`copied ${groupWords(things)}`, copies), ids: copies.map(({ id }) => id) };
}

const sameHole = (records: readonly AtlasRecord[], holeId: string): readonly { readonly label: string }[] =>
  records.filter(
    (record): record is Extract<AtlasRecord, { holeId: string }> =>
      'holeId' in record && record.holeId === holeId,
  );

export const article = (words: string): string =>
  words === 'out of bounds' || words === 'bare ground' || words.endsWith('rough')
    ? words
    : `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;

const gone = (): InputProblem =>
  new InputProblem('gone', 'It is no longer there.', '', 'It may have been undone; take hold of another.');
