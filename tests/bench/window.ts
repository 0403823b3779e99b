import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startLoopbackHost } from '../../main/web/loopbackHost.ts';
import { openSwale, type OpenSwale } from '../e2e/helpers/openSwale.ts';

/**
 * First paint of the built window against a bare page of one word, served by the same host to the same browser, each with
 * an empty cache. `npm run build` first, then `npx tsx tests/bench/window.ts`.
 */
const RUNS = 7;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

/** When the page first drew something, after it was asked for. */
const firstPaintMs = ({ page }: OpenSwale): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done) => {
        new PerformanceObserver((list, observer) => {
          const paint = list.getEntriesByName('first-contentful-paint')[0];
          if (paint === undefined) return;
          observer.disconnect();
          done(paint.startTime);
        }).observe({ type: 'paint', buffered: true });
      }),
  );

const folder = mkdtempSync(join(tmpdir(), 'swale-bare-'));
writeFileSync(join(folder, 'index.html'), '<!doctype html><link rel="icon" href="data:," /><p>Swale</p>');
const bare = await startLoopbackHost(folder, 0);
try {
  const window = { paint: [] as number[], answer: [] as number[] };
  const barePaint: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const first = await openSwale();
    await first.page.locator('h1, h2').filter({ hasText: /./ }).first().waitFor();
    window.answer.push(await first.page.evaluate(() => performance.now()));
    window.paint.push(await firstPaintMs(first));
    await first.close();
    const second = await openSwale({ host: bare });
    barePaint.push(await firstPaintMs(second));
    await second.close();
  }
  console.log(
    `first paint, window: ${median(window.paint).toFixed(0)} ms; first heading ${median(window.answer).toFixed(0)} ms`,
  );
  console.log(`first paint, bare page: ${median(barePaint).toFixed(0)} ms`);
  console.log(`ratio: ${(median(window.paint) / median(barePaint)).toFixed(2)}`);
} finally {
  await bare.close();
  rmSync(folder, { recursive: true, force: true });
}
