import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { holesInOrder } from '../../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import type { Plan } from '../../../shared/planner/plan.ts';
import { needFlags } from '../../../shared/planner/needFlags.ts';
import { buildScene, type Scene } from '../../../shared/planner/scene.ts';
import { type SureLines, sureLinesSteps } from '../../../shared/planner/sureLine.ts';
import { playbookHtml } from '../../../shared/playbook/playbookHtml.ts';
import { playbookModel } from '../../../shared/playbook/playbookModel.ts';
import { linesAsked } from '../../../shared/playbook/surveyLines.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../../shared/protocol/planning.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { choice } from '../choiceArgument.ts';
import type { Command, CommandIo } from '../command.ts';
import { findChromium } from '../findChromium.ts';
import { findHole } from '../findRecords.ts';
import { inlineFonts } from '../inlineFonts.ts';
import { wholeNumber } from '../numberArgument.ts';
import { planAll } from '../planPool.ts';
import { printPdf } from '../printPdf.ts';
import { progressLine } from '../progress.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas } from '../readInput.ts';
import { writeFolder } from '../writeFolder.ts';

const HTML = 'playbook.html';
const PDF = 'playbook.pdf';

export const playbookCommand: Command = {
  name: 'playbook',
  summary: 'writes the playbook of a course, or of one hole, as a page to print and as PDF',
  help: `swale playbook: writes the playbook of a course, or of one hole, as a page to print and as PDF

Usage: swale playbook FILE --out DIR [--hole HOLE] [--parts both|guide|cards] [--sheet a4|letter]
                      [--units yards|metres] [--shots N] [--seed N]

  FILE          an atlas file
  --out DIR     folder for ${HTML} and ${PDF}; made if it is not there, other files in it stay
  --hole HOLE   one hole only: its label on the card, or its id
  --parts       the guide on full sheets, the cards at true size, or both (the usual)
  --sheet       of the guide: a4 (the usual) or letter
  --units       yards (the usual) or metres
  --shots N     shots simulated for each option in contention, 1 to 20000; ${USUAL_SHOTS} if left out.
                Those far behind stop after 128 or 256 of them.
  --seed N      of the simulated spread, 0 to 4294967295; ${USUAL_SEED} if left out

Every ball position of a hole is planned to every hole location, on all processor cores. The page holds its fonts and
drawings in itself. The PDF needs Chromium, or a browser built on it; CHROME_PATH names one that is not found by itself.
Nothing is written unless all of it could be made.

Example:
  swale playbook sample-course/ossel-down.geojson --out playbook
`,

  async run(args, io) {
    const { positionals, values } = readArguments(args, {
      positionals: ['FILE'],
      values: ['out', 'hole', 'parts', 'sheet', 'units', 'shots', 'seed'],
      needed: ['out'],
    });
    const system = choice(values.get('units'), 'units', ['yards', 'metres']);
    const parts = choice(values.get('parts'), 'parts', ['both', 'guide', 'cards']);
    const sheet = choice(values.get('sheet'), 'sheet', ['a4', 'letter']);
    const shotsPerOption = wholeNumber(values.get('shots'), 'shots', USUAL_SHOTS, 1, 20_000);
    const seed = wholeNumber(values.get('seed'), 'seed', USUAL_SEED, 0, 0xffffffff);
    const document = await readAtlas(positionals[0] ?? '');
    const wanted = values.get('hole');
    const holes = wanted === undefined ? holesInOrder(document) : [findHole(document, wanted)];
    const scenes = holes.map((hole) => withBalls(buildScene(document, hole.id)));
    scenes.forEach(needFlags);
    const [first] = scenes;
    if (first === undefined)
      throw new InputProblem('no-holes', 'the atlas has no holes.', '', 'Add a hole and set its green.');

    const tasks = scenes.flatMap(({ hole, flags, balls }) =>
      flags.map(({ record }) => ({
        holeId: hole.id,
        flagId: record.id,
        ballIds: balls.map((ball) => ball.record.id),
      })),
    );
    const total = tasks.reduce((sum, { ballIds }) => sum + ballIds.length, 0);
    const progress = progressLine(io, 'Planning ball to flag:');
    let done = 0;
    // The same ball tells the same to every flag.
    const unplanned = new Set<string>();
    const plans = await planAll(
      { document, shotsPerOption, seed },
      tasks,
      () => {
        done += 1;
        progress.show(done, total);
      },
      ({ message }) => unplanned.add(message),
    );
    progress.end();
    for (const why of [...unplanned].sort()) io.stderr.write(`swale playbook: left out: ${why}\n`);

    const units = { system, paceM: first.player.paceM };
    const sure = parts === 'cards' ? [] : sureOf(document, scenes, plans, io);
    const model = playbookModel(document, scenes, plans, { units, sure });
    const html = playbookHtml(model, { fonts: await inlineFonts(), sheet, parts });
    const folder = values.get('out') ?? '';
    const written = await writePages(folder, html, io);
    for (const name of written) io.stdout.write(`${join(folder, name)}\n`);
  },
};

/** How sure the printed lines are by the survey, hole by hole. */
function sureOf(
  document: AtlasDocument,
  scenes: readonly Scene[],
  plans: readonly Plan[],
  io: CommandIo,
): readonly SureLines[] {
  const progress = progressLine(io, 'Lines on other ground, %:');
  const told = scenes.flatMap((scene, i) => {
    const steps = sureLinesSteps(scene, linesAsked(document, scene, plans));
    let step = steps.next();
    for (; step.done !== true; step = steps.next())
      progress.show(Math.round((100 * (i + step.value)) / scenes.length), 100);
    return step.value;
  });
  progress.end();
  return told;
}

function withBalls(scene: Scene): Scene {
  if (scene.balls.length > 0) return scene;
  throw new InputProblem(
    'hole-without-ball',
    'no ball position is pinned.',
    `Hole ${scene.hole.label}`,
    'Pin at least one ball position.',
  );
}

/** Writes the page, and its PDF where there is a browser to print it. */
async function writePages(folder: string, html: string, io: CommandIo): Promise<readonly string[]> {
  const written = [HTML];
  const htmlOnly = (why: string): void => {
    io.stderr.write(`swale playbook: ${why} Only ${HTML} was written.\n`);
  };
  await writeFolder(folder, async (draft) => {
    await writeFile(join(draft, HTML), html);
    const chromium = findChromium(io.env);
    if (chromium === null) {
      htmlOnly('no Chromium for the PDF: install one, or set CHROME_PATH.');
      return;
    }
    try {
      await printPdf(chromium, join(draft, HTML), join(draft, PDF));
      written.push(PDF);
    } catch (error) {
      htmlOnly(error instanceof Error ? error.message : String(error));
    }
  });
  // One of an earlier run would tell another story than the new page.
  if (!written.includes(PDF)) await rm(join(folder, PDF), { force: true });
  return written;
}
