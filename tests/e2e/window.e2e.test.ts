import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { LoopbackHost } from '../../main/web/loopbackHost.ts';
import { expectAccessible } from './helpers/expectAccessible.ts';
import { openSwale, serveBuilt } from './helpers/openSwale.ts';
import { PlanScreen } from './helpers/planScreen.ts';
import { sharedWindow } from './helpers/sharedWindow.ts';

/** Runs a scenario in a browser of its own with a profile, and holds the window to a clean console. */
async function withProfile(
  profile: string,
  host: LoopbackHost,
  scenario: (screen: PlanScreen) => Promise<void>,
): Promise<void> {
  const swale = await openSwale({ host, profile });
  try {
    const screen = new PlanScreen(swale.page);
    await scenario(screen);
    expect(swale.problems).toEqual([]);
  } finally {
    await swale.close();
  }
}

const start = sharedWindow();

describe('the Plan workspace', () => {
  it('shows a planned green at first start', async () => {
    const { screen } = await start();
    expect(await screen.page.title()).toBe('Ossel Down – Swale');
    expect(await screen.page.locator('.plate [data-part=ground]').count()).toBe(1);
    expect(await screen.page.locator('.plate [data-part=relief] path').count()).toBeGreaterThan(5);
    expect(await screen.page.locator('.plate [data-part=ball-mark]').count()).toBe(8);
    expect(await screen.page.locator('.plate [data-part=flag-mark]').count()).toBe(4);
    expect(await screen.page.locator('.ledger tbody tr').count()).toBeGreaterThanOrEqual(5);
    expect(await screen.page.locator('.why p').count()).toBeGreaterThanOrEqual(2);
    expect(await screen.drawn()).not.toBeNull();
    expect(await screen.page.locator('.section-drawing svg').count()).toBe(1);
  });

  it('follows a ball and a flag chosen with the mouse', async () => {
    const { screen } = await start();
    const before = await screen.line();
    await screen.ball('4').click();
    await screen.firm();
    const fourth = await screen.line();
    expect(fourth).toMatch(/^Ball 4\b.*to flag A/);
    expect(fourth).not.toBe(before);
    await screen.flag('C').click();
    await screen.firm();
    expect(await screen.line()).toMatch(/^Ball 4\b.*to flag C/);
  });

  it('is worked with the keyboard alone', async () => {
    const { screen } = await start();
    const { keyboard } = screen.page;
    const focused = (): Promise<string> =>
      screen.page.evaluate(
        () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
      );
    await screen.page.getByRole('tab', { name: 'Plan' }).focus();
    for (let i = 0; i < 20 && !(await focused()).startsWith('Ball 1'); i += 1) await keyboard.press('Tab');
    expect(await focused()).toMatch(/^Ball 1\b/);
    await keyboard.press('ArrowRight');
    await expect.poll(focused, { timeout: 5_000 }).toMatch(/^Ball 2\b/);
    await keyboard.press('ArrowDown');
    await expect.poll(focused, { timeout: 5_000 }).toMatch(/^Flag B\b/);
    await screen.firm();
    expect(await screen.line()).toMatch(/^Ball 2\b.*to flag B/);

    // On through the plate to the ledger, and down one row.
    const inLedger = (): Promise<boolean> =>
      screen.page.evaluate(() => document.activeElement?.matches('.ledger input') ?? false);
    for (let i = 0; i < 40 && !(await inLedger()); i += 1) await keyboard.press('Tab');
    expect(await inLedger()).toBe(true);
    const first = await screen.drawn();
    await keyboard.press('ArrowDown');
    await expect.poll(() => screen.drawn()).not.toBe(first);
    const inActions = (): Promise<boolean> =>
      screen.page.evaluate(() => document.activeElement?.closest('.actions') !== null);
    for (let i = 0; i < 10 && !(await inActions()); i += 1) await keyboard.press('Tab');
    await keyboard.press('Enter');
    await expect.poll(() => screen.page.locator('.picked').count()).toBe(1);
    await keyboard.press('Control+z');
    await expect.poll(() => screen.page.locator('.picked').count()).toBe(0);
  });

  it('shows the path and numbers of another option', async () => {
    const { screen } = await start();
    await screen.ball('2').click();
    await screen.firm();
    const facts = await screen.facts();
    const row = screen.page.locator('.ledger tbody tr:not(.chosen)').nth(1);
    const id = await row.getAttribute('data-option');
    await row.click();
    await expect.poll(() => screen.drawn()).toBe(id);
    expect(await screen.facts()).not.toBe(facts);
    expect(await screen.page.locator('.why h2').innerText()).toMatch(/^Why not this one: against /);
  });

  it('lets a ball be dragged: the plan follows, and one undo puts it back', async () => {
    const { screen } = await start();
    const before = await screen.line();
    const ball = screen.handle('Ball 1');
    const box = await ball.boundingBox();
    if (box === null) throw new Error('ball 1 is not on the plate');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await screen.page.mouse.move(x, y);
    await screen.page.mouse.down();
    await screen.page.mouse.move(x + 30, y + 10, { steps: 6 });
    await expect.poll(() => screen.line(), { timeout: 20_000 }).not.toBe(before);
    await screen.page.mouse.move(x + 60, y + 20, { steps: 6 });
    await screen.page.mouse.up();
    await screen.firm();
    const moved = await screen.line();
    expect(moved).not.toBe(before);
    expect(await screen.undo().getAttribute('aria-label')).toBe('Undo: moved ball 1');
    await screen.undo().click();
    await screen.firm();
    expect(await screen.line()).toBe(before);
    expect(await screen.undo().getAttribute('aria-label')).toBe('Nothing to undo');
  });

  it('moves a ball by arrow keys as one step', async () => {
    const { screen } = await start();
    const before = await screen.line();
    await screen.handle('Ball 1').focus();
    for (let i = 0; i < 3; i += 1) await screen.page.keyboard.press('Shift+ArrowDown');
    await expect
      .poll(() => screen.undo().getAttribute('aria-label'), { timeout: 10_000 })
      .toBe('Undo: moved ball 1');
    await screen.firm();
    expect(await screen.line()).not.toBe(before);
    await screen.page.keyboard.press('Control+z');
    await screen.firm();
    expect(await screen.line()).toBe(before);
  });

  it('is placed on the earth from the plan, and taken back, with the plate drawn anew', async () => {
    const { screen } = await start();
    const { page } = screen;
    const handles = page.locator('.plate .handle');
    await page.locator('.top-left .menu > button').click();
    await page.getByRole('menuitem', { name: 'Place on the earth', exact: true }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Latitude').fill('53.9');
    await dialog.getByLabel('Longitude').fill('-3.6');
    await dialog.getByRole('button', { name: 'Place it', exact: true }).click();
    await page.getByRole('button', { name: 'Undo: placed the atlas on the earth' }).waitFor();
    await expect.poll(() => handles.count()).toBe(12);
    // What opened the dialog has the focus again.
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-haspopup'))).toBe('menu');
    await page.keyboard.press('Control+z');
    await expect.poll(() => handles.count()).toBe(12);
    expect(await page.getByRole('button', { name: /^Redo: placed the atlas/ }).count()).toBe(1);
  });
});

describe.each([
  { width: 1440, height: 900, colorScheme: 'light' },
  { width: 1024, height: 700, colorScheme: 'dark' },
] as const)('the window at $width x $height, $colorScheme', ({ width, height, colorScheme }) => {
  it('has no part that runs over, and nothing an accessibility check finds', async () => {
    const { screen } = await start();
    await screen.page.setViewportSize({ width, height });
    await screen.page.emulateMedia({ colorScheme });
    const usual = await screen.page.evaluate(() => getComputedStyle(document.documentElement).fontSize);
    for (const large of [false, true]) {
      if (large) {
        await screen.page.getByRole('button', { name: 'Large type' }).click();
        await expect
          .poll(() => screen.page.evaluate(() => getComputedStyle(document.documentElement).fontSize))
          .not.toBe(usual);
      }
      // The window takes a moment to lay itself out for another width or type.
      const over = (): Promise<unknown> =>
        screen.page.evaluate(() => {
          const root = document.documentElement;
          const wide = [
            '.top-bar',
            '.strip',
            '.plan',
            '.plan-left',
            '.plan-right',
            '.ledger',
            '.facts',
            '.facts-more',
          ]
            .flatMap((selector) => [...document.querySelectorAll(selector)])
            .filter(
              (part) =>
                part.scrollWidth > part.clientWidth + 1 ||
                part.getBoundingClientRect().right > innerWidth + 1,
            )
            .map((part) => part.className);
          return { wide, page: [root.scrollWidth > innerWidth, root.scrollHeight > innerHeight] };
        });
      await expect.poll(over, { timeout: 10_000 }).toEqual({ wide: [], page: [false, false] });
      await expectAccessible(screen.page);
      // Every tool of the survey stands there by its name.
      await screen.page.getByRole('tab', { name: 'Survey' }).click();
      const last = screen.page.locator('.tool-name', { hasText: 'Measure' });
      await last.waitFor();
      const unseen = (): Promise<readonly (string | null)[]> =>
        screen.page.evaluate(() => {
          const list = document.querySelector('.survey-tools')?.getBoundingClientRect();
          return [...document.querySelectorAll('.tool-name')]
            .filter((name) => {
              const { width: wide, right, bottom } = name.getBoundingClientRect();
              return list === undefined || wide < 20 || right > list.right || bottom > list.bottom;
            })
            .map(({ textContent }) => textContent);
        });
      await expect.poll(unseen, { timeout: 10_000 }).toEqual([]);
      await screen.page.getByRole('tab', { name: 'Plan' }).click();
    }
    await screen.page.getByRole('button', { name: 'Large type' }).click();
  });
});

it('lets only one window change an atlas', async () => {
  const { screen, swale } = await start();
  const { context, url } = swale;
  const page = await context.newPage();
  await page.goto(url);
  const second = new PlanScreen(page);
  await second.firm();
  expect(await page.locator('.notice-bar').innerText()).toContain('open in another window');
  expect(await page.getByRole('button', { name: 'Put in playbook' }).count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Try changes' }).count()).toBe(1);
  const line = await second.line();
  await second.handle('Ball 1').focus();
  await page.keyboard.press('Shift+ArrowDown');
  await second.ball('2').click();
  await second.ball('1').click();
  await second.firm();
  expect(await second.line()).toBe(line);
  await screen.page.close();
  await page.reload();
  await second.firm();
  expect(await page.locator('.notice-bar').count()).toBe(0);
});

it('comes back after a reload as it was, with its undo', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'swale-profile-'));
  const host = await serveBuilt();
  const seen = async (screen: PlanScreen): Promise<readonly string[]> => [
    await screen.line(),
    await screen.headline(),
    await screen.facts(),
  ];
  let left: readonly string[] = [];
  try {
    await withProfile(profile, host, async (screen) => {
      await screen.chooseHole('Long Withy');
      await screen.ball('5').click();
      await screen.flag('D').click();
      await screen.handle('Ball 5').focus();
      await screen.page.keyboard.press('Shift+ArrowUp');
      await expect
        .poll(() => screen.undo().getAttribute('aria-label'), { timeout: 10_000 })
        .toBe('Undo: moved ball 5');
      await screen.page.getByRole('button', { name: 'Dark theme' }).click();
      await screen.firm();
      left = await seen(screen);
      await expect
        .poll(() => screen.page.locator('.status-bar').textContent())
        .toContain('not yet in ossel-down.geojson');
    });
    // The browser itself was closed.
    await withProfile(profile, host, async (screen) => {
      await screen.firm();
      expect(await seen(screen)).toEqual(left);
      expect(await screen.page.evaluate(() => document.documentElement.dataset['theme'])).toBe('dark');
      await screen.undo().click();
      await expect.poll(() => screen.undo().getAttribute('aria-label')).toBe('Nothing to undo');
      await expect
        .poll(() => screen.page.locator('.status-bar').textContent())
        .toMatch(/^(Saved|Changes kept)/);
      await screen.page.reload();
      await screen.page.getByRole('button', { name: /^Redo: moved ball 5/ }).waitFor();
      expect(await screen.undo().getAttribute('aria-label')).toBe('Nothing to undo');
      await expect.poll(() => screen.line()).toMatch(/^Ball 5\b.*to flag D/);
    });
  } finally {
    await host.close();
    rmSync(profile, { recursive: true, force: true });
  }
});
