import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { startLoopbackHost } from '../../main/web/loopbackHost.ts';
import { openSwale } from '../e2e/helpers/openSwale.ts';

/**
 * Every ball to every flag of the sample, from the click to the coarse and to the firm answer, and how often the two name
 * the same shot; then the frames of a dragged ball and a dragged flag, from a trace of the browser. The peer, in the same
 * run, is the same page with nothing but an empty click: a mark on the page redrawn in the next frame. `npm run build`
 * first, then `npx tsx tests/bench/windowAnswers.ts [folder of the built window] [file for the traces] [drag]`, the last for
 * the dragging alone.
 */
interface Answered {
  readonly pair: string;
  /** Null where the firm answer was there at once. */
  readonly coarseMs: number | null;
  readonly firmMs: number;
  readonly coarse: string;
  readonly firm: string;
}

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ?? NaN;
const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const aSecond = (count: number, frames: readonly number[]): string =>
  ((1000 * count) / sumOf(frames)).toFixed(0);
const told = (name: string, values: readonly number[]): string =>
  `${name}: median ${quantile(values, 0.5).toFixed(0)} ms, 95 % ${quantile(values, 0.95).toFixed(0)} ms, worst ${Math.max(...values).toFixed(0)} ms (${values.length})`;

const firm = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () => /Plan from [\d,]+/.test(document.querySelector('.status-bar')?.textContent ?? ''),
    null,
    { timeout: 60_000 },
  );

/** Clicks a ball and a flag in the page and watches every frame until the answer is firm. */
const answerTo = (page: Page, ball: string, flag: string): Promise<Answered> =>
  page.evaluate(
    ([wantedBall, wantedFlag]) =>
      new Promise<Answered>((done) => {
        const radio = (kind: string, label: string): HTMLElement | null =>
          document.querySelector(
            `.chooser.${kind} [aria-label^="${kind === 'balls' ? 'Ball' : 'Flag'} ${label}"]`,
          );
        const flagButton = radio('flags', wantedFlag);
        const ballButton = radio('balls', wantedBall);
        const start = performance.now();
        if (flagButton?.getAttribute('aria-checked') !== 'true') flagButton?.click();
        if (ballButton?.getAttribute('aria-checked') !== 'true') ballButton?.click();
        let coarseMs: number | null = null;
        let coarse = '';
        const look = (): void => {
          const answer = document.querySelector('.answer');
          const line = document.querySelector('.answer-line')?.textContent ?? '';
          const name = document.querySelector('.answer-name')?.textContent ?? '';
          const here = line.startsWith(`Ball ${wantedBall}`) && line.includes(`to flag ${wantedFlag}:`);
          const isCoarse = answer?.classList.contains('coarse') === true;
          if (answer !== null && here && isCoarse && coarseMs === null) {
            coarseMs = performance.now() - start;
            coarse = name;
          }
          if (answer !== null && here && !isCoarse) {
            const firmMs = performance.now() - start;
            done({ pair: `${wantedBall}${wantedFlag}`, coarseMs, firmMs, coarse, firm: name });
          } else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      }),
    [ball, flag] as const,
  );

/** A click that changes one mark, to its next frame. */
const emptyClick = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done) => {
        const start = performance.now();
        document.body.dataset['mark'] = String(start);
        requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - start)));
      }),
  );

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Processor time of its thread, which other work of the machine does not lengthen. */
  readonly tdur?: number;
  readonly tid: number;
  readonly args?: { readonly name?: string };
}

/** How long a thing is dragged, and how often the pointer moves whether or not the page keeps up, ms. */
const DRAG_MS = 4000;
const MOVE_EVERY_MS = 8;

/**
 * Drags a ball or flag about in a circle for some seconds; the time between frames, the tasks of the main thread (where it is
 * traced, which takes a tenth of the processor itself), how often another answer was drawn on the plate and how often its
 * figures changed.
 */
async function dragFrames(
  page: Page,
  what: string,
  traced: boolean,
  traceFile: string | undefined,
): Promise<{
  readonly frames: readonly number[];
  readonly tasks: readonly number[];
  /** Processor time of all workers, ms. */
  readonly workersMs: number;
  readonly answers: number;
  readonly figures: number;
}> {
  const box = await page.locator(`.plate [data-id][aria-label^="${what}"]`).boundingBox();
  if (box === null) throw new Error(`${what} is not on the plate`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => {
    events.push(...(value as unknown as TraceEvent[])); // what a trace holds
  });
  const ended = new Promise<void>((done) => session.once('Tracing.tracingComplete', () => done()));
  if (traced) {
    await session.send('Tracing.start', {
      traceConfig: {
        includedCategories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'],
      },
      transferMode: 'ReportEvents',
    });
  }
  await page.mouse.move(x, y);
  await page.mouse.down();
  const frames = page.evaluate(
    (lastsMs) =>
      new Promise<{
        readonly frames: readonly number[];
        readonly answers: number;
        readonly figures: number;
      }>((done) => {
        const between: number[] = [];
        let answers = 0;
        let figures = 0;
        let last = performance.now();
        const start = last;
        // Where the shots stop is another with each answer, and with nothing else.
        const drawn = new MutationObserver((changes) => {
          if (changes.some(({ target }) => (target as Element).closest('[data-part=finishes]') !== null))
            answers += 1;
        });
        const plate = document.querySelector('.plate-map');
        if (plate !== null)
          drawn.observe(plate, { subtree: true, attributes: true, attributeFilter: ['d'], childList: true });
        const told = new MutationObserver(() => (figures += 1));
        for (const part of document.querySelectorAll('.facts, .ledger'))
          told.observe(part, { subtree: true, characterData: true, childList: true });
        const frame = (now: number): void => {
          between.push(now - last);
          last = now;
          if (now - start < lastsMs) requestAnimationFrame(frame);
          else done({ frames: between.slice(1), answers, figures });
        };
        requestAnimationFrame(frame);
      }),
    DRAG_MS,
  );
  const moves: Promise<unknown>[] = [];
  const start = performance.now();
  while (performance.now() - start < DRAG_MS) {
    const turn = ((performance.now() - start) / 1000) * Math.PI;
    const at = { x: x + 26 * Math.sin(turn), y: y + 16 * (1 - Math.cos(turn)) };
    moves.push(
      session.send('Input.dispatchMouseEvent', { type: 'mouseMoved', ...at, button: 'left', buttons: 1 }),
    );
    await new Promise((resolve) => setTimeout(resolve, MOVE_EVERY_MS));
  }
  await Promise.all(moves);
  const { frames: between, answers, figures } = await frames;
  await page.mouse.up();
  if (traced) {
    await session.send('Tracing.end');
    await ended;
  }
  if (traceFile !== undefined && traceFile !== '')
    writeFileSync(`${traceFile}.${what.replace(' ', '-')}.json`, JSON.stringify({ traceEvents: events }));
  const tasksOf = (thread: string): number[] => {
    const threads = events.filter(({ name, args }) => name === 'thread_name' && args?.name === thread);
    return events
      .filter(({ name, tid }) => name === 'RunTask' && threads.some((one) => one.tid === tid))
      .map(({ dur = 0, tdur = dur }) => tdur / 1000);
  };
  const workersMs = sumOf(tasksOf('DedicatedWorker thread'));
  return { frames: between, tasks: tasksOf('CrRendererMain'), workersMs, answers, figures };
}

/** Every ball to every flag, clicked one after the other. */
async function clicks(page: Page): Promise<void> {
  const found: Answered[] = [];
  const menu = page.getByRole('button', { name: /Hole|Station/ }).first();
  const holes = page.getByRole('group', { name: 'Hole', exact: true }).getByRole('menuitemradio');
  await menu.click();
  const count = await holes.count();
  await page.keyboard.press('Escape');
  for (let hole = 0; hole < count; hole += 1) {
    await menu.click();
    await holes.nth(hole).click();
    await firm(page);
    const labels = (kind: string): Promise<string[]> =>
      page.locator(`.chooser.${kind} button`).allInnerTexts();
    for (const flag of await labels('flags'))
      for (const ball of await labels('balls')) found.push(await answerTo(page, ball, flag));
  }
  const empty: number[] = [];
  for (let i = 0; i < 40; i += 1) empty.push(await emptyClick(page));
  const coarse = found.flatMap(({ coarseMs }) => (coarseMs === null ? [] : [coarseMs]));
  const first = found.map(({ coarseMs, firmMs }) => coarseMs ?? firmMs);
  const both = found.filter(({ coarseMs }) => coarseMs !== null);
  const same = both.filter((one) => one.coarse === one.firm).length;
  console.log(told('click to first answer', first));
  console.log(told('click to coarse answer, where the firm one was not there yet', coarse));
  console.log(
    told(
      'click to firm answer',
      found.map(({ firmMs }) => firmMs),
    ),
  );
  console.log(told('an empty click', empty));
  console.log(
    `ratio, first answer to an empty click: ${(quantile(first, 0.5) / quantile(empty, 0.5)).toFixed(1)}`,
  );
  console.log(`coarse and firm name the same shot: ${same} of ${both.length}`);
}

const host = process.argv[2] === undefined ? undefined : await startLoopbackHost(process.argv[2], 0);
const swale = await openSwale(host === undefined ? {} : { host });
try {
  const { page } = swale;
  // The runner names inner functions by a helper that a page does not have.
  await page.evaluate('globalThis.__name = (made) => made');
  await firm(page);
  if (process.argv[4] !== 'drag') await clicks(page);
  for (const what of ['Ball 1', 'Flag A']) {
    const free = await dragFrames(page, what, false, undefined);
    await firm(page);
    console.log(
      `${what} dragged: answers drawn: ${aSecond(free.answers, free.frames)} a second; figures changed: ${aSecond(free.figures, free.frames)} a second`,
    );
    const drag = await dragFrames(page, what, true, process.argv[3]);
    console.log(told('  traced: frames', drag.frames));
    console.log(
      `  frames over 33 ms: ${drag.frames.filter((ms) => ms > 34).length} of ${drag.frames.length}; answers drawn: ${aSecond(drag.answers, drag.frames)} a second`,
    );
    console.log(
      told(
        '  tasks of the main thread meanwhile, processor time',
        drag.tasks.filter((ms) => ms > 1),
      ),
    );
    const each = (ms: number): string => (ms / drag.answers).toFixed(0);
    console.log(
      `  processor time for each answer drawn: ${each(sumOf(drag.tasks))} ms of the main thread, ${each(drag.workersMs)} ms of workers`,
    );
    await firm(page);
  }
} finally {
  await swale.close();
  await host?.close();
}
