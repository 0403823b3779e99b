import { afterAll, beforeAll, expect } from 'vitest';
import { openSwale, type OpenSwale } from './openSwale.ts';
import { PlanScreen } from './planScreen.ts';

interface SharedWindow {
  readonly swale: OpenSwale;
  readonly screen: PlanScreen;
}

/**
 * One window for all scenarios of a file: each is to leave the atlas as it found it. The function returned shows the plan
 * of ball 1 to flag A, firm, as every scenario begins, and holds those before to a clean console.
 */
export function sharedWindow(): () => Promise<SharedWindow> {
  let swale: OpenSwale;
  beforeAll(async () => {
    swale = await openSwale();
  });
  afterAll(async () => {
    await swale.close();
    expect(swale.problems).toEqual([]);
  });
  return async () => {
    const { page, problems } = swale;
    expect(problems).toEqual([]);
    const screen = new PlanScreen(page);
    await page.getByRole('tab', { name: 'Plan' }).click();
    await screen.ball('1').click();
    await screen.flag('A').click();
    await screen.firm();
    return { swale, screen };
  };
}
