import { expect, it } from 'vitest';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { sharedWindow } from './helpers/sharedWindow.ts';

const start = sharedWindow();

it('Positions: says what is wrong with a number of the day it cannot take, and plans with those it can', async () => {
  const { screen } = await start();
  const { page } = screen;
  const before = await screen.facts();
  await page.getByRole('tab', { name: 'Positions' }).click();
  const speed = page.getByLabel('Green speed');
  await speed.fill('quick');
  await speed.press('Enter');
  await expect.poll(() => page.getByRole('alert').innerText()).toContain('quick');
  await speed.fill('13 ft');
  await speed.press('Enter');
  await expect.poll(() => page.getByRole('alert').count()).toBe(0);
  const above = page.getByRole('textbox', { name: 'Altitude' });
  await above.fill('20,000 m');
  await above.press('Enter');
  await expect.poll(() => page.getByRole('alert').innerText()).toContain('from −450 to 5000 m');
  await above.fill('1,600 m');
  await above.press('Enter');
  await expect.poll(() => above.inputValue()).toBe('5249\u00a0ft');
  await page.getByRole('combobox', { name: 'Flagstick' }).selectOption('in');
  await expectAccessible(page);
  await page.getByRole('tab', { name: 'Plan' }).click();
  await screen.firm();
  expect(await screen.facts()).not.toBe(before);
  expect(await page.locator('.strip-facts').innerText()).toMatch(/13\sft[^]*Flagstick\s+in/i);
  for (let step = 0; step < 3; step += 1) await screen.undo().click();
  await screen.firm();
  expect(await screen.facts()).toBe(before);
});

it('Playbook: shows and prints the pages of a hole with the person’s own choice', async () => {
  const { screen, swale } = await start();
  const { page } = screen;
  await swale.context.addInitScript(() => {
    window.print = () => {
      window.top?.postMessage({ printed: document.title, text: document.body.innerText }, '*');
      window.dispatchEvent(new Event('afterprint'));
    };
  });
  // One ball alone on the pages.
  await page.getByRole('tab', { name: 'Positions' }).click();
  await page.getByLabel('Group').fill('one to keep');
  await page.getByLabel('Group').press('Enter');
  await page.getByRole('tab', { name: 'Plan' }).click();
  await page.locator('.strip .group-select select').selectOption('one to keep');
  await screen.firm();
  await page.locator('.ledger tbody tr:not(.chosen)').nth(2).click();
  const picked = await page.locator('.ledger tbody tr.chosen .shot-name').innerText();
  await page.getByRole('button', { name: 'Put in playbook' }).click();
  await page.getByRole('tab', { name: 'Playbook' }).click();
  const pages = page.frameLocator('.playbook-pages iframe');
  await pages.locator('svg').first().waitFor({ timeout: 100_000 });
  expect(await page.locator('.playbook-side li').innerText()).toMatch(
    new RegExp(`^Ball 1 to flag A: ${picked} \\(advice: `),
  );
  await expectAccessible(page);
  const printed = page.evaluate(
    () =>
      new Promise<{ printed: string; text: string }>((done) => {
        window.addEventListener('message', ({ data }: MessageEvent<{ printed: string; text: string }>) =>
          done(data),
        );
      }),
  );
  await page.getByRole('button', { name: 'Print or save as PDF' }).click();
  expect((await printed).printed).toContain('Ossel Down');
  expect((await printed).text).toContain('Sheepwash');
  await expect.poll(() => page.locator('.print-frame').count()).toBe(0);
});
