import type { AtlasDocument } from '../atlas/records.ts';
import { type ScenePlane, scenePlane } from '../planner/scenePlane.ts';
import { type FittedSurface, fitSurface } from '../terrain/fitSurface.ts';

export interface FittedHole {
  readonly plane: ScenePlane;
  readonly surface: FittedSurface;
}

/** The ground of a hole as planning fits it. Throws InputProblem as scenePlane and fitSurface do. */
export function fittedHole(document: AtlasDocument, holeId: string): FittedHole {
  const plane = scenePlane(document, holeId);
  return { plane, surface: fitSurface(plane.input) };
}
