import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { gateTo } from '../../electron/bridge/gate.ts';
import { GivenFiles } from '../../electron/services/given-files.ts';
import { LibraryHost } from '../../electron/services/library-host.ts';
import { Samples } from '../../electron/services/samples.ts';
import { servicesOf } from '../../electron/services/services.ts';
import { CALLS_CHANNEL } from '../../electron/window/page-bridge.ts';
import { itemOf, makeFolder, removeFolders, start, type Started } from '../electron/window/started-window.ts';
import { complaintsOf } from './app-in-page.ts';
import { launch } from './browser.ts';

/**
 * The window's program and its page without the runtime between them: a real Chromium shows what the program serves
 * for its scheme, at an https address in its place, and what the preload file would put into the page is put there.
 */
const ADDRESS = 'https://app.halfdot.invalid/';

let browser: Browser;
let page: Page;
let started: Started;
let complaints: string[];
const userFolder = makeFolder();

beforeAll(async () => {
  browser = await launch();
  const given = new GivenFiles();
  const services = servicesOf('window', {
    samples: new Samples('samples'),
    given,
    userFolder,
    library: new LibraryHost(join(userFolder, 'library')),
  });
  started = await start({
    gate: gateTo(services),
    given,
    page: resolve('dist/page'),
    words: [resolve('samples/first-approach.csv')],
  });
  const { electron, window } = started;
  const context = await browser.newContext();
  await context.route('**/*', async (route) => {
    const { pathname } = new URL(route.request().url());
    const answer = electron.serve!(new Request(`halfdot://app${pathname}`));
    await route.fulfill({
      status: answer.status,
      headers: Object.fromEntries(answer.headers),
      body: Buffer.from(await answer.arrayBuffer()),
    });
  });
  page = await context.newPage();
  complaints = complaintsOf(page);
  await page.exposeFunction('callHost', (name: unknown, value: unknown) =>
    electron.channels[CALLS_CHANNEL]!(
      { sender: window.webContents, senderFrame: { url: 'halfdot://app/', parent: null } },
      name,
      value,
    ),
  );
  await page.addInitScript(`
    const call = globalThis.callHost;
    globalThis.listeners = [];
    globalThis.halfdot = { call, onEvent: (listener) => listeners.push(listener) };
  `);
  await page.goto(ADDRESS);
}, 300_000);
afterAll(async () => {
  // What is fetched behind the view may still be on its way.
  await page?.context().unrouteAll({ behavior: 'ignoreErrors' });
  await browser?.close();
  removeFolders();
});

it('opens the log that the window was started with, and those that come later, each once', async () => {
  await page.locator('h1.summary').waitFor();
  started.electron.app.emit('second-instance', {}, [], '/', { files: [resolve('samples/from-above.csv')] });
  const [[, event]] = started.window.webContents.sent as [[string, unknown]];
  // Told twice in one moment, as two starts in a row would.
  await page.evaluate(
    `listeners.forEach((listener) => { listener(${JSON.stringify(event)}); listener(${JSON.stringify(event)}); })`,
  );
  const openLogs = page.getByRole('navigation', { name: 'Open logs' });
  const named = (name: string) => openLogs.getByRole('button', { name, exact: true });
  await named('from-above.csv').waitFor();
  await page.waitForTimeout(500);
  for (const name of ['first-approach.csv', 'from-above.csv'])
    expect([name, await named(name).count()]).toEqual([name, 1]);
  expect(complaints).toEqual([]);
}, 60_000);

it('keeps a copy of what was opened in the window, as over loopback', async () => {
  await expect
    .poll(() => readdirSync(join(userFolder, 'logs')).filter((name) => name.endsWith('.gz')), {
      timeout: 20_000,
    })
    .toHaveLength(2);
}, 60_000);

it("prints the page to hand over where the menu's Print is chosen, and where there is none the page itself", async () => {
  await page.evaluate(
    'globalThis.prints = []; globalThis.print = () => prints.push(document.querySelector(".printed")?.textContent ?? "the page")',
  );
  const choose = async () => {
    itemOf(started, 'File', 'Print…').click!(null as never, undefined, null as never);
    const [, event] = started.window.webContents.sent.at(-1) as [string, unknown];
    await page.evaluate(`listeners.forEach((listener) => listener(${JSON.stringify(event)}))`);
  };
  const prints = () => page.evaluate<string[]>('prints');
  await choose();
  await expect.poll(prints).toHaveLength(1);
  expect((await prints())[0]).toContain('For training debrief only');
  await page.evaluate("dispatchEvent(new Event('afterprint'))");
  await page.getByRole('button', { name: 'Standards' }).click();
  await choose();
  await expect.poll(prints).toHaveLength(2);
  expect((await prints())[1]).toBe('the page');
}, 60_000);
