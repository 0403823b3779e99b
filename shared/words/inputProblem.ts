/**
 * Something wrong with what a person gave: always one sentence that says what, where and what to do. Thrown by parsers
 * and planners, shown as it is by the window and the command line. Programming faults are ordinary errors instead.
 */
export class InputProblem extends Error {
  /** Machine-readable kind, such as `file-truncated` or `green-without-elevation`. */
  readonly code: string;
  /** The place: a file, a feature and field, or a line of input. Empty where the whole is meant. */
  readonly place: string;
  readonly remedy: string;

  constructor(code: string, what: string, place: string, remedy: string) {
    super(place === '' ? `${what} ${remedy}` : `${place}: ${what} ${remedy}`);
    this.name = 'InputProblem';
    this.code = code;
    this.place = place;
    this.remedy = remedy;
  }
}
