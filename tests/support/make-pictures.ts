import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { launch } from '../e2e/browser.ts';
import { serveAppIn } from '../e2e/served-app.ts';
import { writeCourse } from './library/course.ts';
import { optionsOf } from './samples/sample-options.ts';

/**
 * The pictures of the README, of invented flights: `npm run pictures`, from the project's folder. A picture is as large
 * as it is said to be here, whatever screen there is.
 */
const MOST_BYTES = 200_000;
/** Of a page that a command writes. */
const MOST_TEXT_BYTES = 10_000_000;
const PICTURES = 'docs';

const folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
const browser = await launch();
try {
  mkdirSync(PICTURES, { recursive: true });
  await picture('went-around.csv', 'sheet.png', { width: 1040, height: 900, only: 'svg.sheet' });
  await picture('first-approach.csv', 'hand-over.png', { width: 860, height: 980, only: null });
  await progressPicture('progress.png', { width: 1180, height: 900 });
  await recordsPicture('records.png', { width: 1180, height: 900 });
  await briefPicture('brief.png', { width: 700, height: 900, only: '.briefing' });
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}

interface Size {
  readonly width: number;
  readonly height: number;
  /** What of the page is shown; null is what a screen of that size shows of it. */
  readonly only: string | null;
}

/** A student's page in the app, of a course that is flown for it. */
async function progressPicture(name: string, viewport: { width: number; height: number }): Promise<void> {
  const course = join(folder, 'course');
  writeCourse(course, ['Rowan Teal'], 10);
  const library = join(folder, 'user', 'library');
  const flown = ['--target-airspeed', '90', '--conditions', 'simulated', '--runway', 'seen'];
  const whose = ['--student', 'Rowan Teal', '--facility', 'samples/petrelholm-ils-07.json'];
  const words = ['dist/halfdot.js', 'import', course, ...whose, ...flown, '--library', library];
  execFileSync(process.execPath, words, { stdio: 'ignore' });
  const app = await serveAppIn(join(folder, 'user'));
  const context = await browser.newContext({ viewport, deviceScaleFactor: 1, colorScheme: 'light' });
  const page = await context.newPage();
  await page.goto(app.address);
  await page.getByLabel('Open a student').selectOption('Rowan Teal');
  await page.locator('.one-sheet svg.sheet').waitFor();
  await shot(page, name);
  await context.close();
  await app.stop();
}

/** A facility out of official records, in the app. */
async function recordsPicture(name: string, viewport: { width: number; height: number }): Promise<void> {
  const app = await serveAppIn(join(folder, 'records'));
  const context = await browser.newContext({ viewport, deviceScaleFactor: 1, colorScheme: 'light' });
  const page = await context.newPage();
  const press = (button: string) => page.getByRole('button', { name: button, exact: true }).click();
  await page.goto(app.address);
  await press('Facilities');
  await press('From official records…');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Choose the file…')]);
  await chooser.setFiles('samples/records.txt');
  await page.getByLabel('Airport, runway or ident').fill('petrel');
  await press('XPEH ILS 07');
  await page.locator('.draft-values').waitFor();
  await shot(page, name);
  await context.close();
  await app.stop();
}

async function picture(sample: string, name: string, size: Size): Promise<void> {
  const words = ['--facility', 'samples/petrelholm-ils-07.json', ...optionsOf(sample)];
  await pagePicture(['debrief', join('samples', sample), ...words], name, size);
}

/** A briefing sheet. */
async function briefPicture(name: string, size: Size): Promise<void> {
  const flight = ['--groundspeed', '85', '--airspeed', '95', '--wind', '080/12', '--temperature', '-12'];
  const decision = ['--decision-altitude', '240', '--decision-altitude-again', '240'];
  const entered = ['--entered-by', 'Hazel Wren', '--entered-on', '2026-03-01'];
  const lesson = ['--objective', 'Both needles within half scale from the fix to decision altitude.'];
  const facility = ['--facility', 'samples/petrelholm-ils-07.json'];
  await pagePicture(['brief', ...facility, ...flight, ...decision, ...entered, ...lesson], name, size);
}

/** The page that a command writes. */
async function pagePicture(words: string[], name: string, { width, height, only }: Size): Promise<void> {
  const file = join(folder, `${name}.html`);
  const text = execFileSync(process.execPath, ['dist/halfdot.js', ...words, '--format', 'html'], {
    stdio: ['ignore', 'pipe', 'ignore'],
    maxBuffer: MOST_TEXT_BYTES,
  });
  writeFileSync(file, text);
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: 1,
    colorScheme: 'light',
  });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  await shot(only === null ? page : page.locator(only), name);
  await context.close();
}

async function shot(what: Page | Locator, name: string): Promise<void> {
  const path = join(PICTURES, name);
  await what.screenshot({ path });
  const { size } = statSync(path);
  if (size > MOST_BYTES) throw new Error(`${path} has ${size} bytes, and may have ${MOST_BYTES}`);
}
