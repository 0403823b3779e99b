import AxeBuilder from '@axe-core/playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { LoopbackHost } from '../../main/web/loopbackHost.ts';
import { openSwale, serveBuilt } from './helpers/openSwale.ts';
import { PlanScreen } from './helpers/planScreen.ts';

let host: LoopbackHost;
beforeAll(async () => {
  host = await serveBuilt();
});
afterAll(async () => {
  await host.close();
});

it('Positions: pin a ball, name it, set its lie, and find it in Plan; undo takes it all back', async () => {
  const swale = await openSwale({ host });
  try {
    const { page } = swale;
    const screen = new PlanScreen(page);
    await screen.firm();
    await page.getByRole('tab', { name: 'Positions' }).click();
    const rows = page.locator('.positions-balls tbody tr');
    expect(await rows.count()).toBe(8);
    await page.getByRole('button', { name: 'Pin a ball' }).click();
    const plate = await page.locator('.plate-map').boundingBox();
    if (plate === null) throw new Error('no plate');
    await page.mouse.click(plate.x + plate.width * 0.12, plate.y + plate.height * 0.3);
    await expect.poll(() => rows.count()).toBe(9);
    await page.getByLabel('Name', { exact: true }).fill('by the mower shed');
    await page.keyboard.press('Enter');
    await page.getByRole('combobox', { name: /^Lie/ }).selectOption('sittingDown');
    await expect.poll(() => rows.nth(8).innerText()).toMatch(/by the mower shed[\s\S]*sitting down/);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);

    await page.getByRole('tab', { name: 'Plan' }).click();
    await screen.firm();
    expect(await screen.line()).toMatch(/^Ball 9, by the mower shed.*sitting down/);
    for (const step of ['set the lie of ball 9', 'named ball 9', 'pinned ball 9']) {
      expect(await screen.undo().getAttribute('aria-label')).toBe(`Undo: ${step}`);
      await screen.undo().click();
    }
    await expect.poll(() => screen.ball('9').count()).toBe(0);
    expect(swale.problems).toEqual([]);
  } finally {
    await swale.close();
  }
});

it('Positions: says what is wrong with a green speed it cannot read, and plans with one it can', async () => {
  const swale = await openSwale({ host });
  try {
    const { page } = swale;
    const screen = new PlanScreen(page);
    await screen.firm();
    const before = await screen.facts();
    await page.getByRole('tab', { name: 'Positions' }).click();
    const speed = page.getByLabel('Green speed');
    await speed.fill('quick');
    await speed.press('Enter');
    await expect.poll(() => page.getByRole('alert').innerText()).toContain('quick');
    await speed.fill('13 ft');
    await speed.press('Enter');
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    await page.getByRole('tab', { name: 'Plan' }).click();
    await screen.firm();
    expect(await screen.facts()).not.toBe(before);
    expect(await page.locator('.strip-facts').innerText()).toContain('13 ft');
  } finally {
    await swale.close();
  }
});

it('Playbook: shows and prints the pages of a hole with the person’s own choice', async () => {
  const swale = await openSwale({ host });
  try {
    const { page } = swale;
    await swale.context.addInitScript(() => {
      window.print = () => {
        window.top?.postMessage({ printed: document.title, text: document.body.innerText }, '*');
        window.dispatchEvent(new Event('afterprint'));
      };
    });
    await page.reload();
    const screen = new PlanScreen(page);
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
    const { violations } = await new AxeBuilder({ page }).exclude('iframe').analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
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
  } finally {
    await swale.close();
  }
});
