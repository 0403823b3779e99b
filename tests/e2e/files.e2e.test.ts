import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { openSwale, type OpenSwale } from './helpers/openSwale.ts';
import { PlanScreen } from './helpers/planScreen.ts';

const sample = readFileSync(resolve(import.meta.dirname, '../../sample-course/ossel-down.geojson'), 'utf8');

interface Feature {
  readonly id: string;
  readonly properties: { readonly swale: string; readonly kind?: string; name: string };
}

/** One window for all: each opens an atlas of its own but the first, which needs the one the window comes with. */
let swale: OpenSwale;
let screen: PlanScreen;
beforeAll(async () => {
  swale = await openWithUpload();
  screen = new PlanScreen(swale.page);
});
afterAll(async () => {
  await swale.close();
});
afterEach(() => {
  expect(swale.problems).toEqual([]);
});

/** Opens the window without file pickers, so that it falls back to an upload, which a test can answer. */
async function openWithUpload(): Promise<OpenSwale> {
  const opened = await openSwale({
    acceptDownloads: true,
    beforeOpening: (context) =>
      context.addInitScript(() => {
        Reflect.deleteProperty(window, 'showOpenFilePicker');
        Reflect.deleteProperty(window, 'showSaveFilePicker');
      }),
  });
  // Choosers are caught from the first listener on, a little after it is added.
  opened.page.on('filechooser', () => undefined);
  return opened;
}

async function upload(text: string, name = 'mine.geojson'): Promise<void> {
  const chooser = swale.page.waitForEvent('filechooser');
  await swale.page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name, mimeType: 'application/geo+json', buffer: Buffer.from(text) });
}

it('writes the same file back when nothing was changed', async () => {
  await screen.firm();
  const download = swale.page.waitForEvent('download');
  await swale.page.keyboard.press('Control+s');
  const path = await (await download).path();
  expect(readFileSync(path, 'utf8')).toBe(sample);
  expect((await download).suggestedFilename()).toBe('ossel-down.geojson');
});

it('refuses a damaged file with its place and a remedy, and keeps the open atlas', async () => {
  await upload(sample.slice(0, 20_000), 'cut-short.geojson');
  const alert = swale.page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.innerText()).toContain('cut-short.geojson');
  expect(await swale.page.title()).toBe('Ossel Down – Swale');
  await alert.getByRole('button', { name: 'Dismiss' }).click();
  expect(await alert.count()).toBe(0);
});

it('shows names that look like markup as they are written', async () => {
  const hostile = '<img src=x onerror="window.stung=true">';
  const root = JSON.parse(sample) as { swale: { atlas: { name: string } }; features: Feature[] };
  root.swale.atlas.name = hostile;
  for (const { properties } of root.features) {
    if (properties.swale === 'ballPosition' || properties.kind === 'bunker') properties.name = hostile;
  }
  await upload(JSON.stringify(root));
  await expect.poll(() => swale.page.title()).toBe(`${hostile} – Swale`);
  await screen.firm();
  expect(await screen.line()).toContain(hostile);
  expect(await swale.page.locator('.plate [data-part=labels]').textContent()).toContain(hostile);
  expect(await swale.page.locator('img').count()).toBe(0);
  expect(await swale.page.evaluate(() => 'stung' in window)).toBe(false);
});

it('keeps to the window with forty balls, and the one walked to in sight', async () => {
  const root = JSON.parse(sample) as { features: (Feature & { properties: { label?: string } })[] };
  const ball = root.features.find(({ id }) => id === 'h2-ball-1');
  if (ball === undefined) throw new Error('the sample has no first ball');
  for (let i = 9; i <= 40; i += 1)
    root.features.push({
      ...ball,
      id: `many-${String(i)}`,
      properties: { ...ball.properties, label: String(i), name: '' },
    });
  await upload(JSON.stringify(root));
  await screen.ball('40').waitFor({ state: 'attached' });
  const { page } = swale;
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await screen.ball('1').focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => screen.ball('40').getAttribute('aria-checked')).toBe('true');
  const [row, one] = [
    await page.locator('.chooser.balls').boundingBox(),
    await screen.ball('40').boundingBox(),
  ];
  if (row === null || one === null) throw new Error('no balls to choose from');
  expect(one.x + one.width).toBeLessThanOrEqual(row.x + row.width);
});

it('says what a hole lacks before it can be planned, and plans the others', async () => {
  const root = JSON.parse(sample) as { features: Feature[] };
  const all = root.features.length;
  root.features = root.features.filter(
    ({ id, properties }) =>
      !(id.startsWith('h2-') && ['spotHeight', 'slopeReading'].includes(properties.swale)),
  );
  expect(all - root.features.length).toBeGreaterThan(20);
  await upload(JSON.stringify(root));
  const alert = swale.page.locator('.plan').getByRole('alert');
  await alert.waitFor();
  expect(await alert.innerText()).toMatch(/Hole 2.*no heights or slope readings.*Add spot heights/s);
  await screen.openHole('Long Withy');
  expect(await alert.count()).toBe(0);
  expect(await screen.line()).toMatch(/^Ball 1/);
});
