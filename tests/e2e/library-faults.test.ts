import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { showApp, violationsIn } from './app-in-page.ts';
import { flightsOfOneApp, soon } from './flights-page.ts';

/** A small library of which each test takes what the one before has left. */
const folder = mkdtempSync(join(tmpdir(), 'halfdot-faults-'));
const userFolder = join(folder, 'user');
const library = join(userFolder, 'library');
let page: Page;

const halfdot = (...words: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['dist/halfdot.js', ...words, '--library', library],
    { encoding: 'utf8' },
  );
  expect(status, stdout + stderr).toBe(0);
};
const bring = (sample: string, ...words: string[]) =>
  halfdot('import', `samples/${sample}`, '--facility', 'samples/petrelholm-ils-07.json', ...words);

const flights = flightsOfOneApp(folder, userFolder, () => {
  mkdirSync(userFolder);
  bring('first-approach.csv', '--student', 'Rowan Teal');
  bring('first-approach.csv', '--student', 'Rowan Teal', '--standard', 'airline-transport');
  bring('overflight.csv', '--student', 'Rowan Teal', '--date', '2026-02-02');
  bring('tidy-landing.csv', '--student', 'Fern Ruff');
});
const { app, press, row, shown } = flights;
beforeAll(async () => {
  page = flights.page;
  await press('Flights');
});

const focused = () => page.evaluate(() => document.activeElement?.textContent);
const student = () => page.getByLabel('Student', { exact: true });

describe('the list of flights', () => {
  it('tells one approach by two standards apart', async () => {
    await row('Rowan Teal').first().waitFor();
    const cells = await row('Rowan Teal').allTextContents();
    expect(cells.filter((text) => text.includes('Instrument rating'))).toHaveLength(1);
    expect(cells.filter((text) => text.includes('Airline transport pilot'))).toHaveLength(1);
  }, 60_000);

  it('opens one debrief at a double click', async () => {
    await row('Fern Ruff').locator('.clipped').dblclick();
    await page.locator('h1.summary').waitFor();
    await soon(() => page.getByRole('button', { name: 'Close tidy-landing.csv' }).count()).toBe(1);
    await press('Close tidy-landing.csv');
    await press('Flights');
  }, 60_000);

  it('says how many of the marked logs it does not show, and how many are given', async () => {
    await press('Mark all of them');
    await soon(shown).toBe('2 logs are marked.');
    await student().selectOption('Fern Ruff');
    await soon(shown).toBe('2 logs are marked, 1 of them not shown here.');
    await press('Give them to…');
    await page.getByRole('button', { name: 'Give 2 logs', exact: true }).waitFor();
    await press('Cancel');
    expect(await focused()).toBe('Give them to…');
    await press('Mark none');
    await press('Show all');
  }, 60_000);

  it('gives logs to another day and leaves them whose they are', async () => {
    await student().selectOption('Fern Ruff');
    await press('Mark all of them');
    await press('Give them to…');
    await page.getByLabel('Lesson of (empty: as it is)').fill('2026-03-09');
    await press('Give 1 log');
    await page.getByText('Say a name, or only the day: then they stay Fern Ruff’s.').waitFor();
    await press('Only to that day');
    await page.getByText(/1 log given to Fern Ruff, lesson of 2026-03-09/).waitFor();
    expect(await focused()).toBe('Flights');
    await press('Show all');
    expect(app.complaints).toEqual([]);
  }, 60_000);

  it('leads to a lesson in which no approach was flown', async () => {
    await student().selectOption('Rowan Teal');
    await press('2026-02-02 (no approach)');
    await page.getByRole('heading', { name: 'Rowan Teal, 2026-02-02' }).waitFor();
    await page.getByText('No approach was found in the logs of this lesson.').waitFor();
    expect(await focused()).toBe('Rowan Teal, 2026-02-02');
    await press('All flights');
    await press('Show all');
  }, 60_000);

  it('closes what is brought in by also while something is told of it', async () => {
    await press('Bring in…');
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Choose logs…')]);
    await chooser.setFiles('samples/tidy-landing.csv');
    await page.getByText(/^1 of 1 log, /).waitFor({ timeout: 60_000 });
    await press('Bring in…');
    await page.getByRole('region', { name: 'Bring in' }).waitFor({ state: 'detached' });
    await press('Bring in…');
    await press('Close');
    await press('Bring in…');
  }, 90_000);
});

describe('a lesson', () => {
  it('is told apart from one that is gone when it cannot be read, and can be tried again', async () => {
    await page.route('**/call/lesson', (route) => route.abort());
    await row('Fern Ruff')
      .getByRole('button', { name: /^Lesson of/ })
      .click();
    await page.getByRole('heading', { name: 'The lesson could not be read' }).waitFor();
    await page.unroute('**/call/lesson');
    await press('Try again');
    await page.getByRole('heading', { name: 'Fern Ruff, 2026-03-09' }).waitFor();
  }, 60_000);

  it('keeps a note and a goal once at a double click, by who is named', async () => {
    await page.getByLabel('Written by').fill('Juniper Crane');
    await page.getByLabel('Write a note').fill('Said once.');
    await page.getByRole('button', { name: 'Keep the note' }).dblclick();
    await page.locator('.note').first().waitFor();
    await page.getByLabel('Agree on a goal').fill('Agreed once');
    await page.getByRole('button', { name: 'Keep the goal' }).dblclick();
    await page.getByLabel('Agreed once').waitFor();
    await page.getByLabel('Written by').fill('');
    await page.getByLabel('Write a note').fill('By nobody.');
    await press('Keep the note');
    await page.locator('.note', { hasText: 'By nobody.' }).getByText('no author named').waitFor();
    expect(await page.locator('.note').count()).toBe(2);
    expect(await page.locator('.note', { hasText: 'Said once.' }).textContent()).toContain('Juniper Crane');
    expect(await page.getByLabel('Agreed once').count()).toBe(1);
  }, 60_000);

  it('takes no longer text than it keeps, and gives the keyboard back after signing', async () => {
    const longest = (name: string) => page.getByLabel(name).getAttribute('maxlength');
    expect(await longest('Aircraft')).toBe('100');
    expect(await longest('Instructor')).toBe('200');
    expect(await longest('Write a note')).toBe('10000');
    await press('I graded it…');
    await page.getByLabel('Graded by').fill('Juniper Crane');
    await press('Sign');
    await page.getByText(/^Graded by Juniper Crane/).waitFor();
    await soon(focused).toBe('I graded it…');
    expect(await violationsIn(page, 'a lesson')).toEqual([]);
    expect(app.complaints).toEqual([]);
    await press('All flights');
  }, 60_000);
});

describe('a log that is open', () => {
  it('is kept with the student who is named, whom the button says to be new', async () => {
    await press('Start');
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Open a log…')]);
    await chooser.setFiles('samples/went-around.csv');
    await press('Keep it in the library…');
    const name = page.getByLabel('Student (empty: not said yet)');
    await name.fill('fern RUFF');
    await page.getByRole('button', { name: 'Keep it', exact: true }).waitFor();
    await name.fill('Hazel Wren');
    await press('Add Hazel Wren and keep it');
    await page.getByText(/Kept in the library: Hazel Wren, /).waitFor();
    await soon(focused).toBe('Show the lesson');
    await press('Flights');
  }, 60_000);
});

describe('a student who is deleted', () => {
  it('is no filter any more, and is not asked for; a lesson shown elsewhere says that it has gone', async () => {
    const other = await page.context().newPage();
    await showApp(other, app.served);
    await other.getByRole('button', { name: 'Flights', exact: true }).click();
    await other.getByRole('button', { name: /^Lesson of Hazel Wren/ }).click();
    await other.getByLabel('Aircraft').waitFor();
    await student().selectOption('Hazel Wren');
    await press('Delete Hazel Wren…');
    await page.getByText(/Backups and exports keep what they hold, also those made here\./).waitFor();
    await page.getByRole('button', { name: 'Delete for good' }).dblclick();
    await page.getByText(/^Hazel Wren was deleted/).waitFor();
    await soon(shown).toBe('3 approaches.');
    await soon(focused).toBe('Flights');
    expect(await student().inputValue()).toBe('');
    expect(await page.locator('.done').count()).toBe(1);
    expect(await page.locator('.notice').count()).toBe(0);
    await other.getByLabel('Aircraft').fill('QQ-XYZ');
    await other.getByLabel('Aircraft').press('Enter');
    await other.getByRole('heading', { name: 'This lesson is not in the library any more' }).waitFor();
    expect(await other.getByRole('button', { name: 'Try again' }).count()).toBe(0);
    await other.close();
  }, 60_000);
});

describe('a library that cannot be read', () => {
  const restored = async () => {
    await press('Restore it…');
    await press('Restore it');
    await page.getByText(/brought back/).waitFor({ timeout: 60_000 });
    await soon(shown).toBe('3 approaches.');
  };
  const startAnew = async (change: () => void) => {
    await app.stop();
    change();
    page = await app.start();
    await press('Flights');
  };

  it('says why, can be tried again, and is brought back from a backup', async () => {
    await press('Back up, export…');
    await press('Back up now');
    await page.getByText(/^Backed up with /).waitFor({ timeout: 60_000 });
    await startAnew(() => writeFileSync(join(library, 'library.sqlite'), 'spoilt'));
    await page.getByRole('heading', { name: 'The library could not be opened' }).waitFor();
    expect(await page.getByRole('alert').textContent()).toMatch(/library\.sqlite is damaged/);
    await soon(() => page.locator('.notice').count()).toBe(0);
    expect(await violationsIn(page, 'a library that cannot be read')).toEqual([]);
    await press('Try again');
    await page.getByRole('heading', { name: 'The library could not be opened' }).waitFor();
    await restored();
  }, 120_000);

  it('is brought back from a backup where its folder has gone', async () => {
    await startAnew(() => renameSync(library, `${library}-lost`));
    await page.getByText('Nothing is kept yet').waitFor();
    await restored();
    expect(app.complaints).toEqual([]);
  }, 120_000);
});
