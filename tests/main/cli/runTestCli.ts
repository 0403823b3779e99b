import { PassThrough, Readable } from 'node:stream';
import { runCli } from '../../../main/cli/runCli.ts';

export interface CliResult {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process, with these texts as its streams. */
export async function runTestCli(
  args: readonly string[],
  stdin = '',
  env: NodeJS.ProcessEnv = {},
): Promise<CliResult> {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const code = await runCli(args, { stdin: Readable.from([Buffer.from(stdin)]), stdout, stderr, env });
  const text = (stream: PassThrough): string => (stream.read() as Buffer | null)?.toString('utf8') ?? '';
  return { code, out: text(stdout), err: text(stderr) };
}
