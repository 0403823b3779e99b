import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FileChooser, Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';
import { osmXml } from '../unit/formats/exchangeFixtures.ts';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { openSwale } from './helpers/openSwale.ts';

async function fromMenu(page: Page, item: string): Promise<Locator> {
  await page.locator('.top-left .menu > button').click();
  await page.getByRole('menuitem', { name: item, exact: true }).click();
  return page.getByRole('dialog');
}

type Chosen = Parameters<FileChooser['setFiles']>[0];

async function choose(page: Page, files: Chosen): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /^(Choose|Add) files$/ }).click();
  await (await chooser).setFiles(files);
}

it('brings a map in through its preview, as chosen, and takes all of it back in one step', async () => {
  const swale = await openSwale({ acceptDownloads: true });
  const { page } = swale;
  try {
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    const asked = await fromMenu(page, 'New');
    await asked.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('button', { name: /^Bring in a file/ }).click();
    const dialog = page.getByRole('dialog', { name: 'Bring in a file' });
    // A broken file says why, and the good one beside it is none the worse.
    const torn = { name: 'torn.gpx', mimeType: 'text/xml', buffer: Buffer.from('<gpx><wpt lat="45" lon') };
    const map = { name: 'course.osm', mimeType: 'text/xml', buffer: Buffer.from(osmXml()) };
    await choose(page, [torn, map]);
    await dialog.getByRole('alert').waitFor();
    expect(await dialog.getByRole('alert').innerText()).toMatch(/torn\.gpx, line 1.*use another copy/s);
    await dialog.getByRole('button', { name: 'Leave out torn.gpx' }).click();
    await dialog.getByRole('img', { name: /course\.osm/ }).waitFor();
    const as = (what: RegExp): Locator => dialog.getByRole('combobox', { name: what });
    expect(await as(/^bunker, golf=bunker/).inputValue()).toBe('bunker');
    await as(/^bunker, golf=bunker/).selectOption('bare ground');
    await as(/^path/).selectOption('leave out');
    await dialog.getByLabel('Owner to be named').fill('© the map makers');
    expect(await dialog.getByText(/^Pins, 1\./).count()).toBe(1);
    await expectAccessible(page, 'dialog');
    await dialog.getByRole('button', { name: 'Bring in 6 things' }).click();
    await page.locator('.survey-map [data-kind=bare]').first().waitFor();
    expect(await page.locator('.survey-map [data-kind=path], .survey-map [data-kind=bunker]').count()).toBe(
      0,
    );

    // A list pasted from a table, in metres from the anchor that the map gave the atlas.
    const paste = await fromMenu(page, 'Paste points');
    await paste.getByRole('textbox').fill('P;E;N;What\n1;2,5;3,5;20,31\n2;4;3;20,2\n3;0;0;20,4\n');
    await paste.getByRole('button', { name: 'Look at it' }).click();
    await paste.getByRole('alert').waitFor();
    await paste.getByRole('combobox', { name: 'What holds' }).selectOption('height');
    await paste.getByRole('button', { name: 'Bring in 3 things' }).click();
    const heights = page.locator('.survey-facts').getByText('Spot heights').locator('..');
    await expect.poll(() => heights.innerText()).toMatch(/3$/);

    // A level book whose places are shown on the map, one after another: with the pointer, then with the keys.
    const book = await fromMenu(page, 'Level book');
    const cell = (row: number, what: string): Locator =>
      book.getByRole('textbox', { name: `Row ${String(row)}, ${what}` });
    await cell(1, 'back').fill('1.5');
    await cell(2, 'point').fill('Crest');
    await cell(2, 'between').fill('1.2');
    await cell(3, 'fore').fill('1.4');
    await book.getByRole('button', { name: 'Row 1, show its place on the map' }).click();
    const asks = (name: string): Promise<void> =>
      page.getByRole('heading', { name: `Where is ${name}?` }).waitFor();
    await asks('BM');
    const plate = await page.locator('.survey-map').first().boundingBox();
    if (plate === null) throw new Error('no plate');
    await page.mouse.click(plate.x + plate.width * 0.4, plate.y + plate.height * 0.4);
    await asks('Crest');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await asks('row 3');
    await page.keyboard.press('Escape');
    await book.getByRole('button', { name: 'Put in 2 spot heights' }).click();
    await expect.poll(() => heights.innerText()).toMatch(/5$/);
    await page.keyboard.press('Control+z');

    // Everything sent out again, with the owner as typed.
    const out = await fromMenu(page, 'Send out');
    await out.getByText(/new-atlas\.geojson/).waitFor();
    const download = page.waitForEvent('download');
    await out.getByRole('button', { name: 'Save it' }).click();
    const stream = await (await download).createReadStream();
    let text = '';
    for await (const part of stream) text += String(part);
    expect(text).toContain('"attribution":"© the map makers');
    expect(text.match(/"height_m"/g)).toHaveLength(3);

    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.getByRole('heading', { name: 'Put the ground on the sheet' }).waitFor();
    expect(swale.problems).toEqual([]);
  } finally {
    await swale.close();
  }
});

it('answers hostile files with a reason, and opens an atlas that is dropped', async () => {
  const swale = await openSwale();
  const { page } = swale;
  try {
    const folder = temporaryFolder();
    const huge = join(folder, 'huge.geojson');
    writeFileSync(huge, '{"type":"FeatureCollection","features":[');
    truncateSync(huge, 200 * 1024 * 1024);
    const dialog = await fromMenu(page, 'Bring in a file');
    await choose(page, huge);
    await dialog.getByRole('alert').waitFor();
    expect(await dialog.getByRole('alert').innerText()).toMatch(
      /huge\.geojson: the file has 200 MB.*Cut out/s,
    );
    const stung = '<img src=x onerror="window.stung=true">';
    const named = { type: 'Feature', properties: { name: stung, golf: 'green' }, geometry: squareAt(30, 45) };
    await choose(page, {
      name: `${stung}.geojson`,
      mimeType: 'application/geo+json',
      buffer: Buffer.from(JSON.stringify(named)),
    });
    await dialog.getByText('onerror').first().waitFor();
    await expect.poll(() => dialog.getByRole('alert').count()).toBe(1);
    expect(await page.evaluate(() => 'stung' in window)).toBe(false);
    // An atlas is opened, whatever is on the screen.
    const atlas = await page.evaluate((green) => {
      const text = JSON.stringify({
        type: 'FeatureCollection',
        swale: {
          format: 1,
          atlas: { name: 'Dropped', kind: 'course', placed: false, anchor: [-30, 45], note: '' },
          holes: [],
          conditions: [],
          players: [],
          choices: [],
        },
        features: [green],
      });
      const data = new DataTransfer();
      data.items.add(new File([text], 'dropped.geojson', { type: 'application/geo+json' }));
      document.body.dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
      );
      return text.length;
    }, drawnGreen);
    expect(atlas).toBeGreaterThan(100);
    await expect.poll(() => page.title()).toBe('Dropped – Swale');
    expect(await page.getByRole('dialog').count()).toBe(0);

    // It is drawn on a blank canvas: placing it first leads back to the file, with what was said about it.
    const again = await fromMenu(page, 'Bring in a file');
    await choose(page, { name: 'course.osm', mimeType: 'text/xml', buffer: Buffer.from(osmXml()) });
    await again.getByRole('button', { name: 'Place it on the earth' }).click();
    const place = page.getByRole('dialog', { name: 'Place it on the earth' });
    await place.getByRole('button', { name: 'Cancel' }).click();
    await again.getByRole('button', { name: 'Place it on the earth' }).click();
    await place.getByLabel('Latitude').fill('53.9');
    await place.getByLabel('Longitude').fill('-3.6');
    await place.getByRole('button', { name: 'Place it', exact: true }).click();
    await again.getByRole('button', { name: /^Bring in \d+ things$/ }).click();
    await page.getByRole('button', { name: /^Undo: imported .* from course\.osm/ }).waitFor();
    expect(swale.problems).toEqual([]);
  } finally {
    await swale.close();
  }
});

const drawnGreen = {
  type: 'Feature',
  id: 'green',
  properties: { swale: 'area', kind: 'green', name: '' },
  geometry: squareAt(-30, 45),
};

/** A square of ten metres or so, nowhere near the open atlas. */
function squareAt(lon: number, lat: number): object {
  const corner = (x: number, y: number): number[] => [lon + x * 1e-4, lat + y * 1e-4];
  return {
    type: 'Polygon',
    coordinates: [[corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1), corner(0, 0)]],
  };
}
