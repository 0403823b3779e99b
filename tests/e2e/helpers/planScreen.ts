import { expect } from 'vitest';
import type { Locator, Page } from 'playwright-core';

/** The Plan workspace as a person finds things on it: by what they are called. */
export class PlanScreen {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Waits until the answer shown is firm. */
  async firm(): Promise<void> {
    await expect
      .poll(() => this.page.locator('.status-bar').textContent(), { timeout: 60_000, interval: 50 })
      .toMatch(/Plan from [\d,]+ simulated shots/);
  }

  async chooseHole(name: string): Promise<void> {
    await this.page
      .getByRole('button', { name: /Hole|Station/ })
      .first()
      .click();
    await this.page.getByRole('menuitemradio', { name }).click();
  }

  async openHole(name: string): Promise<void> {
    await this.chooseHole(name);
    await this.firm();
  }

  ball(label: string): Locator {
    return this.page.getByRole('radio', { name: new RegExp(`^Ball ${label}\\b`) });
  }

  flag(label: string): Locator {
    return this.page.getByRole('radio', { name: new RegExp(`^Flag ${label}\\b`) });
  }

  /** The ball or flag on the plate, to take hold of. */
  handle(name: string): Locator {
    return this.page.locator('.plate').getByRole('button', { name: new RegExp(`^${name}\\b`) });
  }

  headline(): Promise<string> {
    return this.page.getByRole('heading', { level: 1 }).innerText();
  }

  /** Ball, flag and distance, as the line above the headline tells them. */
  line(): Promise<string> {
    return this.page.locator('.answer-line').innerText();
  }

  facts(): Promise<string> {
    return this.page.locator('.facts').innerText();
  }

  /** The option whose path is drawn on the plate. */
  drawn(): Promise<string | null> {
    return this.page.locator('.plate [data-part=shot]').getAttribute('data-option');
  }

  undo(): Locator {
    return this.page.getByRole('button', { name: /^(Undo: |Nothing to undo)/ });
  }
}
