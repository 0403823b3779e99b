import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../helpers/temporaryFolder.ts';
import { openSwale } from './helpers/openSwale.ts';

const root = resolve(import.meta.dirname, '..', '..');

/** The practice ground with one flag to a station, whose place and fall are as long as such words get. */
function oneFlag(text: string): string {
  const atlas = JSON.parse(text) as { features: { properties: { swale: string; label?: string } }[] };
  atlas.features = atlas.features.filter(
    ({ properties: { swale: kind, label } }) => kind !== 'holeLocation' || label === 'A',
  );
  return JSON.stringify(atlas);
}

it('a card of eight balls holds all it says, to its last line', async () => {
  const folder = temporaryFolder();
  const atlas = join(folder, 'practice.geojson');
  writeFileSync(atlas, oneFlag(readFileSync(join(root, 'sample-course', 'ossel-practice.geojson'), 'utf8')));
  const args = ['playbook', atlas, '--hole', 'S1', '--parts', 'cards', '--shots', '20', '--out', folder];
  const made = spawnSync(process.execPath, [join(root, 'out', 'main', 'cli.js'), ...args], {
    encoding: 'utf8',
  });
  expect(made.stderr).toBe('');
  const swale = await openSwale();
  const { page } = swale;
  await page.setContent(readFileSync(join(folder, 'playbook.html'), 'utf8'));
  const card = page.locator('.card');
  expect(await card.locator('tbody tr').count()).toBe(8);
  const [sheet, key] = [await card.boundingBox(), await card.locator('.key').last().boundingBox()];
  if (sheet === null || key === null) throw new Error('there is no card, or no key on it');
  // 0.16 in of margin at 96 px to the inch, and the line drawn round a card on the screen.
  expect(sheet.y + sheet.height - (key.y + key.height)).toBeGreaterThanOrEqual(0.16 * 96);
  const cut = await card
    .locator('td, th, p, h2')
    .evaluateAll((cells) =>
      cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1).map((cell) => cell.textContent),
    );
  expect(cut).toEqual([]);
  await swale.close();
});
