import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page, Response } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../core/debrief/cautions.ts';
import { complaintsOf, violationsIn } from './app-in-page.ts';
import { launch } from './browser.ts';
import { bare, pdfPages } from './pdf-pages.ts';
import { serveApp, type ServedApp } from './served-app.ts';

let browser: Browser;
let served: ServedApp;
let page: Page;
let folder: string;
let complaints: string[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
  browser = await launch();
  served = await serveApp();
  page = await browser.newPage({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  complaints = complaintsOf(page);
  // Without a printer: what a press of the button would print is told, and then it is printed.
  await page.addInitScript(() => {
    globalThis.print = () => {
      const printed = document.querySelector('.printed');
      Object.assign(globalThis, {
        printedWords: printed?.textContent,
        sheets: printed?.querySelectorAll('svg').length,
      });
    };
  });
  await page.goto(served.address);
  await page
    .getByRole('button', { name: /Turned late/ })
    .first()
    .click();
  await page.locator('h1.summary').waitFor();
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await served?.stop();
  rmSync(folder, { recursive: true });
}, 60_000);

/** Presses a button of the app, and keeps what is saved. */
async function saved(button: string): Promise<{ name: string; path: string; text: string }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const download = await coming;
  const name = download.suggestedFilename();
  const path = join(folder, name);
  await download.saveAs(path);
  return { name, path, text: readFileSync(path, 'utf8') };
}

/** What the command writes of a sample. */
function written(file: string, format: string, ...more: string[]): string {
  const path = join(folder, `${file}.${format}`);
  const words = ['debrief', `samples/${file}`, '--format', format, '--out', path, ...more];
  execFileSync(process.execPath, ['dist/halfdot.js', ...words], { stdio: 'ignore' });
  return path;
}
const AT_PETRELHOLM = ['--facility', 'samples/petrelholm-ils-07.json'];
const FIRST = [...AT_PETRELHOLM, '--target-airspeed', '90', '--runway', 'seen', '--conditions', 'simulated'];

async function opened(path: string, colorScheme: 'light' | 'dark' = 'light'): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    colorScheme,
    offline: true,
  });
  const own = await context.newPage();
  await own.goto(`file://${path}`);
  return own;
}

describe('what the app saves', () => {
  it('is the page that the command writes, which opens without a network and shows the sheet', async () => {
    const { name, path, text } = await saved('Save the page');
    expect(name).toBe('first-approach.debrief.html');
    expect(text).toBe(readFileSync(written('first-approach.csv', 'html', ...FIRST), 'utf8'));
    const own = await opened(path);
    const requests: string[] = [];
    own.on('request', (request) => requests.push(request.url()));
    await own.reload();
    expect(requests).toEqual([`file://${path}`]);
    const box = await own.getByRole('img', { name: /profile, plan and strips/ }).boundingBox();
    expect(box!.width).toBeGreaterThan(800);
    expect(await own.locator('svg .flown').count()).toBeGreaterThan(5);
    // Nothing had to be put right: what was parsed is what was written.
    const parsed = (html: string) => html.replaceAll(/\s+|&#x27;|'|&quot;|"/g, '').toLowerCase();
    const shown = await own.evaluate(() => document.documentElement.outerHTML);
    const selfClosed = parsed(text.replace(/^<!doctype html>\n/, ''))
      .replaceAll(/<(meta|line|rect|path|polygon|polyline)([^>]*)\/>/g, (_, tag, rest) =>
        tag === 'meta' ? `<meta${rest}>` : `<${tag}${rest}></${tag}>`,
      )
      .replaceAll('openopen', 'open');
    expect(parsed(shown).replaceAll('detailsopen=', 'detailsopen')).toBe(
      selfClosed.replaceAll('detailsopen=', 'detailsopen'),
    );
    await own.context().close();
  });

  it('is the fixes of the approach, in the columns of the command', async () => {
    const { name, text } = await saved('Save deviations as CSV');
    expect(name).toBe('first-approach.approach-1.deviations.csv');
    const whole = execFileSync(
      process.execPath,
      ['dist/halfdot.js', 'deviations', 'samples/first-approach.csv', ...AT_PETRELHOLM],
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
    );
    const [header, ...rows] = text.trimEnd().split('\n');
    expect(whole.split('\n')[0]).toBe(header);
    expect(rows.length).toBeGreaterThan(300);
    const begin = whole.split('\n').findIndex((row) => row.startsWith(rows[0]!.slice(0, 20)));
    const due = whole.split('\n').slice(begin, begin + rows.length);
    for (const [i, row] of rows.entries()) {
      const [time, ...values] = row.split(',');
      const [dueTime, ...dueValues] = due[i]!.split(',');
      expect(time).toBe(dueTime);
      // A browser's tangent is another than Node's in its last digits.
      for (const [k, value] of values.entries())
        expect(Math.abs(Number(value) - Number(dueValues[k]))).toBeLessThan(1e-6);
    }
    expect([rows[0]!.slice(0, 20), rows.at(-1)!.slice(0, 16)]).toEqual([
      '2026-03-14T15:05:01Z',
      '2026-03-14T15:11',
    ]);
  });

  it('is the map that the command writes', async () => {
    const { name, text } = await saved('Save as GeoJSON');
    expect(name).toBe('first-approach.debrief.geojson');
    expect(text).toBe(readFileSync(written('first-approach.csv', 'geojson', ...FIRST), 'utf8'));
  });

  it('is printed as the page to hand over, and the app is there again afterwards', async () => {
    await page.getByRole('button', { name: 'Print' }).click();
    await page.waitForFunction(() => 'printedWords' in globalThis);
    const { words, sheets } = await page.evaluate(() => ({
      words: (globalThis as unknown as { printedWords: string }).printedWords,
      sheets: (globalThis as unknown as { sheets: number }).sheets,
    }));
    expect(words).toContain('Stable at 1,000 ft and 500 ft');
    expect(sheets).toBe(1);
    const pages = pdfPages(await page.pdf({ format: 'A4' }));
    expect(pages[0]).toContain('Student');
    expect(pages.join(' ')).not.toContain(bare('Target airspeed on final, kt'));
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.waitForFunction(() => document.querySelector('.printed') === null);
    expect(await page.locator('h1.summary').isVisible()).toBe(true);
    // By the browser's own way the debrief is printed as it stands, without forms and buttons.
    const view = pdfPages(await page.pdf({ format: 'A4' })).join(' ');
    expect(view).toContain(bare('Stable at 1,000 ft and 500 ft'));
    for (const control of ['Target airspeed on final, kt', 'Save the page', 'Open a log'])
      expect(view).not.toContain(bare(control));
    expect(complaints).toEqual([]);
  });
});

describe('the page to hand over', () => {
  it.each(['light', 'dark'] as const)(
    'has nothing that axe finds wrong, in %s',
    async (colorScheme) => {
      const own = await opened(written('went-around.csv', 'html', ...FIRST), colorScheme);
      expect(await violationsIn(own, colorScheme)).toEqual([]);
      await own.context().close();
    },
    60_000,
  );

  it.each(['A4', 'Letter'] as const)(
    'on %s has the sentence and the sheet on the first page, each approach on a new one, and the caution on all',
    async (format) => {
      const own = await opened(written('touch-and-go-then-again.csv', 'html', ...AT_PETRELHOLM), 'dark');
      await own.evaluate(() => document.querySelector('details')!.removeAttribute('open'));
      const pages = pdfPages(await own.pdf({ format }));
      const [first] = pages as [string];
      expect(pages.length).toBeLessThan(11);
      for (const words of [
        'Student',
        'Instructor',
        'both needles within',
        'Profile',
        'Vertical speed',
        'The real needles may have differed',
      ])
        expect(first).toContain(bare(words));
      const second = pages.findIndex((words) => words.includes(bare('Approach 2, 18 April 2026')));
      expect(second).toBeGreaterThan(1);
      // Behind the foot, which comes first in the file.
      expect(pages[second]).toMatch(/^\d+of\d+Fortraining[^]*comefirst\.Approach2,/);
      expect(pages[second]).toContain(bare('Vertical speed'));
      // What was closed is printed all the same.
      expect(pages.slice(0, second).join(' ')).toContain(bare('At each moment and each half mile'));
      for (const [i, words] of pages.entries()) {
        expect(words).toContain(bare(CAUTIONS[0]!));
        expect(words).toContain(`${i + 1}of${pages.length}`);
      }
      await own.context().close();
    },
    60_000,
  );
});

describe('the first view', () => {
  it('is of 150 kB compressed at most, without the worker, and without what only a handed page needs', async () => {
    const context = await browser.newContext();
    const own = await context.newPage();
    const came: Response[] = [];
    own.on('response', (response) => came.push(response));
    await own.goto(served.address);
    await own
      .getByRole('button', { name: /Turned late/ })
      .first()
      .waitFor();
    // The other views are fetched behind it, and may still come while this counts: they are neither waited for nor read.
    const before = [...came];
    const urls = before.map((response) => response.url()).join(' ');
    const entry = await (await own.request.get(served.address)).text();
    const first = before.filter((response) => {
      const { pathname } = new URL(response.url());
      return (
        pathname === '/' ||
        (/\.(?:js|css|svg)$/.test(pathname) && entry.includes(pathname.split('/').at(-1)!))
      );
    });
    const bytes = await Promise.all(first.map(async (response) => gzipSync(await response.body()).length));
    expect(first.length).toBeGreaterThanOrEqual(3);
    expect(urls).toMatch(/worker-/);
    expect(urls).not.toMatch(/hand-over|geojson/);
    expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThan(150_000);
    await context.close();
  });
});
