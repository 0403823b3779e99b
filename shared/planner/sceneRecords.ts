import type {
  AreaRecord,
  AtlasDocument,
  AtlasRecord,
  BallPosition,
  ConditionsRecord,
  HoleLocation,
  HoleRecord,
  PlayerRecord,
} from '../atlas/records.ts';
import { inUseOf, recordsOf } from '../atlas/document.ts';
import type { LonLat } from '../geometry/points.ts';
import { InputProblem } from '../words/inputProblem.ts';

/** The records one hole is planned from, each list in order of id. */
export interface SceneRecords {
  readonly anchor: LonLat;
  readonly hole: HoleRecord;
  readonly greenRecord: AreaRecord;
  readonly flagRecords: readonly HoleLocation[];
  readonly ballRecords: readonly BallPosition[];
  readonly areas: readonly AreaRecord[];
  readonly lines: readonly Extract<AtlasRecord, { type: 'line' }>[];
  readonly heights: readonly Extract<AtlasRecord, { type: 'spotHeight' }>[];
  readonly slopes: readonly Extract<AtlasRecord, { type: 'slopeReading' }>[];
  readonly planes: readonly Extract<AtlasRecord, { type: 'planeByEye' }>[];
  readonly grids: readonly Extract<AtlasRecord, { type: 'elevationGrid' }>[];
  readonly conditions: ConditionsRecord;
  readonly player: PlayerRecord;
}

/**
 * Throws InputProblem for an unknown hole, a hole without a green, and a document without conditions or player. A hole
 * without a flag is a place to stand one.
 */
export function sceneRecords(document: AtlasDocument, holeId: string): SceneRecords {
  const all = [...document.records.values()].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const ofType = <T extends AtlasRecord['type']>(type: T): Extract<AtlasRecord, { type: T }>[] =>
    all.filter((record): record is Extract<AtlasRecord, { type: T }> => record.type === type);

  const header = document.records.get('atlas');
  if (header?.type !== 'atlas') {
    throw new InputProblem('no-header', 'the atlas has no header.', '', 'Open it again from its file.');
  }
  const hole = document.records.get(holeId);
  if (hole?.type !== 'hole') {
    throw new InputProblem(
      'unknown-hole',
      `there is no hole “${holeId}”.`,
      '',
      'Choose one of the holes of this atlas.',
    );
  }
  const place = `Hole ${hole.label}`;
  const greenRecord = hole.greenId === null ? undefined : document.records.get(hole.greenId);
  if (greenRecord?.type !== 'area') {
    throw new InputProblem(
      'hole-without-green',
      'no green is traced.',
      place,
      'Trace the green of this hole.',
    );
  }
  const allFlags = ofType('holeLocation').filter((flag) => flag.holeId === holeId);
  const conditions = inUseOf(document, 'conditions');
  if (conditions === undefined) {
    throw new InputProblem(
      'no-conditions',
      'no green speed or firmness is given.',
      place,
      'Describe the conditions of the day.',
    );
  }
  const flagRecords = flagsInPlay(allFlags, conditions.sheet);
  const player = inUseOf(document, 'player');
  if (player === undefined) {
    throw new InputProblem(
      'no-player',
      'no player is described.',
      place,
      'Add a player with a bag of clubs.',
    );
  }
  return {
    anchor: header.anchor,
    hole,
    greenRecord,
    flagRecords,
    ballRecords: ofType('ballPosition').filter((ball) => ball.holeId === holeId),
    areas: ofType('area'),
    lines: ofType('line'),
    heights: ofType('spotHeight'),
    slopes: ofType('slopeReading'),
    planes: ofType('planeByEye'),
    grids: ofType('elevationGrid'),
    conditions,
    player,
  };
}

/** The flags of a hole that are on a pin sheet; all of them where none is on it or no sheet is in play. */
function flagsInPlay(flags: readonly HoleLocation[], sheet: string | undefined): readonly HoleLocation[] {
  const onSheet = sheet === undefined ? [] : flags.filter((flag) => flag.sheet === sheet);
  return onSheet.length === 0 ? flags : onSheet;
}

/** The flags of a hole that the day in use plays to. */
export function flagsOfHole(document: AtlasDocument, holeId: string): readonly HoleLocation[] {
  return flagsInPlay(
    recordsOf(document, 'holeLocation').filter((flag) => flag.holeId === holeId),
    inUseOf(document, 'conditions')?.sheet,
  );
}
