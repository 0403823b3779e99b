import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { LoopbackHost } from '../../main/web/loopbackHost.ts';
import { sameDocument } from '../../shared/atlas/document.ts';
import { readAtlasFile } from '../../shared/formats/readAtlasFile.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { openSwale, type OpenSwale, serveBuilt } from './helpers/openSwale.ts';

let host: LoopbackHost;
/** One window for all scenarios that do not end it: each works on an atlas of its own. */
let shared: OpenSwale;
beforeAll(async () => {
  host = await serveBuilt();
  shared = await openSurvey();
});
afterAll(async () => {
  await shared.close();
  await host.close();
});

/** A person at the plate of a survey. */
class SurveyScreen {
  readonly page: Page;
  /** Clicks, drags and values given so far: what tracing costs a person. */
  gestures = 0;

  constructor(page: Page) {
    this.page = page;
  }

  async menu(item: string): Promise<void> {
    await this.page
      .getByRole('button', { name: /Hole|Station/ })
      .first()
      .click();
    await this.page.getByRole('menuitem', { name: item, exact: true }).click();
  }

  async startNew(name: string): Promise<void> {
    await this.menu('New');
    await this.page.getByRole('dialog').getByLabel('Name').fill(name);
    await this.page.getByRole('button', { name: 'Begin' }).click();
    // The sheet before it may have been empty as well.
    await expect.poll(() => this.page.title()).toBe(`${name} – Swale`);
    await this.page.getByText('Put the ground on the sheet').waitFor();
  }

  /** A place on the plate, by its share of the way across and down. */
  async at(x: number, y: number): Promise<readonly [number, number]> {
    const box = await this.page.locator('.survey-map').boundingBox();
    if (box === null) throw new Error('no plate');
    return [box.x + box.width * x, box.y + box.height * y];
  }

  async click(x: number, y: number): Promise<void> {
    this.gestures += 1;
    await this.page.mouse.click(...(await this.at(x, y)));
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  async tool(key: string): Promise<void> {
    this.gestures += 1;
    await this.press(key);
  }

  async stroke(points: readonly (readonly [number, number])[]): Promise<void> {
    this.gestures += 1;
    const [first, ...rest] = points;
    if (first === undefined) return;
    await this.page.mouse.move(...(await this.at(...first)));
    await this.page.mouse.down();
    for (const point of rest) await this.page.mouse.move(...(await this.at(...point)));
    await this.page.mouse.up();
  }

  undo(): ReturnType<Page['getByRole']> {
    return this.page.getByRole('button', { name: /^(Undo: |Nothing to undo)/ });
  }

  redo(): ReturnType<Page['getByRole']> {
    return this.page.getByRole('button', { name: /^(Redo: |Nothing to redo)/ });
  }

  async undoName(): Promise<string> {
    return (await this.undo().getAttribute('aria-label')) ?? '';
  }

  /** The file as it would be saved now. */
  async saved(): Promise<{ readonly text: string; readonly document: AtlasDocument }> {
    const download = this.page.waitForEvent('download');
    await this.press('Control+Shift+s');
    const text = readFileSync(await (await download).path(), 'utf8');
    return { text, document: readAtlasFile(text, 'saved') };
  }
}

const ellipse = (
  x: number,
  y: number,
  width: number,
  height: number,
  count = 20,
): readonly (readonly [number, number])[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [x + width * Math.cos(angle), y + height * Math.sin(angle)] as const;
  });

/** Opens the window without file pickers, so that saving is a download and opening an upload. */
async function openSurvey(options: Parameters<typeof openSwale>[0] = {}): Promise<OpenSwale> {
  const swale = await openSwale({
    host,
    acceptDownloads: true,
    ...options,
    beforeOpening: (context) =>
      context.addInitScript(() => {
        Reflect.deleteProperty(window, 'showOpenFilePicker');
        Reflect.deleteProperty(window, 'showSaveFilePicker');
      }),
  });
  swale.page.setDefaultTimeout(15_000);
  // Listened to from the start, or the first chooser may open before anyone does.
  swale.page.on('filechooser', () => undefined);
  await swale.page.getByRole('tab', { name: 'Survey' }).click({ timeout: 40_000 });
  return swale;
}

/** A green drawn in one stroke with its fringe, three bunkers, approach, heavy rough, a tree, twelve heights, a flag and a ball. */
async function traceComplex(screen: SurveyScreen): Promise<void> {
  const { page } = screen;
  await screen.tool('g');
  await screen.stroke(ellipse(0.5, 0.45, 0.14, 0.24));
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a green');
  await page.getByRole('button', { name: 'Put round it' }).click();
  screen.gestures += 1;
  await expect.poll(() => screen.undoName()).toMatch(/^Undo: put a fringe round/);
  await screen.tool('b');
  for (const [x, y] of [
    [0.24, 0.3],
    [0.78, 0.35],
  ] as const)
    await screen.stroke(ellipse(x, y, 0.04, 0.07, 12));
  // The third with clicks, closed on its first corner.
  for (const [x, y] of [
    [0.3, 0.72],
    [0.34, 0.66],
    [0.38, 0.72],
    [0.35, 0.8],
    [0.3, 0.72],
  ] as const)
    await screen.click(x, y);
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a bunker');
  // What was drawn stands above what would be drawn next.
  await page.getByRole('heading', { name: 'Next bunker' }).waitFor();
  await page.getByRole('textbox', { name: 'Lip height' }).first().fill('3 ft 6');
  await page.keyboard.press('Enter');
  screen.gestures += 1;
  await screen.tool('a');
  await screen.stroke([
    [0.42, 0.74],
    [0.58, 0.74],
    [0.62, 0.95],
    [0.38, 0.95],
    [0.42, 0.74],
  ]);
  await expect.poll(() => screen.undoName()).toBe('Undo: traced an approach');
  await screen.tool('Shift+R');
  await screen.stroke(ellipse(0.85, 0.7, 0.08, 0.16, 12));
  await screen.tool('t');
  await screen.click(0.1, 0.15);
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a tree');
  await screen.tool('1');
  let height = 40;
  for (const y of [0.3, 0.42, 0.54]) {
    for (const x of [0.42, 0.47, 0.53, 0.58]) {
      await screen.click(x, y);
      height += 0.11;
      await page.keyboard.type(height.toFixed(2));
    }
  }
  await screen.press('Enter');
  await expect.poll(() => page.locator('.survey-facts').first().innerText()).toMatch(/Spot heights\s*12/);
  await screen.tool('3');
  await screen.click(0.5, 0.4);
  await screen.tool('4');
  await screen.click(0.5, 0.9);
  await expect.poll(() => screen.undoName()).toBe('Undo: pinned ball 1');
}

it.each([
  ['dark', 1024, 700],
  ['light', 1440, 900],
] as const)(
  'has nothing axe finds serious, and fits, in %s at %i by %i',
  async (colorScheme, width, height) => {
    const { page } = shared;
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height });
    await expect
      .poll(() => page.locator('.survey-side').textContent(), { timeout: 15_000 })
      .toContain('Fits within');
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    await page.keyboard.press('b');
    const details = page.getByRole('button', { name: /^Details/ });
    if ((await details.count()) > 0) await details.click();
    await page.getByLabel('Lip height').waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await page.keyboard.press('n');
    await expect.poll(() => page.locator('[data-part=pointed-out]').count()).toBe(1);
    expect(shared.problems).toEqual([]);
  },
);

/** What the complex has beside: a hole in its fairway, a tier edge, and a sprinkler by its name. */
async function addDetails(screen: SurveyScreen): Promise<void> {
  const { page } = screen;
  await screen.tool('w');
  for (const [x, y] of [
    [0.04, 0.6],
    [0.2, 0.6],
    [0.2, 0.95],
    [0.04, 0.95],
  ] as const)
    await screen.click(x, y);
  await screen.press('Enter', 's');
  await screen.click(0.06, 0.9);
  await page.getByRole('button', { name: 'Cut a piece out' }).click();
  await screen.stroke(ellipse(0.12, 0.78, 0.04, 0.08, 10));
  await expect.poll(() => screen.undoName()).toBe('Undo: cut the fairway');
  await screen.tool('i');
  for (const x of [0.42, 0.5, 0.58]) await screen.click(x, 0.48);
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: drew a tier edge');
  await screen.tool('5');
  await screen.click(0.66, 0.5);
  await expect.poll(() => screen.undoName()).toBe('Undo: set a landmark');
  await page.getByRole('textbox', { name: 'Name' }).last().fill('Sprinkler');
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toMatch(/^Undo: named/);
}

it('traces a whole complex, undoes and redoes all of it, outlives a kill, and comes back from its file', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'swale-survey-'));
  let swale = await openSurvey({ profile });
  try {
    let screen = new SurveyScreen(swale.page);
    await screen.startNew('Quern Low');
    await traceComplex(screen);
    // Counted: every click, stroke, key and value of a whole complex.
    expect(screen.gestures).toBeLessThan(60);
    await addDetails(screen);
    const traced = await screen.saved();
    const records = [...traced.document.records.values()];
    const areas = records.filter((record) => record.type === 'area');
    expect(areas.length).toBe(9);
    expect(areas.filter(({ rings }) => rings.length > 1).map(({ kind }) => kind)).toContain('fairway');
    expect(records.flatMap((record) => (record.type === 'line' ? [record.kind] : []))).toEqual(['tierEdge']);
    expect(records.flatMap((record) => (record.type === 'landmark' ? [record.name] : []))).toEqual([
      'Sprinkler',
    ]);

    const steps = 28;
    for (let i = 1; i < steps; i += 1) await screen.press('Control+z');
    await expect.poll(() => screen.undoName()).toMatch(/^Undo: /);
    await screen.press('Control+z');
    await expect.poll(() => screen.undoName()).toBe('Nothing to undo');
    await screen.press('Escape');
    await swale.page.getByText('Put the ground on the sheet').waitFor();
    for (let i = 0; i < steps; i += 1) await screen.press('Control+Shift+z');
    await expect.poll(() => screen.redo().getAttribute('aria-label')).toBe('Nothing to redo');
    expect((await screen.saved()).text).toBe(traced.text);
    expect(swale.problems).toEqual([]);

    // The whole browser killed with an outline in hand: only that is lost.
    await expect.poll(() => swale.page.locator('.status-bar').innerText()).toMatch(/^Saved/);
    await screen.tool('b');
    await screen.click(0.7, 0.6);
    await screen.click(0.74, 0.6);
    await swale.kill();
    swale = await openSurvey({ profile });
    screen = new SurveyScreen(swale.page);
    await expect.poll(() => swale.page.title()).toBe('Quern Low – Swale');
    const reopened = await screen.saved();
    expect(await screen.undoName()).toMatch(/^Undo: named/);
    expect(sameDocument(reopened.document, traced.document)).toBe(true);

    // The library gone, the file saved after the kill is enough.
    await swale.page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const wiping = indexedDB.deleteDatabase('swale-library');
          wiping.onsuccess = () => done();
          wiping.onerror = () => failed(new Error('not wiped'));
        }),
    );
    await expect
      .poll(() => swale.page.locator('.notice-bar').innerText())
      .toContain('Save the atlas to a file, then reload this window');
    await swale.page.reload();
    await expect.poll(() => swale.page.title()).toBe('Ossel Down – Swale');
    const chooser = swale.page.waitForEvent('filechooser');
    await screen.press('Control+o');
    await (
      await chooser
    ).setFiles({
      name: 'thornwick.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from(reopened.text),
    });
    await expect.poll(() => swale.page.title()).toBe('Quern Low – Swale');
    expect(sameDocument((await screen.saved()).document, traced.document)).toBe(true);
  } finally {
    await swale.close();
    rmSync(profile, { recursive: true, force: true });
  }
});

it('traces with the keyboard alone, to the foot', async () => {
  const { page } = shared;
  const screen = new SurveyScreen(page);
  await screen.startNew('Keys');
  // A square of 5 yd, two sides walked and one typed.
  await screen.press('g', 'Shift+ArrowRight', 'Enter');
  for (let i = 0; i < 5; i += 1) await screen.press('Shift+ArrowRight');
  await screen.press('Enter');
  for (let i = 0; i < 15; i += 1) await screen.press('ArrowUp');
  await screen.press('Enter', '5');
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
  await screen.press('Tab');
  await page.keyboard.type('270');
  await screen.press('Enter');
  await expect.poll(() => page.locator('[data-part=sketch] [data-part=corner]').count()).toBe(4);
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a green');
  expect(await page.locator('.held-facts').innerText()).toMatch(/Around 20\.0\u00a0yd, area 25\u00a0yd²/);
  // A height where the cursor stands, and one corner moved by a foot.
  await screen.press('Escape', 'Escape', '1', 'ArrowUp', 'Enter');
  await page.keyboard.type('12 ft 6');
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: added a spot height');
  await screen.press('s', ',', ',');
  await expect.poll(() => page.locator('.held h2').innerText()).toMatch(/Green|Spot height/);
  await screen.press('.', ',');
  for (let i = 0; i < 4 && !(await page.locator('.held h2').innerText()).startsWith('Green'); i += 1)
    await screen.press('.');
  await screen.press(']', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: moved a corner of the green');
  // Given up, a move is no step.
  await screen.press('ArrowLeft', 'Escape');
  expect(await screen.undoName()).toBe('Undo: moved a corner of the green');
  await screen.press('Delete');
  await expect.poll(() => screen.undoName()).toBe('Undo: took a corner out of the green');
  expect(shared.problems).toEqual([]);
});

it('says at the field what it cannot read, and loses nothing', async () => {
  const { page } = shared;
  const screen = new SurveyScreen(page);
  await screen.startNew('Fields');
  await screen.tool('1');
  await screen.click(0.5, 0.5);
  await page.keyboard.type('twelve');
  await screen.press('Enter');
  expect(await page.locator('.field-trouble').innerText()).toContain('twelve');
  await page.getByRole('textbox', { name: 'Height' }).fill('12.1');
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: added a spot height');
  await page.getByLabel('Good to ±').fill('none');
  await screen.press('Enter');
  expect(await page.locator('.field-trouble').innerText()).toContain('none');
  expect(shared.problems).toEqual([]);
});

it('keeps many atlases: names, copies, takes away and brings back; adds and orders holes', async () => {
  const { page } = shared;
  const screen = new SurveyScreen(page);
  await screen.startNew('Second');
  await screen.menu('All atlases');
  const rows = page.locator('.shelf li');
  await rows.first().waitFor();
  const before = await rows.count();
  await rows.filter({ hasText: 'Ossel Down' }).first().locator('.thumbnail [data-kind=green]').waitFor();
  await page.getByRole('button', { name: 'Copy Ossel Down' }).click();
  await expect.poll(() => rows.count()).toBe(before + 1);
  await page.getByRole('button', { name: 'Take Ossel Down, copy away' }).click();
  await expect.poll(() => rows.count()).toBe(before);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect.poll(() => rows.count()).toBe(before + 1);
  await page.getByRole('button', { name: 'Rename Ossel Down, copy' }).click();
  await page.getByLabel('New name of Ossel Down, copy').fill('Far Down');
  await page.keyboard.press('Enter');
  await page.getByLabel('Find').fill('far');
  await expect.poll(() => rows.allInnerTexts()).toEqual([expect.stringContaining('Far Down')]);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await screen.menu('Holes and stations');
  await page.getByRole('button', { name: 'Add a hole' }).click();
  await page.getByLabel('Par').nth(1).fill('4');
  await page.getByLabel('Par').nth(1).press('Enter');
  await page.getByRole('button', { name: 'Move 2 up' }).click();
  await expect
    .poll(() =>
      page.getByLabel('Label').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value)),
    )
    .toEqual(['2', '1']);
  await page.getByRole('button', { name: 'Draw its line of play' }).first().click();
  await screen.click(0.5, 0.9);
  await screen.click(0.5, 0.4);
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: drew the line of play of 2');
  expect(shared.problems).toEqual([]);
});

it('cuts, parts, joins, turns and moves what is held, one step each', async () => {
  const { page } = shared;
  const screen = new SurveyScreen(page);
  await screen.startNew('Shapes');
  await screen.tool('w');
  for (const [x, y] of [
    [0.3, 0.3],
    [0.7, 0.3],
    [0.7, 0.7],
    [0.3, 0.7],
  ] as const)
    await screen.click(x, y);
  await screen.press('Enter', 's');
  await expect.poll(() => screen.undoName()).toMatch(/fairway/);
  await screen.click(0.5, 0.6);
  await page.getByRole('button', { name: 'Cut a piece out' }).click();
  await screen.stroke(ellipse(0.4, 0.4, 0.04, 0.05, 10));
  await expect.poll(() => screen.undoName()).toBe('Undo: cut the fairway');
  await expect.poll(() => page.locator('.held-facts').innerText()).toContain('1 cut out');
  await page.getByRole('button', { name: 'Part in two' }).click();
  await screen.click(0.6, 0.2);
  await screen.click(0.6, 0.8);
  await screen.press('Enter');
  await expect.poll(() => screen.undoName()).toBe('Undo: parted the fairway');
  // What was parted can be made one again.
  await page.getByRole('button', { name: 'Join with its neighbour' }).click();
  await expect.poll(() => screen.undoName()).toBe('Undo: joined the fairway with its neighbour');
  await screen.undo().click();
  await page.getByRole('button', { name: 'Copy' }).click();
  await expect.poll(() => screen.undoName()).toBe('Undo: copied the fairway');
  // Dragged over the other part, the two can be joined.
  await page.mouse.move(...(await screen.at(0.8, 0.6)));
  await page.mouse.down();
  await page.mouse.move(...(await screen.at(0.6, 0.6)), { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => screen.undoName()).toMatch(/^Undo: (moved|copied) the fairway/);
  await page.getByRole('button', { name: /^Join with/ }).click();
  await expect.poll(() => screen.undoName()).toMatch(/^Undo: joined the fairway/);
  await page.getByRole('button', { name: 'Turn', exact: true }).click();
  await expect.poll(() => screen.undoName()).toBe('Undo: turned the fairway');

  // The same with a pen and with a finger, a stroke of which the browser must not take for a scroll.
  const tools = await shared.context.newCDPSession(page);
  await screen.press('Escape', 'Escape', 'b');
  const places = await Promise.all(ellipse(0.15, 0.2, 0.05, 0.08, 10).map(([x, y]) => screen.at(x, y)));
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', [x, y]: readonly [number, number]) =>
    tools.send('Input.dispatchMouseEvent', {
      ...{ type, x, y, button: 'left', buttons: 1, clickCount: 1, pointerType: 'pen', force: 0.5 },
    });
  const first = await screen.at(0.2, 0.2);
  await pen('mousePressed', first);
  for (const place of places) await pen('mouseMoved', place);
  await pen('mouseReleased', first);
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a bunker');
  await screen.tool('w');
  const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: readonly [number, number]) =>
    tools.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: at === undefined ? [] : [{ x: at[0], y: at[1] + 200 }],
    });
  await finger('touchStart', first);
  for (const place of places) await finger('touchMove', place);
  await finger('touchEnd');
  await expect.poll(() => screen.undoName()).toBe('Undo: traced a fairway');
  expect(shared.problems).toEqual([]);
});

/** How many spot heights the open atlas has, as the window tells it. */
const heights = (page: Page): Promise<string> => page.locator('.survey-facts').first().innerText();

async function addHeight(screen: SurveyScreen, x: number): Promise<void> {
  await screen.tool('1');
  await screen.click(x, 0.5);
  await screen.page.keyboard.type('12');
  await screen.press('Enter', 'Escape', 'Escape');
}

it('lets one window at a time change an atlas, and tells when there is no room to keep a change', async () => {
  const screen = new SurveyScreen(shared.page);
  await screen.startNew('Two windows');
  await addHeight(screen, 0.4);
  await expect.poll(() => heights(shared.page)).toMatch(/Spot heights\s*1/);
  const page = await shared.context.newPage();
  const second = new SurveyScreen(page);
  try {
    await page.goto(host.url);
    await expect.poll(() => page.locator('.notice-bar').innerText()).toContain('open in another window');
    await addHeight(second, 0.6);
    expect(await second.undoName()).toBe('Undo: added a spot height');
    await expect.poll(() => heights(page)).toMatch(/Spot heights\s*1/);
    // The first goes on, and leaves it; then the second has it, with all that was done.
    await addHeight(screen, 0.5);
    await screen.startNew('Another');
    await second.menu('All atlases');
    await page
      .locator('.shelf')
      .getByRole('button', { name: /^Two windows/ })
      .click();
    await expect.poll(() => heights(page)).toMatch(/Spot heights\s*2/);
    expect(await page.locator('.notice-bar').count()).toBe(0);
    await addHeight(second, 0.6);
    await expect.poll(() => heights(page)).toMatch(/Spot heights\s*3/);
    const kept = await second.saved();

    // A disk that is full: the change is told to be at risk, what was stored is there after a reload.
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await addHeight(second, 0.7);
    await expect
      .poll(() => page.getByRole('alert').innerText())
      .toContain('no room left to keep this change');
    expect(await page.getByRole('alert').innerText()).toContain('Save the atlas to a file');
    expect(await page.locator('.status-bar').innerText()).toMatch(/^Not saved/);
    expect((await second.saved()).document.records.size).toBe(kept.document.records.size + 1);
    await page.reload();
    await expect.poll(() => heights(page)).toMatch(/Spot heights\s*3/);
    expect(sameDocument((await second.saved()).document, kept.document)).toBe(true);
  } finally {
    await page.close();
  }
  expect(shared.problems).toEqual([]);
});

it('lays pictures under a placed atlas: asks for what is in view while on, for nothing while off, and bears silence', async () => {
  const asked: string[] = [];
  const tile = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
    'base64',
  );
  const tiles = createServer((request, response) => {
    asked.push(request.url ?? '');
    response.writeHead(200, { 'content-type': 'image/png', 'cache-control': 'max-age=3600' }).end(tile);
  });
  await new Promise<void>((ready) => {
    tiles.listen(0, '127.0.0.1', ready);
  });
  const { port } = tiles.address() as AddressInfo; // listening on TCP: never a string
  try {
    const { page } = shared;
    await page.getByRole('button', { name: /Hole/ }).first().click();
    await page.getByRole('menuitem', { name: 'New', exact: true }).click();
    await page.getByLabel('A place on the earth').check();
    await page.getByLabel('Latitude').fill('45.001');
    await page.getByLabel('Longitude').fill('-30.002');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('button', { name: 'Trace over a map' }).click();
    const layer = page.getByRole('checkbox', { name: 'OpenStreetMap, standard map' });
    expect(await layer.isChecked()).toBe(false);
    await page.getByRole('dialog').getByRole('button', { name: 'Settings' }).first().click();
    const address = page.getByLabel('Address');
    await address.fill('ftp://nowhere/{z}/{x}/{y}');
    await address.press('Enter');
    expect(await page.locator('.field-trouble').innerText()).toContain(
      'No pictures can come from that address',
    );
    await address.fill(`http://127.0.0.1:${String(port)}/{z}/{x}/{y}.png`);
    await address.press('Enter');
    await page.getByLabel('Attribution').fill('© the test');
    await page.getByLabel('Attribution').press('Enter');
    await page.waitForTimeout(300);
    expect(asked).toEqual([]);
    await layer.check();
    await expect.poll(() => asked.length).toBeGreaterThan(0);
    // The owner is named in the atlas too, for what is printed of it.
    expect(await new SurveyScreen(page).undoName()).toBe('Undo: named © the test as a source');
    await page.keyboard.press('Escape');
    await page.locator('.leaflet-tile-loaded').first().waitFor({ state: 'attached' });
    expect(await page.locator('.plate-attribution').innerText()).toBe('© the test');
    // Only what is in view: the plate is some tiles wide, and no level but one is asked for.
    await page.waitForTimeout(400);
    const levels = new Set(asked.map((url) => url.split('/')[1]));
    expect([...levels]).toEqual(['19']);
    expect(asked.length).toBeLessThan(16);
    const before = asked.length;
    await page.getByRole('button', { name: /Hole/ }).first().click();
    await page.getByRole('menuitem', { name: 'Under the drawing' }).click();
    await layer.uncheck();
    await page.keyboard.press('Escape');
    await page.mouse.move(700, 400);
    await page.mouse.wheel(0, 400);
    await page.waitForTimeout(400);
    expect(asked.length).toBe(before);
    expect(await page.locator('.plate-attribution').count()).toBe(0);

    // A server that is gone is told in the status bar, and drawing goes on.
    tiles.closeAllConnections();
    await new Promise<void>((closed) => {
      tiles.close(() => closed());
    });
    await page.getByRole('button', { name: /Hole/ }).first().click();
    await page.getByRole('menuitem', { name: 'Under the drawing' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Settings' }).first().click();
    await page.getByLabel('Address').fill(`http://127.0.0.1:${String(port)}/gone/{z}/{x}/{y}.png`);
    await page.getByLabel('Address').press('Enter');
    await layer.check();
    await page.keyboard.press('Escape');
    await expect
      .poll(() => page.locator('.status-bar').innerText())
      .toContain('cannot be reached; drawing goes on');
    expect(await page.getByRole('alert').count()).toBe(0);
    const screen = new SurveyScreen(page);
    await screen.tool('g');
    await screen.stroke(ellipse(0.5, 0.5, 0.1, 0.15, 12));
    await expect.poll(() => screen.undoName()).toBe('Undo: traced a green');
  } finally {
    tiles.close();
  }
});
