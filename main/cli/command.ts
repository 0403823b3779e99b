import type { Readable, Writable } from 'node:stream';

/** What a command may touch of the world around it, so that a test can hand it another. */
export interface CommandIo {
  readonly stdin: Readable;
  readonly stdout: Writable;
  readonly stderr: Writable & { readonly isTTY?: boolean };
  readonly env: NodeJS.ProcessEnv;
}

export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** All that `swale NAME --help` prints. */
  readonly help: string;
  /** Throws InputProblem for what the person gave, UsageProblem for how. */
  run(args: readonly string[], io: CommandIo): Promise<void>;
}
