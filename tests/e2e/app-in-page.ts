import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach } from 'vitest';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import { writeAtomically } from '../../electron/files/write-atomically.ts';
import { launch } from './browser.ts';
import { serveAppIn, type ServedApp } from './served-app.ts';

/** The app in a real Chromium, at the size of a small laptop. */
export class AppInPage {
  readonly userFolder: string;
  browser!: Browser;
  served!: ServedApp;
  page!: Page;
  /** Everything that went wrong in the page, and everything that it asked for. */
  complaints: string[] = [];
  requests: string[] = [];
  /** One for all pages: it holds their files compiled, and they themselves keep nothing in it. */
  #context!: BrowserContext;

  constructor(userFolder: string) {
    this.userFolder = userFolder;
  }

  /** The browser, and a process of the app. */
  async launch(): Promise<void> {
    this.browser = await launch();
    this.#context = await this.browser.newContext({ viewport: { width: 1280, height: 800 } });
    this.served = await serveAppIn(this.userFolder);
  }

  /** A process of the app, which knows nothing but what is in the user's folder, and a page that shows it. */
  async start(): Promise<Page> {
    this.served = await serveAppIn(this.userFolder);
    return this.open();
  }

  /** A page of its own, its samples there to be pressed. */
  async open(): Promise<Page> {
    this.page = await this.#context.newPage();
    this.complaints = complaintsOf(this.page);
    this.requests = [];
    const { requests } = this;
    this.page.on('request', (request) => requests.push(request.url()));
    await showApp(this.page, this.served);
    return this.page;
  }

  /** A page that finds nothing of what others have left: their statements, facilities, standards, copies of logs. */
  async openAfresh(): Promise<Page> {
    await this.#closePages();
    forgetAll(this.userFolder);
    return this.open();
  }

  async stop(): Promise<void> {
    await this.#closePages();
    await this.served.stop();
  }

  async #closePages(): Promise<void> {
    await Promise.all(this.#context.pages().map((page) => page.close()));
  }
}

/** The app for all tests of a file, each with a page and a user of its own; browser and process are one for all. */
export function appForEachTest(): AppInPage {
  const app = new AppInPage(mkdtempSync(join(tmpdir(), 'halfdot-user-')));
  beforeAll(() => app.launch(), 300_000);
  beforeEach(async () => {
    await app.openAfresh();
  }, 120_000);
  afterAll(async () => {
    await app.stop();
    await app.browser.close();
    rmSync(app.userFolder, { recursive: true, force: true });
  }, 60_000);
  return app;
}

/** Empties a user's folder under a running app, which takes notes that another process wrote for the user's. */
function forgetAll(userFolder: string): void {
  const notes = writeAtomically(join(userFolder, 'notes.json'), JSON.stringify(NO_NOTES));
  if (!notes.ok) throw new Error(notes.refusal.message);
  for (const name of readdirSync(userFolder))
    if (name !== 'notes.json') rmSync(join(userFolder, name), { recursive: true });
}

/** Shows an app in a page, its samples there to be pressed. */
export async function showApp(page: Page, { address }: ServedApp): Promise<void> {
  await page.goto(address);
  const sample = page.getByRole('button', { name: /Turned late/ });
  await sample.first().waitFor();
}

/** What goes wrong in a page from now on. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return complaints;
}

/**
 * What axe finds wrong in a page as it stands, or in a part of it, each with the name of the view. In dark it is asked
 * for contrasts alone: every view is looked at in light as well, and nothing but colours is another there. It runs in
 * the page itself (its "legacy mode"), since there is no frame in it: gathering the answers of frames would open a page
 * more for each look, and take as long again.
 */
export async function violationsIn(page: Page, view: string, part?: string): Promise<string[]> {
  const isDark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  const axe = new AxeBuilder({ page }).setLegacyMode();
  if (isDark) axe.withRules(['color-contrast']);
  const { violations } = await (part ? axe.include(part) : axe).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${view}: ${id} ${html}`));
}
