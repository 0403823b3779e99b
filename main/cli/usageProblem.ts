/** The command was not given what its --help asks for: exit code 2. */
export class UsageProblem extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UsageProblem';
  }
}
