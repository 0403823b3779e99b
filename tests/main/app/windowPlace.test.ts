import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readWindowPlace, writeWindowPlace } from '../../../main/app/windowPlace.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';

const screens = [{ x: 0, y: 0, width: 1920, height: 1080 }];
const usual = { bounds: { width: 1440, height: 900 }, maximized: false };

it('comes back to where it was left', async () => {
  const path = join(temporaryFolder(), 'window.json');
  const bounds = { x: 100, y: 50, width: 1000, height: 700 };
  await writeWindowPlace(path, bounds, true);
  expect(readWindowPlace(path, screens)).toEqual({ bounds, maximized: true });
});

it('keeps its size but not a place on a screen that is gone', async () => {
  const path = join(temporaryFolder(), 'window.json');
  await writeWindowPlace(path, { x: 2500, y: 50, width: 1000, height: 700 }, false);
  expect(readWindowPlace(path, screens)).toEqual({ bounds: { width: 1000, height: 700 }, maximized: false });
});

it.each(['', 'nonsense', 'null', '{"bounds":{"x":"1"}}', '{"bounds":{"x":0,"y":0,"width":1,"height":1}}'])(
  'starts afresh from %j',
  (text) => {
    const path = join(temporaryFolder(), 'window.json');
    writeFileSync(path, text);
    expect(readWindowPlace(path, screens)).toEqual(usual);
  },
);

it('starts afresh without a file', () => {
  expect(readWindowPlace(join(temporaryFolder(), 'none.json'), screens)).toEqual(usual);
});
