import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { Command, CommandIo } from './command.ts';
import { checkCommand } from './commands/check.ts';
import { exportCommand } from './commands/export.ts';
import { importCommand } from './commands/import.ts';
import { planCommand } from './commands/plan.ts';
import { playbookCommand } from './commands/playbook.ts';
import { simulateCommand } from './commands/simulate.ts';
import { surfaceCommand } from './commands/surface.ts';
import { UsageProblem } from './usageProblem.ts';

const commands: readonly Command[] = [
  planCommand,
  playbookCommand,
  surfaceCommand,
  importCommand,
  exportCommand,
  checkCommand,
  simulateCommand,
];

const help = `swale: plans the shots around a green, without a window

Usage: swale COMMAND …

${commands.map(({ name, summary }) => `  ${name.padEnd(10)}${summary}`).join('\n')}

"swale COMMAND --help" says more about each.

Exit codes: 0 done; 1 something is wrong with what was given, one line on stderr saying what, where and what to do;
2 wrong usage. The same file, conditions and seed always give the same numbers.
`;

/** Runs one command line and gives its exit code. Nothing but the command's result goes to stdout. */
export async function runCli(args: readonly string[], io: CommandIo): Promise<0 | 1 | 2> {
  const [name, ...rest] = args;
  if (name === undefined) {
    io.stderr.write(help);
    return 2;
  }
  if (name === '--help' || name === '-h' || name === 'help') {
    io.stdout.write(commands.find((one) => one.name === rest[0])?.help ?? help);
    return 0;
  }
  const command = commands.find((one) => one.name === name);
  if (command === undefined) {
    say(io, `"${name}" is not a command. Commands: ${commands.map((one) => one.name).join(', ')}.`);
    return 2;
  }
  const beforeRest = rest.includes('--') ? rest.slice(0, rest.indexOf('--')) : rest;
  if (beforeRest.includes('--help') || beforeRest.includes('-h')) {
    io.stdout.write(command.help);
    return 0;
  }
  try {
    await command.run(rest, io);
    return 0;
  } catch (error) {
    if (io.env['SWALE_DEBUG'] && error instanceof Error) io.stderr.write(`${error.stack ?? ''}\n`);
    if (error instanceof UsageProblem) {
      say(io, `${name}: ${error.message} See "swale ${name} --help".`);
      return 2;
    }
    if (error instanceof InputProblem) say(io, `${name}: ${error.message}`);
    else
      say(
        io,
        `${name}: a fault in Swale itself (${error instanceof Error ? error.message : String(error)}). Please report it with the file and the command; SWALE_DEBUG=1 shows where.`,
      );
    return 1;
  }
}

const say = (io: CommandIo, message: string): void => {
  io.stderr.write(`swale ${message.replaceAll(/\s*\n\s*/g, ' ')}\n`);
};
