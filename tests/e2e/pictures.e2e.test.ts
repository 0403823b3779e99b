import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { frameOf, headerOf, recordsOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { pictureAffine } from '../../shared/atlas/pictures.ts';
import { readAtlasContent } from '../../shared/formats/bundle.ts';
import { onPlane } from '../../shared/geometry/affine.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { openSwale, type OpenSwale } from './helpers/openSwale.ts';
import { pngOf } from './helpers/pngOf.ts';

const sha256 = async (content: Uint8Array): Promise<string> =>
  Buffer.from(await crypto.subtle.digest('SHA-256', new Uint8Array(content))).toString('hex');

async function menu({ page }: OpenSwale, name: string): Promise<void> {
  await page
    .getByRole('button', { name: /Hole|Station/ })
    .first()
    .click();
  await page.getByRole('menuitem', { name, exact: true }).click();
}

const undoName = ({ page }: OpenSwale): Promise<string | null> =>
  page.getByRole('button', { name: /^(Undo: |Nothing to undo)/ }).getAttribute('aria-label');

async function choose(
  { page }: OpenSwale,
  open: () => Promise<void>,
  file: { name: string; mimeType: string; buffer: Buffer },
): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await open();
  await (await chooser).setFiles(file);
}

it('lays a large picture under a blank canvas by keys alone, carries it in the file, and sets both down over a map', async () => {
  const asked: string[] = [];
  const tile = pngOf(2, 2, () => 200);
  const tiles = createServer((request, response) => {
    asked.push(request.url ?? '');
    response.writeHead(200, { 'content-type': 'image/png' }).end(tile);
  });
  await new Promise<void>((ready) => {
    tiles.listen(0, '127.0.0.1', ready);
  });
  const { port } = tiles.address() as AddressInfo; // listening on TCP: never a string
  const swale = await openSwale({ acceptDownloads: true });
  const { page } = swale;
  try {
    await page.getByRole('tab', { name: 'Survey' }).waitFor();
    await page.evaluate(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
    });
    page.on('filechooser', () => undefined);
    await menu(swale, 'New');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByText('Put the ground on the sheet').waitFor();

    const add = async (name: string, buffer: Buffer): Promise<void> => {
      await menu(swale, 'Under the drawing');
      await choose(swale, () => page.getByRole('button', { name: 'Add a picture' }).click(), {
        ...{ name, buffer },
        mimeType: 'image/png',
      });
    };
    const large = pngOf(5000, 3400, (x, y) => (((x >> 8) + (y >> 8)) % 2 === 0 ? 200 : 90));
    await add('Cut short.png', large.subarray(0, 3000));
    await expect.poll(() => page.getByRole('alert').innerText()).toContain('damaged or cut short');
    await page.getByRole('button', { name: 'Dismiss' }).click();

    await add('From above.png', large);
    const panel = page.getByRole('region', { name: 'Placing' });
    await panel.waitFor();
    expect(await panel.innerText()).toContain('The file has 17 million pixels. 16 million of them are kept');
    await page.locator('.plate-picture').waitFor({ state: 'attached' });
    await expectAccessible(page, '[aria-label=Placing]');
    // Two points sixteen yards apart by the cross, which are in truth twenty-four.
    await page.getByRole('button', { name: 'Known distance' }).press('Enter');
    await page.keyboard.press('Enter');
    for (let i = 0; i < 16; i += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(() => panel.innerText()).toContain('As it lies now: 16.00 yd');
    await page.keyboard.type('24');
    await page.keyboard.press('Enter');
    await expect.poll(() => panel.innerText()).toContain('As it lies now: 24.00 yd');
    await panel.getByRole('button', { name: 'Done' }).press('Enter');
    await expect.poll(() => undoName(swale)).toBe('Undo: placed the picture From above');

    const save = async (): Promise<Buffer> => {
      const download = page.waitForEvent('download');
      await page.keyboard.press('Control+Shift+s');
      const saved = await download;
      expect(saved.suggestedFilename()).toBe('new-atlas.zip');
      return readFileSync(await saved.path());
    };
    const content = await save();
    const { document, pictures } = await readAtlasContent(content, 'saved', sha256);
    const [picture] = recordsOf(document, 'picture');
    if (picture === undefined) throw new Error('no picture was saved');
    expect([...pictures.keys()]).toEqual([picture.sha256]);
    expect(picture.widthPx * picture.heightPx).toBeLessThanOrEqual(16_010_000);
    const widthOf = (shown: AtlasDocument): number => {
      const [laid] = recordsOf(shown, 'picture');
      if (laid === undefined) throw new Error('no picture in it');
      const lies = pictureAffine(frameOf(shown), laid);
      return distanceM(onPlane(lies, { x: 0, y: 0 }), onPlane(lies, { x: picture.widthPx, y: 0 }));
    };

    // Where its pixels are unknown the file alone brings them back.
    await page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((done) => {
        const opening = indexedDB.open('swale-pictures');
        opening.onsuccess = () => done(opening.result);
      });
      const clearing = database.transaction('pictures', 'readwrite');
      clearing.objectStore('pictures').clear();
      await new Promise<void>((done) => {
        clearing.oncomplete = () => done();
      });
      database.close();
    });
    await choose(swale, () => page.keyboard.press('Control+o'), {
      ...{ name: 'new-atlas.zip', mimeType: 'application/zip' },
      buffer: content,
    });
    await expect.poll(() => undoName(swale)).toBe('Nothing to undo');
    await page.getByRole('tab', { name: 'Survey' }).click();
    const image = page.locator('.plate-picture');
    await image.waitFor({ state: 'attached' });
    await expect
      .poll(() => image.evaluate((shown: HTMLImageElement) => shown.naturalWidth))
      .toBe(picture.widthPx);

    // The sheet goes down over a map: nothing is asked of it before it is on.
    await menu(swale, 'Place on the earth');
    await page.getByLabel('Latitude').fill('56.1');
    await page.getByLabel('Longitude').fill('-3.2');
    await page.getByRole('button', { name: 'Move it there over a map' }).click();
    await page.getByRole('button', { name: 'Choose one' }).click();
    const maps = page.getByRole('dialog').getByRole('listitem').filter({ hasText: 'OpenStreetMap' });
    await maps.getByRole('button', { name: 'Settings' }).click();
    await expectAccessible(page, 'dialog');
    await page.getByLabel('WMS layers').fill('ortho');
    await page.getByLabel('WMS layers').press('Enter');
    await page.getByLabel('Address').fill(`http://127.0.0.1:${String(port)}/wms`);
    await page.getByLabel('Address').press('Enter');
    expect(asked).toEqual([]);
    await maps.getByRole('checkbox').check();
    await page.keyboard.press('Escape');
    await expect.poll(() => asked.length).toBeGreaterThan(0);
    expect(asked[0]).toMatch(/^\/wms\?.*request=GetMap.*layers=ortho.*version=1\.3\.0.*crs=EPSG%3A3857/);
    await page.locator('.survey-map').focus();
    for (const key of ['Shift+ArrowRight', ']', ']', 'Enter']) await page.keyboard.press(key);
    await expect.poll(() => undoName(swale)).toBe('Undo: placed the atlas on the earth');
    const placed = (await readAtlasContent(await save(), 'placed', sha256)).document;
    expect(headerOf(placed).placed).toBe(true);
    expect(widthOf(placed)).toBeCloseTo(widthOf(document), 3);

    // A shift brings another part of the source into view: that is asked for, and no more.
    const before = asked.length;
    await menu(swale, 'Under the drawing');
    await maps.getByRole('button', { name: 'Settings' }).click();
    await page.getByRole('button', { name: 'Shift it by hand' }).click();
    for (let i = 0; i < 60; i += 1) await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => asked.length).toBeGreaterThan(before);
    await page.keyboard.press('Enter');
    await menu(swale, 'Under the drawing');
    await maps.getByRole('button', { name: 'Settings' }).click();
    expect(await page.getByLabel('Shift east').inputValue()).toBe('54.86');
    expect(asked.length - before).toBeLessThan(40);
    expect(swale.problems).toEqual([]);
  } finally {
    await swale.close();
    tiles.closeAllConnections();
    tiles.close();
  }
});
