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

it('never loses the focus: a refused entry keeps it, and what is cancelled gives it to what comes in its place', async () => {
  const { screen } = await start();
  const { page } = screen;
  const inHand = (): Promise<string | undefined> =>
    page.evaluate(() => document.activeElement?.textContent.trim());
  await page.getByRole('tab', { name: 'Positions' }).click();
  const speed = page.getByRole('textbox', { name: 'Green speed' });
  await speed.fill('quick');
  await speed.press('Enter');
  await page.getByRole('alert').waitFor();
  expect(await speed.evaluate((field) => field === document.activeElement)).toBe(true);
  await page.getByRole('button', { name: 'Make it like' }).press('Enter');
  await page.keyboard.press('Enter');
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(await inHand()).toBe('Make it like');
  await page.getByRole('button', { name: 'Pin a ball' }).press('Enter');
  await page.getByRole('button', { name: 'Cancel' }).press('Enter');
  expect(await inHand()).toBe('Pin a ball');
  await page.getByRole('button', { name: 'Take it away' }).press('Enter');
  await page.getByRole('button', { name: 'Undo: took ball 1 away' }).waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).not.toBe('BODY');
  await screen.undo().click();
  await screen.undo().click();

  await page.getByRole('tab', { name: 'Plan' }).click();
  await screen.ball('1').click();
  await screen.firm();
  await page.getByRole('button', { name: 'Try changes' }).press('Enter');
  await page.getByRole('button', { name: 'Done' }).press('Enter');
  expect(await inHand()).toBe('Try changes');
  // As soon as there is a first answer, and before the firm one.
  await page.evaluate(() => {
    new MutationObserver((_, observer) => {
      if (document.querySelector('.status-bar')?.textContent.includes('Sharpening') !== true) return;
      observer.disconnect();
      const cancel = document.querySelector<HTMLElement>('.status-bar button');
      cancel?.focus();
      cancel?.click();
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  await screen.ball('4').click();
  await expect.poll(inHand).toBe('Go on');
  expect(await page.locator('.standing').innerText()).toContain(
    'each tried less often than for a firm answer',
  );
  await page.keyboard.press('Enter');
  await screen.firm();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Ball 4/);
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
