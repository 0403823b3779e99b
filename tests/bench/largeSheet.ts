import type { CDPSession, Page } from 'playwright-core';
import { atlasDocument } from '../../shared/atlas/document.ts';
import type { AtlasRecord } from '../../shared/atlas/records.ts';
import { writeAtlasFile } from '../../shared/formats/writeAtlasFile.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { type LonLat, lonLat, planePoint } from '../../shared/geometry/points.ts';
import { generator } from '../../shared/random/generator.ts';
import { openSwale } from '../e2e/helpers/openSwale.ts';

/**
 * Edits of a sheet of 5,000 areas and 20,000 heights against the same edits of a sheet of 18 areas, each told as the main
 * thread's processor time from the end of the gesture to the frame that shows it. `npm run build` first, then
 * `npx tsx tests/bench/largeSheet.ts`. Wanted: an edit under 50 ms, a redraw after a pan or zoom under 300 ms.
 */
const EACH = 5;

const frame = localFrame(lonLat(-30, 45));
const at = (eastM: number, northM: number): LonLat => frame.toLonLat(planePoint(eastM, northM));
const kinds = [
  'fringe',
  'approach',
  'fairway',
  'lightRough',
  'heavyRough',
  'bunker',
  'tree',
  'path',
] as const;

/** A course of 18 greens with so many areas and heights round each. */
function sheet(name: string, areas: number, heights: number): string {
  const { uniform: draw } = generator(7);
  const ring = (east: number, north: number, radius: number, corners: number): LonLat[] =>
    Array.from({ length: corners }, (_, i) => {
      const angle = (2 * Math.PI * i) / corners;
      return at(east + radius * Math.cos(angle), north + 0.8 * radius * Math.sin(angle));
    });
  const records: AtlasRecord[] = [
    { type: 'atlas', id: 'atlas', name, kind: 'course', placed: true, anchor: lonLat(-30, 45), note: '' },
  ];
  const area = (id: string, kind: (typeof kinds)[number] | 'green', corners: LonLat[]): void => {
    const tree = kind === 'tree';
    records.push({
      ...{ type: 'area', id, kind, name: '', rings: [corners], lipHeightM: kind === 'bunker' ? 0.5 : null },
      ...{ treeHeightM: tree ? 9 : null, canopyBaseM: tree ? 2 : null },
    });
  };
  for (let hole = 0; hole < 18; hole += 1) {
    const [e, n] = [(hole % 6) * 300 - 750, Math.floor(hole / 6) * 300 - 300];
    const id = String(hole);
    records.push({
      ...{ type: 'hole', id: `h${id}`, label: String(hole + 1), order: hole + 1, name: '', par: 4 },
      ...{ greenId: `g${id}`, line: null },
    });
    area(`g${id}`, 'green', ring(e, n, 13, 40));
    for (let i = 1; i < areas; i += 1) {
      const [angle, away] = [2 * Math.PI * draw(), 22 + 110 * draw()];
      const kind = kinds[Math.floor(draw() * kinds.length)] ?? 'bunker';
      const middle = [e + away * Math.cos(angle), n + away * Math.sin(angle)] as const;
      area(`a${id}-${String(i)}`, kind, ring(...middle, 2 + 3 * draw(), 24));
    }
    for (let i = 0; i < heights; i += 1) {
      const angle = 2 * Math.PI * draw();
      const away = i < 60 ? 14 * Math.sqrt(draw()) : 16 + 120 * Math.sqrt(draw());
      const [east, north] = [away * Math.cos(angle), away * Math.sin(angle)];
      const heightM = 20 + 0.02 * east + 0.01 * north + 0.002 * draw();
      records.push({
        ...{ type: 'spotHeight', id: `s${id}-${String(i)}`, at: at(e + east, n + north), heightM },
        accuracyM: 0.006,
      });
    }
  }
  return writeAtlasFile(atlasDocument(records));
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN;

/** Marks the next gesture's end and the first message after the frame that shows what it changed. */
const MARKS = `globalThis.markGesture = (type) => {
  let begun = false, shown = false;
  globalThis.gestureShown = false;
  addEventListener(type, () => { begun = true; performance.mark('gesture'); }, { capture: true, once: true });
  const watch = new MutationObserver((changes) => {
    if (!begun || shown) return;
    if (!changes.some(({ target }) => target.closest?.('.leaflet-under-pane, .leaflet-over-pane'))) return;
    shown = true;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => { performance.mark('shown'); watch.disconnect(); globalThis.gestureShown = true; };
      channel.port2.postMessage(0);
    });
  });
  watch.observe(document.querySelector('.leaflet-map-pane'), { childList: true, subtree: true, attributes: true });
};`;

/** Processor time of the main thread from a gesture's end to the frame that shows it, ms. */
async function cost(
  page: Page,
  cdp: CDPSession,
  type: string,
  work: () => Promise<unknown>,
): Promise<number> {
  await quiet(page, cdp);
  await page.evaluate(`markGesture('${type}')`);
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }): void => void events.push(...(value as TraceEvent[]));
  cdp.on('Tracing.dataCollected', collect);
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'blink.user_timing'] },
  });
  await work();
  await page.waitForFunction(() => Reflect.get(globalThis, 'gestureShown') === true, undefined, {
    timeout: 20_000,
  });
  const complete = new Promise((done) => cdp.once('Tracing.tracingComplete', done));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect);
  const [from, to] = ['gesture', 'shown'].map((name) => events.find((event) => event.name === name));
  if (from === undefined || to === undefined) throw new Error('the gesture left no trace');
  return (
    events
      .filter(
        ({ name, ph, pid, tid, ts, dur = 0 }) =>
          name === 'ThreadControllerImpl::RunTask' &&
          ph === 'X' &&
          pid === from.pid &&
          tid === from.tid &&
          ts + dur > from.ts &&
          ts < to.ts - 1,
      )
      .reduce((sum, { dur = 0, tdur = dur }) => sum + tdur, 0) / 1000
  );
}

/** Waits until nothing is computed any more. */
async function quiet(page: Page, cdp: CDPSession): Promise<void> {
  let before = -1;
  for (let i = 0; i < 80; i += 1) {
    const { metrics } = await cdp.send('Performance.getMetrics');
    const now = metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0;
    if (before >= 0 && now - before < 0.004) return;
    before = now;
    await page.waitForTimeout(120);
  }
}

/** Median costs of every kind of edit, near and from far off, and of a pan and a zoom. */
async function measure(text: string, title: string): Promise<ReadonlyMap<string, number>> {
  const swale = await openSwale({
    beforeOpening: async (context) => {
      await context.addInitScript('delete window.showOpenFilePicker; delete window.showSaveFilePicker;');
      await context.addInitScript(MARKS);
    },
  });
  const { page, context } = swale;
  page.on('filechooser', () => undefined);
  await page.getByRole('tab', { name: 'Survey' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  const buffer = Buffer.from(text);
  await (await chooser).setFiles({ name: 'sheet.geojson', mimeType: 'application/geo+json', buffer });
  await page.waitForFunction((start) => document.title.startsWith(start), title, { timeout: 60_000 });
  await page.getByRole('tab', { name: 'Survey' }).click();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  const found = new Map<string, number>();
  const several = async (name: string, one: (i: number) => Promise<number>): Promise<void> => {
    const costs: number[] = [];
    for (let i = 0; i < EACH; i += 1) costs.push(await one(i));
    found.set(name, median(costs));
  };
  const map = page.locator('.survey-map');
  const box = await map.boundingBox();
  if (box === null) throw new Error('no plate');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const key = (name: string): Promise<number> => cost(page, cdp, 'keydown', () => page.keyboard.press(name));
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const name of keys) await page.keyboard.press(name);
  };
  for (const [where, clicks] of [
    ['near', 0],
    ['far off', 8],
  ] as const) {
    await page.mouse.move(x, y);
    const zooms: number[] = [];
    for (let i = 0; i < clicks; i += 1)
      zooms.push(await cost(page, cdp, 'wheel', () => page.mouse.wheel(0, 120)));
    if (clicks > 0) found.set('zoom, dearest', Math.max(...zooms));
    await press('Escape', 'Escape', 's');
    await map.focus();
    await press('.', ']');
    await several(`${where}: corner moved`, async () => {
      await press('ArrowRight', 'ArrowRight');
      return key('Enter');
    });
    await several(`${where}: undo`, () => key('Control+z'));
    await several(`${where}: height added`, async (i) => {
      await press('1');
      await page.mouse.click(x - 200 + 40 * i, y + 160);
      await page.keyboard.type('20.1');
      return key('Enter');
    });
    await press('Escape', 'Escape', 's');
    await several(`${where}: deleted`, async (i) => {
      await page.mouse.click(x - 200 + 40 * i, y + 160);
      await map.focus();
      return key('Delete');
    });
  }
  await press('Escape');
  await page.mouse.move(box.x + 12, box.y + 12);
  await page.mouse.down();
  await page.mouse.move(box.x + 90, box.y + 60, { steps: 3 });
  found.set('pan, far off', await cost(page, cdp, 'pointerup', () => page.mouse.up()));
  await cdp.send('HeapProfiler.collectGarbage');
  const { metrics } = await cdp.send('Performance.getMetrics');
  found.set('heap, MB', (metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? NaN) / 1e6);
  await swale.close();
  return found;
}

const large = await measure(sheet('Large', 278, 1112), 'Large');
const small = await measure(sheet('Small', 1, 12), 'Small');
for (const [name, ms] of large) {
  const peer = small.get(name) ?? NaN;
  console.log(
    `${name.padEnd(24)} ${ms.toFixed(0).padStart(4)}, ${(ms / peer).toFixed(1)} times a small sheet`,
  );
}
