import { rmSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect } from 'vitest';
import { AppInPage } from './app-in-page.ts';

/** The list of flights in the page that is shown, and what is done with it. */
class FlightsPage {
  readonly app: AppInPage;

  constructor(app: AppInPage) {
    this.app = app;
  }

  get page(): Page {
    return this.app.page;
  }

  readonly press = (name: string | RegExp) => this.page.getByRole('button', { name, exact: true }).click();
  readonly rows = () => this.page.getByRole('table', { name: 'Approaches' }).getByRole('row');
  readonly row = (text: string | RegExp) => this.rows().filter({ hasText: text });
  /** How many there are, or are marked. */
  readonly shown = () => this.page.locator('.give-to [role=status]').textContent();
}

/** What a value becomes: the machine that tests may be doing something else as well. */
export const soon = <T>(value: () => T) => expect.poll(value, { timeout: 20_000 });

/**
 * One app for all tests of a file, each going on with what the one before has left, as a school does. `prepare` fills
 * the folder, which goes when they have ended.
 */
export function flightsOfOneApp(folder: string, userFolder: string, prepare: () => void): FlightsPage {
  const app = new AppInPage(userFolder);
  beforeAll(async () => {
    prepare();
    await app.launch();
    await app.open();
  }, 300_000);
  afterAll(async () => {
    await app.stop();
    await app.browser.close();
    rmSync(folder, { recursive: true, force: true });
  });
  beforeEach(() => {
    app.complaints.length = 0;
  });
  return new FlightsPage(app);
}
