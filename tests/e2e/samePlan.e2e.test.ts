import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { holesInOrder, recordsOf } from '../../shared/atlas/document.ts';
import { readAtlasFile } from '../../shared/formats/readAtlasFile.ts';
import { planBall } from '../../shared/planner/planBall.ts';
import { buildScene } from '../../shared/planner/scene.ts';
import type { FromWorker, ToWorker } from '../../renderer/workers/planningChannel.ts';
import { openSwale } from './helpers/openSwale.ts';

const root = resolve(import.meta.dirname, '../..');

/** Typed arrays as plain lists, so that a plan compares number by number whichever way it came. */
const plain = (value: unknown): string =>
  JSON.stringify(value, (_, member: unknown) =>
    ArrayBuffer.isView(member) ? Array.from(member as Float64Array) : member,
  );

/** Some characters around the first difference, rather than two whole plans. */
function firstDifference(a: string, b: string): readonly [string, string] | null {
  if (a === b) return null;
  let at = 0;
  while (a[at] === b[at]) at += 1;
  return [a.slice(Math.max(0, at - 40), at + 40), b.slice(Math.max(0, at - 40), at + 40)];
}

it('the worker of the window gives the plan Node gives, to the last digit', async () => {
  const document = readAtlasFile(
    readFileSync(resolve(root, 'sample-course/ossel-down.geojson'), 'utf8'),
    'sample',
  );
  const worker = readdirSync(resolve(root, 'out/renderer/assets')).find((name) =>
    name.startsWith('planningWorker'),
  );
  if (worker === undefined) throw new Error('the build holds no planning worker');
  const swale = await openSwale();
  try {
    // The script itself, seen as text: of the same origin, without a window that plans beside it.
    await swale.page.goto(new URL(`assets/${worker}`, swale.url).href);
    for (const [index, hole] of holesInOrder(document).slice(0, 2).entries()) {
      const ball = recordsOf(document, 'ballPosition').filter(({ holeId }) => holeId === hole.id)[index + 1];
      const flag = recordsOf(document, 'holeLocation').filter(({ holeId }) => holeId === hole.id)[index];
      if (ball === undefined || flag === undefined)
        throw new Error(`hole ${hole.label} lacks a ball or a flag`);
      const asked = {
        ballId: ball.id,
        flagId: flag.id,
        shotsPerOption: 60,
        seed: 7 + index,
      };
      const messages: ToWorker[] = [
        {
          kind: 'document',
          fresh: true,
          changes: [...document.records].map(([id, record]) => ({ id, record })),
        },
        {
          kind: 'ask',
          ticket: 1,
          call: 'plan',
          after: null,
          held: false,
          early: false,
          question: { holeId: hole.id, ...asked },
        },
      ];
      const theirs = await swale.page.evaluate(
        ([file, sent]) =>
          new Promise<string>((done) => {
            const made = new Worker(`/assets/${file}`, { type: 'module' });
            made.onmessage = ({ data }: MessageEvent<FromWorker>) => {
              if (data.kind === 'progress' || data.kind === 'early') return;
              made.terminate();
              done(
                JSON.stringify(data.kind === 'answer' ? data.answer : data, (_, member: unknown) =>
                  ArrayBuffer.isView(member) ? Array.from(member as Float64Array) : member,
                ),
              );
            };
            for (const message of sent) made.postMessage(message);
          }),
        [worker, messages] as const,
      );
      const ours = planBall(buildScene(document, hole.id), asked);
      expect(ours.options.length).toBeGreaterThan(3);
      expect(firstDifference(theirs, plain(ours))).toBeNull();
    }
  } finally {
    await swale.close();
  }
});
