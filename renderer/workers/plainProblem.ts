import { InputProblem } from '../../shared/words/inputProblem.ts';

/** A problem as plain data, since an error loses its own members on the way between threads. */
export interface PlainProblem {
  readonly code: string;
  readonly message: string;
  readonly place: string;
  readonly remedy: string;
}

/** Any failure so; `fault` words one that is ours and not a person's. */
export function plainProblem(error: unknown, fault: (what: string) => PlainProblem): PlainProblem {
  if (!(error instanceof InputProblem)) return fault(error instanceof Error ? error.message : String(error));
  const { code, message, place, remedy } = error;
  return { code, message, place, remedy };
}
