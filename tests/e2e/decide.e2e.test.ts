import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { sharedWindow } from './helpers/sharedWindow.ts';

const start = sharedWindow();

it('somebody pins a ball, drags it, compares, tries, picks, finds it in the playbook and undoes it all', async () => {
  const { screen } = await start();
  const { page } = screen;
  await page.getByRole('tab', { name: 'Positions' }).click();
  await page.getByRole('button', { name: 'Pin a ball' }).click();
  const plate = await page.locator('.plate-map').boundingBox();
  if (plate === null) throw new Error('no plate');
  await page.mouse.click(plate.x + plate.width * 0.62, plate.y + plate.height * 0.9);
  const rows = page.locator('.positions-balls tbody tr');
  await expect.poll(() => rows.count()).toBe(9);
  await page.getByLabel('Name', { exact: true }).fill('by the mower shed');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: /^Lie/ }).selectOption('sittingDown');
  await expect.poll(() => rows.nth(8).innerText()).toMatch(/by the mower shed[\s\S]*sitting down/);
  await expectAccessible(page);
  expect(await screen.undo().getAttribute('aria-label')).toBe('Undo: set the lie of ball 9');
  await screen.undo().click();
  await expect.poll(() => rows.nth(8).innerText()).toMatch(/clean/);
  await page.getByLabel('Group').fill('found today');
  await page.getByLabel('Group').press('Enter');
  await page.getByRole('tab', { name: 'Plan' }).click();
  const group = page.locator('.strip .group-select select');
  await group.selectOption('found today');
  expect(await page.locator('.chooser.balls button').allInnerTexts()).toEqual(['9']);
  await screen.flag('C').click();
  await screen.firm();
  const pinned = await screen.line();
  expect(pinned).toMatch(/^Ball 9, by the mower shed.*clean lie.*to flag C/);

  const box = await screen.handle('Ball 9').boundingBox();
  if (box === null) throw new Error('ball 9 is not on the plate');
  await page.mouse.move(box.x + 16, box.y + 16);
  await page.mouse.down();
  await page.mouse.move(box.x + 46, box.y + 12, { steps: 8 });
  await page.mouse.up();
  await screen.firm();
  expect(await screen.line()).not.toBe(pinned);

  // Two options beside each other: both on the plate, and their figures in one table.
  await page.getByRole('button', { name: 'Side by side' }).click();
  const compare = page.getByRole('region', { name: 'Side by side' });
  expect(await compare.locator('thead th').count()).toBe(2);
  expect(await page.locator('.plate [data-part=shot]').count()).toBe(2);
  await compare.getByRole('combobox').selectOption({ index: 1 });
  await expect.poll(() => compare.locator('thead th').count()).toBe(3);
  expect(await page.locator('.plate [data-part=shot][data-role=second]').count()).toBe(2);
  expect(await compare.locator('tbody').innerText()).toMatch(
    /^Swing(\s+(small|medium|long), [\d.]+\u00a0mph){3}[\s\S]*Holed(\s+[<\d]+\u00a0%){3}\s+Inside 3\u00a0ft[\s\S]*Off the green/,
  );
  await expectAccessible(page, '.plan-right');
  await page.keyboard.press('Escape');
  expect(await page.locator('.plate [data-part=shot]').count()).toBe(1);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/Side by side/);

  // Tried by the keyboard: much too big a swing costs strokes, and the plan itself is left alone.
  const advised = await screen.headline();
  await page
    .locator('.ledger tbody tr', { hasText: /Chip|Pitch/ })
    .first()
    .click();
  const chosen = await screen.headline();
  await page.getByRole('button', { name: 'Try changes' }).click();
  const outcome = page.locator('.try-outcome');
  await outcome.waitFor();
  const bigger = page.getByRole('button', { name: 'Bigger' });
  await bigger.focus();
  for (let i = 0; i < 10; i += 1) await page.keyboard.press('Enter');
  await expect.poll(() => outcome.innerText(), { timeout: 15_000 }).toMatch(/^\d\.\d\d strokes more than/);
  const strokesMore = async (): Promise<number> => Number.parseFloat(await outcome.innerText());
  const tooBig = await strokesMore();
  expect(tooBig).toBeGreaterThan(0.05);
  await expectAccessible(page, '.plan-right');

  // The landing spot by hand.
  const spot = screen.handle('Landing spot');
  const from = await spot.boundingBox();
  if (from === null) throw new Error('the landing spot is not on the plate');
  const landed = await page.getByRole('group', { name: 'Land' }).locator('output').innerText();
  await page.mouse.move(from.x + 16, from.y + 16);
  await page.mouse.down();
  await page.mouse.move(from.x + 16, from.y + 66, { steps: 6 });
  await page.mouse.up();
  await expect
    .poll(() => page.getByRole('group', { name: 'Land' }).locator('output').innerText(), {
      timeout: 15_000,
    })
    .not.toBe(landed);
  // A worse lie: what it costs stands beside the shot as it was planned.
  await page.getByRole('combobox', { name: 'Lie' }).selectOption('sittingDown');
  await expect
    .poll(() => outcome.innerText(), { timeout: 15_000 })
    .toMatch(/^\d\.\d\d strokes like this, \d\.\d\d as planned\. /);
  expect(await page.locator('.try th').allInnerTexts()).toContain('As planned');
  await page.getByRole('button', { name: 'Done' }).click();
  expect(await screen.headline()).toBe(chosen);

  await page.getByRole('button', { name: 'Put in playbook' }).click();
  await page.getByLabel('Note').fill('the slope helps');
  await page.keyboard.press('Enter');
  if (chosen !== advised)
    expect(await page.locator('.actions-note').innerText()).toMatch(/^In the playbook: .*advice/);
  await page.getByRole('tab', { name: 'Playbook' }).click();
  await page.frameLocator('.playbook-pages iframe').locator('svg').first().waitFor({ timeout: 100_000 });
  expect(await page.locator('.playbook-side li').innerText()).toMatch(
    /^Ball 9 to flag C: .*the slope helps/s,
  );

  await page.getByRole('tab', { name: 'Plan' }).click();
  await group.selectOption('');
  for (const step of [
    'changed a note',
    'put a shot in the playbook',
    'moved ball 9',
    'put ball 9 in found today',
    'named ball 9',
    'pinned ball 9',
  ]) {
    expect(await screen.undo().getAttribute('aria-label')).toBe(`Undo: ${step}`);
    await screen.undo().click();
  }
  await expect.poll(() => screen.ball('9').count()).toBe(0);
  expect(await screen.undo().getAttribute('aria-label')).toBe('Nothing to undo');
});

it('tells quietly what would change the choice, maps the surrounds, and keeps pictures', async () => {
  const { screen } = await start();
  const { page } = screen;
  // One ball alone, so that no other is planned ahead of what would change the choice.
  await page.getByRole('tab', { name: 'Positions' }).click();
  await page.getByLabel('Group').fill('alone');
  await page.getByLabel('Group').press('Enter');
  await page.getByRole('tab', { name: 'Plan' }).click();
  const group = page.locator('.strip .group-select select');
  await group.selectOption('alone');
  await screen.firm();
  const changes = page.getByRole('region', { name: 'What would change it' });
  await changes.locator('table, p:not(.changes-wait)').first().waitFor({ timeout: 100_000 });
  expect(await changes.innerText()).toMatch(/no change|it holds for every flag/);

  const ground = page.getByLabel('Ground shows');
  await ground.selectOption('simple flag');
  const legend = page.getByRole('list', { name: /^Key: simplest shot/ });
  await legend.waitFor({ timeout: 100_000 });
  expect(await legend.getByRole('listitem').allInnerTexts()).toContain('Putt');
  expect(await page.locator('.plate [data-part=surrounds]').count()).toBe(1);
  await expectAccessible(page, '.plan-left');
  await ground.selectOption('off flag');
  expect(await page.locator('.plate [data-part=surrounds]').count()).toBe(0);

  const keep = async (kind: RegExp, group: string): Promise<Buffer> => {
    await page.getByRole('button', { name: 'Save a picture' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('group', { name: group }).getByRole('menuitem', { name: kind }).click(),
    ]);
    return readFileSync(await download.path());
  };
  const svg = (await keep(/SVG/, 'The plate')).toString('utf8');
  expect(svg).toMatch(/^<svg xmlns/);
  expect(svg).toContain('data-part="shot"');
  expect(svg).toContain('@font-face');
  // It says what it is of, away from the window.
  expect(svg).toMatch(
    />[^<]+: Ball 1, [^<]+, to flag\u00a0A<.*Ossel Down, .* for Ruth Amble.*green speed 9½\u00a0ft/s,
  );
  const png = await keep(/PNG/, 'The section');
  expect([...png.subarray(1, 4)].map((byte) => String.fromCharCode(byte)).join('')).toBe('PNG');
  const leaves = (await keep(/SVG/, 'Where they stop')).toString('utf8');
  expect(leaves).toMatch(/within 3 ft.*\d\u00a0%/s);
  // Its own width, twice as sharp as the screen.
  expect(png.readUInt32BE(16)).toBeGreaterThan(1000);
  await group.selectOption('');
  await screen.undo().click();
});

it('Positions: a pin-sheet line, proposed flags and likely misses, each one step to undo', async () => {
  const { screen } = await start();
  const { page } = screen;
  await page.getByRole('tab', { name: 'Positions' }).click();
  const sheet = page.getByLabel('Sheet line');
  await sheet.fill('nine or so');
  await sheet.press('Enter');
  expect(await page.getByRole('alert').innerText()).toContain('12 on, 5 from left');
  await sheet.fill('9 on, 6 from right');
  await sheet.press('Enter');
  await expect.poll(() => page.locator('.positions-side .places tbody tr').count()).toBe(5);
  expect(await page.locator('.positions-side .places tr.chosen').innerText()).toContain('9 on, 6 from right');
  await page.getByRole('button', { name: 'Propose three flags' }).click();
  const flagRows = page.locator('.positions-side .places tbody tr');
  await expect.poll(() => flagRows.count()).toBe(8);

  // By paces, and on the sheet of a day that is then alone in play.
  const fromFront = page.getByLabel('From front');
  await fromFront.fill('14');
  await fromFront.press('Enter');
  await expect.poll(() => page.locator('.positions-side .places tr.chosen').innerText()).toContain('14 on');
  const onSheet = page.getByRole('group', { name: /^Flag / }).getByLabel('Pin sheet');
  await onSheet.fill('Saturday');
  await onSheet.press('Enter');
  // The next line belongs to the sheet of the line before it.
  await sheet.fill('12 on, 5 from left');
  await sheet.press('Enter');
  await expect
    .poll(() => page.locator('.positions-side .places tr.chosen').innerText())
    .toContain('12 on, 5 from left\nSaturday');
  await page.getByRole('combobox', { name: 'Pin sheet' }).last().selectOption('Saturday');
  await expect.poll(() => flagRows.count()).toBe(2);
  await page.getByRole('button', { name: 'Make it like' }).click();
  await page.getByRole('menuitemradio', { name: /^dewy morning.*8 ft, rather soft, wet/ }).click();
  await expect.poll(() => page.getByLabel('Green speed').inputValue()).toBe('8\u00a0ft');

  // A ball wetter than its day, in a group of its own.
  await page.getByRole('combobox', { name: 'Moisture' }).first().selectOption('dry');
  await page.getByLabel('Group').fill('short side');
  await page.getByLabel('Group').press('Enter');
  const group = page.locator('.positions-balls .group-select select');
  await group.selectOption('short side');
  await expect.poll(() => page.locator('.positions-balls tbody tr:not(.group-head)').count()).toBe(1);
  await expectAccessible(page);
  await group.selectOption('');
  for (const step of [
    /^Undo: put ball 1 in short side/,
    /moisture of ball 1/,
    /dewy morning/,
    /chose a pin sheet/,
    /from the pin sheet/,
    /on Saturday/,
    /moved flag/,
  ]) {
    expect(await screen.undo().getAttribute('aria-label')).toMatch(step);
    await screen.undo().click();
  }

  await page.getByRole('button', { name: 'Show them' }).click();
  expect(await page.locator('.plate [data-part=likely] circle').count()).toBeGreaterThan(20);
  // With a club that says how far out, and from a place marked on the plate.
  const likely = page.getByRole('region', { name: 'Likely misses' });
  const far = async () => Number(/shots from (\d+)/.exec(await likely.innerText())?.[1]);
  expect(await far()).toBe(150);
  await likely
    .getByLabel('With')
    .selectOption({ label: await likely.locator('option', { hasText: 'a full' }).last().innerText() });
  await expect.poll(far).toBeLessThan(120);
  await likely.getByRole('button', { name: 'Mark the place' }).click();
  const plate = await page.locator('.plate-map').boundingBox();
  if (plate === null) throw new Error('no plate');
  await page.mouse.click(plate.x + 12, plate.y + plate.height - 12);
  await expect.poll(() => likely.getByLabel('Played from').inputValue()).toBe('marked');
  expect(await page.locator('.plate [data-part=approach] path').count()).toBe(2);
  await likely.getByLabel('Played from').selectOption('line');
  await likely.getByLabel('With').selectOption('');
  await page.getByRole('button', { name: /^Pin 3 balls there/ }).click();
  await expect.poll(() => page.locator('.positions-balls tbody tr:not(.group-head)').count()).toBe(11);
  for (let i = 0; i < 3; i += 1) await screen.undo().click();
  expect(await screen.undo().getAttribute('aria-label')).toBe('Nothing to undo');
  expect(await page.locator('.positions-balls tbody tr').count()).toBe(8);
});

it('plans for another player: a shot marked as not theirs is left out and said so', async () => {
  const { screen } = await start();
  const { page } = screen;
  const before = await screen.facts();
  await page.getByRole('tab', { name: 'Player' }).click();
  await page.getByRole('radio', { name: 'Putt: not mine' }).click();
  await expectAccessible(page);
  await page.getByRole('tab', { name: 'Plan' }).click();
  await screen.firm();
  await expect.poll(() => screen.headline()).not.toBe('Putt');
  expect(await page.locator('.left-out', { hasText: 'left out' }).textContent()).toContain(
    'marked the putt as not yours',
  );
  await page.keyboard.press('Control+z');
  await screen.firm();
  await expect.poll(() => screen.facts()).toBe(before);

  await page.locator('.strip-menu').last().click();
  await page.getByRole('menuitemradio', { name: 'Tam Pettle' }).click();
  await screen.firm();
  expect(await page.locator('.strip-facts').innerText()).toContain('Tam Pettle');
  expect(await screen.facts()).not.toBe(before);
  expect(await screen.undo().getAttribute('aria-label')).toBe('Undo: chose Tam Pettle');
  // A left-hander: the stance is drawn and told for that hand.
  await page.getByText('How it is set up').click();
  expect(await page.locator('.set-up > div').first().getAttribute('aria-label')).toContain('left-handed');

  // What others should play from here, each on the plate.
  await page.getByRole('button', { name: 'Players' }).click();
  const beside = page.getByRole('region', { name: 'Players beside each other' });
  await expect
    .poll(() => beside.locator('tbody tr').last().innerText(), { timeout: 60_000 })
    .toMatch(/^Strokes(\s+\d\.\d\d){3}$/);
  expect(await page.locator('.plate [data-part=shot]').count()).toBe(3);
  await expectAccessible(page, '.plan-right');
});
