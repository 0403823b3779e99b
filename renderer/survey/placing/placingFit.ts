import { movedAffine, onPlane } from '../../../shared/geometry/affine.ts';
import { fitSheet, type KnownPoint, type SheetFit } from '../../../shared/geometry/sheetFit.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { PlacingState } from './placingState.ts';

type Fitted = Pick<PlacingState, 'pairs' | 'missesM' | 'rmsM' | 'trouble'> &
  Partial<Pick<PlacingState, 'affine'>>;

/**
 * The subject laid on its known points: by one it is moved, by two it is moved, turned and (a picture) enlarged, by three
 * and more a picture is stretched too unless it is to keep its shape. Where they do not settle it, it stays as it lies and
 * the reason is told.
 */
export function fitPairs(
  { subject, keepShape, affine }: Pick<PlacingState, 'subject' | 'keepShape' | 'affine'>,
  pairs: PlacingState['pairs'],
): Fitted {
  const known = pairs.flatMap(({ on, at }): KnownPoint[] => (at === null ? [] : [{ on, at }]));
  const [only] = known;
  if (only === undefined || subject === null) return { pairs, missesM: [], rmsM: null, trouble: null };
  try {
    let fit: SheetFit;
    if (known.length === 1) {
      const here = onPlane(affine, only.on);
      const moved = movedAffine(affine, only.at.eastM - here.eastM, only.at.northM - here.northM);
      fit = { affine: moved, missesM: [0], rmsM: null };
    } else if (subject.kind === 'sheet') fit = fitSheet(known, 'rigid');
    else fit = fitSheet(known, known.length >= 3 && !keepShape ? 'affine' : 'similar');
    return { pairs, ...fit, trouble: null };
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    return {
      ...{ pairs, missesM: [], rmsM: null },
      trouble: { message: error.message, remedy: error.remedy },
    };
  }
}
