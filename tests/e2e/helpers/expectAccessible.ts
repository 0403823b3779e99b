import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * Nothing axe finds, in the whole window or in one part of it: drawings are large, and looking through them again is slow.
 * What it finds in order is counted and not described, which on a drawing takes longer than the search itself; and it runs in
 * the window alone, without a page of its own to put frames together. Frames hold pages that are looked at as pages.
 */
export async function expectAccessible(page: Page, part?: string): Promise<void> {
  const axe = new AxeBuilder({ page }).exclude('iframe').setLegacyMode(true);
  if (part !== undefined) axe.include(part);
  const { violations } = await axe.options({ resultTypes: ['violations'] }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
}
