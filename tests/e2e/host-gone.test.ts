import type { Page } from 'playwright-core';
import { beforeEach, expect, it } from 'vitest';
import { appForEachTest, showApp } from './app-in-page.ts';
import { serveApp } from './served-app.ts';

const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const openSample = async () => {
  await page
    .getByRole('button', { name: /Turned late/ })
    .first()
    .click();
  await page.locator('h1.summary').waitFor();
};

it('a view that cannot be fetched says so, and what is open stays', async () => {
  const context = await app.browser.newContext();
  page = await context.newPage();
  await page.route('**/assets/facilities-view*', (route) => route.abort());
  await showApp(page, app.served);
  await openSample();
  await press('Facilities');
  await page.getByText('A part of the page could not be fetched.').waitFor();
  await press('first-approach.csv');
  await page.locator('h1.summary').waitFor();

  await press('Facilities');
  await page.unroute('**/assets/facilities-view*');
  await press('Load the page anew');
  await page.getByRole('button', { name: /Turned late/ }).waitFor();
  await press('Facilities');
  await page.getByRole('button', { name: 'Petrelholm ILS 07' }).waitFor();
  await context.close();
});

it('a debrief can be saved and printed when the host was ended, and nothing that is open is lost', async () => {
  const served = await serveApp();
  page = await app.browser.newPage();
  await page.addInitScript(
    "globalThis.print = () => { globalThis.printed = document.querySelector('.printed') }",
  );
  const finished: string[] = [];
  page.on('requestfinished', (request) => finished.push(request.url()));
  await showApp(page, served);
  await openSample();
  for (const part of ['hand-over-html', 'print-hand-over', 'standards-view'])
    await expect.poll(() => finished.some((url) => url.includes(part))).toBe(true);
  await served.stop();
  const coming = page.waitForEvent('download');
  await press('Save the page');
  expect((await coming).suggestedFilename()).toBe('first-approach.debrief.html');
  await press('Print');
  await expect.poll(() => page.evaluate('globalThis.printed?.textContent ?? ""')).toContain('Petrelholm');
  await press('Standards');
  await page.getByRole('table').first().waitFor();
  await press('first-approach.csv');
  await page.locator('h1.summary').waitFor();
  await page.close();
});
