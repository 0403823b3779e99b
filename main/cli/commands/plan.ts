import { buildScene } from '../../../shared/planner/scene.ts';
import { planBall } from '../../../shared/planner/planBall.ts';
import { reasonText } from '../../../shared/planner/reasonText.ts';
import { USUAL_SEED, USUAL_SHOTS } from '../../../shared/protocol/planning.ts';
import { choice } from '../choiceArgument.ts';
import type { Command } from '../command.ts';
import { findBall, findFlag, findHole } from '../findRecords.ts';
import { wholeNumber } from '../numberArgument.ts';
import { planText } from '../planText.ts';
import { progressLine } from '../progress.ts';
import { readArguments } from '../readArguments.ts';
import { readAtlas } from '../readInput.ts';
import { writeJson } from '../writeJson.ts';

export const planCommand: Command = {
  name: 'plan',
  summary: 'ranks every sensible shot of one ball to one flag, and says why',
  help: `swale plan: ranks every sensible shot of one ball to one flag, and says why

Usage: swale plan FILE --hole HOLE --ball BALL --flag FLAG [--units yards|metres] [--shots N] [--seed N] [--json]

  FILE          an atlas file
  --hole HOLE   the label the hole has on the card, such as 2, or its id
  --ball BALL   the number of the ball position, or its id
  --flag FLAG   the letter of the hole location, or its id
  --units       of the text: yards (the usual) or metres
  --shots N     shots simulated for each option in contention, 1 to 20000; ${USUAL_SHOTS} if left out.
                Those far behind stop after 128 or 256 of them.
  --seed N      of the simulated spread, 0 to 4294967295; ${USUAL_SEED} if left out
  --json        the whole plan, SI units, every digit

The options come cheapest first. The one marked > is the advice: the simplest shot within the player's margin of the
best. The one marked s is the safe way out, least likely to end in trouble. "swing" is small, medium or long for this
player: by the carries measured of the club, else by clubhead speed. "cost" is what an option gives away to the best, in
strokes; "level" means too close to call. "trouble" is the chance of a bunker, a penalty, out of bounds, heavy rough, or
of striking a lip, a bank or a tree.

Example:
  swale plan sample-course/ossel-down.geojson --hole 2 --ball 3 --flag B
`,

  async run(args, io) {
    const { positionals, values, flags } = readArguments(args, {
      positionals: ['FILE'],
      values: ['hole', 'ball', 'flag', 'units', 'shots', 'seed'],
      needed: ['hole', 'ball', 'flag'],
      flags: ['json'],
    });
    const system = choice(values.get('units'), 'units', ['yards', 'metres']);
    const shotsPerOption = wholeNumber(values.get('shots'), 'shots', USUAL_SHOTS, 1, 20_000);
    const seed = wholeNumber(values.get('seed'), 'seed', USUAL_SEED, 0, 0xffffffff);
    const document = await readAtlas(positionals[0] ?? '');
    const hole = findHole(document, values.get('hole') ?? '');
    const ball = findBall(document, hole, values.get('ball') ?? '');
    const flag = findFlag(document, hole, values.get('flag') ?? '');

    const scene = buildScene(document, hole.id);
    const progress = progressLine(io, 'Planning, %:');
    const plan = planBall(scene, { ballId: ball.id, flagId: flag.id, shotsPerOption, seed }, (share) =>
      progress.show(Math.round(100 * share), 100),
    );
    progress.end();
    const units = { system, paceM: scene.player.paceM };
    if (flags.has('json'))
      writeJson(io.stdout, {
        ...plan,
        readGround: undefined, // of use only to whoever keeps plans
        options: plan.options.map((option) => ({
          ...option,
          why: option.reasons.map((reason) => reasonText(reason, units)),
        })),
      });
    else io.stdout.write(planText(plan, { scene, ball, flag, units }));
  },
};
