import { basename } from 'node:path';
import { checkAtlas } from '../../../shared/atlas/checkAtlas.ts';
import type { Finding, Severity } from '../../../shared/atlas/checks/finding.ts';
import { recordsOf } from '../../../shared/atlas/document.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { Command } from '../command.ts';
import { readArguments } from '../readArguments.ts';
import { readBundle } from '../readInput.ts';
import { writeJson } from '../writeJson.ts';

const severities: readonly Severity[] = ['error', 'warning', 'note'];

export const checkCommand: Command = {
  name: 'check',
  summary: 'reads an atlas file and lists what is wrong with it, where, and what to do',
  help: `swale check: reads an atlas file and lists what is wrong with it, where, and what to do

Usage: swale check FILE [--json]

  FILE      an atlas file
  --json    the list as JSON, with the ids of the records concerned

An error stops a hole from being planned; a warning is worth a look; a note is worth knowing. The exit code is 1 where
there is an error, and where the file cannot be read at all. The file itself is never changed.

Example:
  swale check sample-course/ossel-down.geojson
`,

  async run(args, io) {
    const { positionals, flags } = readArguments(args, { positionals: ['FILE'], flags: ['json'] });
    const [path = ''] = positionals;
    const { document, pictures } = await readBundle(path, { crossingOutlines: 'keep' });
    const missing = recordsOf(document, 'picture').filter(({ sha256 }) => !pictures.has(sha256));
    const findings = severities.flatMap((severity) =>
      checkAtlas(document).filter((finding) => finding.severity === severity),
    );
    const counts = severities.map((severity) => counted(findings, severity));
    if (flags.has('json'))
      writeJson(io.stdout, {
        file: basename(path),
        picturesMissing: missing.map(({ id }) => id),
        // What a mend would do is code, and of use in the window only.
        findings: findings.map(({ mend, ...finding }) => finding),
      });
    else {
      for (const { severity, place, what, remedy } of findings)
        io.stdout.write(`${severity.padEnd(8)} ${place === '' ? '' : `${place}: `}${what} ${remedy}\n`);
      for (const { name } of missing)
        io.stdout.write(`warning  picture ${name}: its file is not here or is damaged. Lay it anew.\n`);
      io.stdout.write(`${basename(path)}: ${counts.join(', ')}, ${document.records.size} records\n`);
    }
    if (findings.some(({ severity }) => severity === 'error'))
      throw new InputProblem(
        'atlas-has-errors',
        `the atlas has ${counts[0] ?? ''}.`,
        basename(path),
        'Put right what the list names.',
      );
  },
};

function counted(findings: readonly Finding[], severity: Severity): string {
  const count = findings.filter((finding) => finding.severity === severity).length;
  return `${count === 0 ? 'no' : count} ${severity}${count === 1 ? '' : 's'}`;
}
