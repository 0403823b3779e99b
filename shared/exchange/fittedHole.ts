import { recordsOf } from '../atlas/document.ts';
import { putRecords } from '../atlas/edits.ts';
import type { AtlasDocument, AtlasRecord } from '../atlas/records.ts';
import { type ScenePlane, scenePlane } from '../planner/scenePlane.ts';
import { type FittedSurface, fitSurface } from '../terrain/fitSurface.ts';

export interface FittedHole {
  readonly plane: ScenePlane;
  readonly surface: FittedSurface;
}

/**
 * The ground of a hole as planning fits it. A survey without a day or a player is fitted all the same. Throws
 * InputProblem as scenePlane and fitSurface do.
 */
export function fittedHole(document: AtlasDocument, holeId: string): FittedHole {
  const plane = scenePlane(putRecords('stand-ins', standIns(document)).apply(document), holeId);
  return { plane, surface: fitSurface(plane.input) };
}

/** What a plan needs and a surface does not, as far as it is missing: none of it changes the ground. */
function standIns(document: AtlasDocument): readonly AtlasRecord[] {
  return [
    ...(recordsOf(document, 'conditions').length > 0
      ? []
      : [
          {
            ...{ type: 'conditions' as const, id: 'stand-in-day', name: '', stimpFt: 10, firmness: 0.5 },
            ...{ moisture: 'dry' as const, windMps: 0, windFromDeg: 0, inUse: true },
          },
        ]),
    ...(recordsOf(document, 'player').length > 0
      ? []
      : [
          {
            ...{ type: 'player' as const, id: 'stand-in-player', name: '', handed: 'right' as const },
            ...{ level: { kind: 'handicap' as const, handicap: 10 }, bag: [], repertoire: {} },
            ...{ simplicityMarginStrokes: 0, paceM: 0.9, inUse: true },
          },
        ]),
  ];
}
