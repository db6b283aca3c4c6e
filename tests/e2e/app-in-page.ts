import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { launch } from './browser.ts';
import { serveApp, type ServedApp } from './served-app.ts';

/** The app in a real Chromium, at the size of a small laptop. */
export class AppInPage {
  browser!: Browser;
  served!: ServedApp;
  page!: Page;
  /** Everything that went wrong in the page, and everything that it asked for. */
  complaints: string[] = [];
  requests: string[] = [];
  readonly #serve: () => Promise<ServedApp>;

  constructor(serve: () => Promise<ServedApp>) {
    this.#serve = serve;
  }

  /** A process of the app, and a page that shows it. */
  async start(options: BrowserContextOptions = {}): Promise<Page> {
    this.served = await this.#serve();
    return this.open(options);
  }

  /** A page of its own, its samples there to be pressed. */
  async open(options: BrowserContextOptions = {}): Promise<Page> {
    const context = await this.browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
    this.page = await context.newPage();
    this.complaints = complaintsOf(this.page);
    this.requests = [];
    const { requests } = this;
    this.page.on('request', (request) => requests.push(request.url()));
    await showApp(this.page, this.served);
    return this.page;
  }

  /** The same app in another page; what was open in the one before is gone. */
  async reopen(options: BrowserContextOptions): Promise<Page> {
    await this.page.context().close();
    return this.open(options);
  }

  async stop(): Promise<void> {
    await this.page.context().close();
    await this.served.stop();
  }
}

/** One for each test of a file, started before it and stopped behind it; the browser is one for all. */
export function appForEachTest(serve: () => Promise<ServedApp> = serveApp): AppInPage {
  const app = new AppInPage(serve);
  beforeAll(async () => {
    app.browser = await launch();
  }, 300_000);
  afterAll(() => app.browser?.close());
  beforeEach(async () => {
    await app.start();
  }, 120_000);
  afterEach(() => app.stop(), 60_000);
  return app;
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
