import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { LESSONS, STUDENTS, writeTerm } from '../support/library/term.ts';
import { violationsIn } from './app-in-page.ts';
import { flightsOfOneApp, soon } from './flights-page.ts';

/** A term of a school, brought in once. */
const folder = mkdtempSync(join(tmpdir(), 'halfdot-term-'));
const term = join(folder, 'Spring term');
const userFolder = join(folder, 'user');
const library = join(userFolder, 'library');
const LOGS = STUDENTS.length * LESSONS;

const flights = flightsOfOneApp(folder, userFolder, () => void writeTerm(term));
const { app, press, rows, row, shown } = flights;
let page: Page;
beforeAll(() => {
  page = flights.page;
});

const status = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
const choose = async (name: string, path: string) => {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(name)]);
  await chooser.setFiles(path);
};
/** A command on a library, as another person at another machine gives it. */
const halfdot = (...words: string[]) => {
  const said = spawnSync(process.execPath, ['dist/halfdot.js', ...words], { encoding: 'utf8' });
  return { status: said.status, said: said.stdout + said.stderr };
};

describe('a term of a school', () => {
  it('is brought in by its folders, and can be stopped and gone on with', async () => {
    await press('Flights');
    await page.getByText('Nothing is kept yet').waitFor();
    expect(await violationsIn(page, 'an empty library')).toEqual([]);
    // Off by itself: a misspelt folder would make somebody of nobody.
    await page.getByLabel('Add students who are not here yet').check();
    await choose('Choose a folder of logs…', term);
    await page.getByText(/^[1-9]\d* of 96 logs/).waitFor();
    // Read out by tenths, and not at every log.
    expect(await page.locator('.brought [role=status]').textContent()).toMatch(
      /^(Bringing logs in|\d0 percent brought in)\.$/,
    );
    await press('Stop');
    await page.getByText(/Stopped: choose the same again/).waitFor({ timeout: 60_000 });
    await choose('Choose a folder of logs…', term);
    await page.getByText(/^96 of 96 logs, .* here already/).waitFor({ timeout: 240_000 });
    expect(await violationsIn(page, 'a term brought in')).toEqual([]);
    await press('Close');
    await soon(shown).toBe(`${LOGS} approaches.`);
    await page.getByText(`${LOGS} approaches of ${STUDENTS.length} students`).waitFor();
    expect(readdirSync(join(library, 'logs'))).toHaveLength(LOGS);
  }, 300_000);

  it('is found by student, day and words, in every order', async () => {
    await page.getByLabel('Student', { exact: true }).selectOption('Hazel Wren');
    await soon(shown).toBe(`${LESSONS} approaches.`);
    expect(await row('Hazel Wren').count()).toBe(LESSONS);
    await page.getByLabel('To', { exact: true }).fill('2026-03-20');
    await soon(shown).toBe('3 approaches.');
    await press('Show all');
    await soon(shown).toBe(`${LOGS} approaches.`);
    await page.getByLabel('Words in it').fill('sidestepped wren');
    await soon(shown).toMatch(/^[1-9] approach(es)?\.$/);
    await press('Show all');
    await press('Student');
    await soon(() => rows().nth(1).textContent()).toContain('Alder Pipit');
    expect(await page.getByRole('columnheader', { name: 'Student' }).getAttribute('aria-sort')).toBe(
      'ascending',
    );
    // Far down: what is scrolled to is fetched.
    await page.locator('.flight-rows').evaluate((box) => box.scrollTo(0, box.scrollHeight));
    await row('Willow Dunlin').first().waitFor();
    await press('Flown');
    expect(app.complaints).toEqual([]);
  }, 120_000);

  it('is found as it was left, whatever was looked at meanwhile', async () => {
    await page.getByLabel('Student', { exact: true }).selectOption('Hazel Wren');
    await page.getByLabel('Words in it').fill('FLIGHT-1.csv');
    await soon(shown).toMatch(/^1 approach\.$/);
    await row('Hazel Wren').getByRole('checkbox').check();
    await press('Score');
    await row('Hazel Wren')
      .getByRole('button', { name: /^Lesson of/ })
      .click();
    await press('All flights');
    await status('1 log is marked.');
    expect(await page.getByLabel('Words in it').inputValue()).toBe('FLIGHT-1.csv');
    expect(await page.getByRole('columnheader', { name: 'Score' }).getAttribute('aria-sort')).toBe(
      'descending',
    );
    await press('Give them to…');
    await press('To nobody');
    await page.getByRole('form', { name: 'Give logs to a student' }).waitFor({ state: 'detached' });
    await page.getByLabel('Student', { exact: true }).selectOption('nobody yet');
    // What tells whose it may be.
    expect(await row('nobody yet').textContent()).toContain('flight-1.csv');
    await press('Undo it');
    await press('Show all');
    await soon(shown).toBe(`${LOGS} approaches.`);
    await press('Flown');
  }, 120_000);

  it('tells who needs what, and gives a student’s report', async () => {
    await press('Progress');
    const needs = page.locator('table.needs tbody tr');
    await needs.first().waitFor();
    expect(await needs.count()).toBe(STUDENTS.length);
    // All flew the same flights, by days and receivers of their own: none needs what the others do not.
    const counts = (await needs.allInnerTexts()).map((row) => row.replace(/^Student \d+/, ''));
    expect(new Set(counts).size).toBe(1);
    await page.getByLabel('Show names').check();
    const [name] = STUDENTS;
    await needs.getByRole('button', { name }).click();
    await page.getByRole('heading', { name: 'To practise' }).waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), press('Save the report')]);
    const report = readFileSync(await download.path(), 'utf8');
    expect(report).toContain(name);
    for (const other of STUDENTS) if (other !== name) expect(report).not.toContain(other);
    await press('Flights');
  }, 120_000);

  it('has a wrong assignment corrected, many logs at once, and undone', async () => {
    await page.getByLabel('Student', { exact: true }).selectOption('Fern Ruff');
    await soon(shown).toBe(`${LESSONS} approaches.`);
    await press('Mark all of them');
    await status(`${LESSONS} logs are marked.`);
    await press('Give them to…');
    const form = page.getByRole('form', { name: 'Give logs to a student' });
    await form.getByLabel('Student').fill('Sorrel Smew');
    expect(await violationsIn(page, 'logs to be given')).toEqual([]);
    await form.getByRole('button', { name: `Give ${LESSONS} logs`, exact: true }).click();
    await status(/8 logs given to Sorrel Smew/);
    await page.getByText('No approach matches').waitFor();
    await page.getByLabel('Student', { exact: true }).selectOption('Sorrel Smew');
    await soon(shown).toBe(`${2 * LESSONS} approaches.`);
    await press('Undo it');
    await soon(shown).toBe(`${LESSONS} approaches.`);
    await page.getByLabel('Student', { exact: true }).selectOption('Fern Ruff');
    await soon(shown).toBe(`${LESSONS} approaches.`);
    await press('Show all');
  }, 120_000);

  it('holds a lesson with what was said, agreed and signed', async () => {
    await row('Fern Ruff')
      .first()
      .getByRole('button', { name: /^Lesson of Fern Ruff/ })
      .click();
    await page.getByRole('heading', { name: /^Fern Ruff, 2026-/ }).waitFor();
    await page.getByLabel('Instructor').fill('Juniper Crane');
    await page.getByLabel('Objective').fill('Hold the glidepath to minimums');
    await page.getByLabel('Aircraft').fill('QQ-XYZ');
    await page.getByLabel('Conditions').selectOption('simulated');
    await soon(() => page.getByLabel('Written by').inputValue()).toBe('Juniper Crane');
    await page.getByLabel('Write a note').fill('Ahead of the aircraft for the first time.');
    // Who writes is seen before it is kept.
    await soon(() => page.getByLabel('Written by').inputValue()).toBe('Juniper Crane');
    await press('Keep the note');
    await page
      .locator('.note', { hasText: 'first time' })
      .getByText(/Juniper Crane, /)
      .waitFor();
    await page.getByLabel('Agree on a goal').fill('Look at the speed twice a minute');
    await press('Keep the goal');
    await page.getByLabel('Look at the speed twice a minute').click();
    await page.getByText(/, reached 20/).waitFor();
    await press('I graded it…');
    await page.getByLabel('Graded by').fill('Juniper Crane');
    await press('Sign');
    await page.getByText(/Graded by Juniper Crane, /).waitFor();
    expect(await violationsIn(page, 'a lesson')).toEqual([]);
    await press('All flights');
    await row('Fern Ruff')
      .first()
      .getByRole('button', { name: /^Lesson of Fern Ruff/ })
      .click();
    await page.getByLabel('Objective').waitFor();
    expect(await page.getByLabel('Objective').inputValue()).toBe('Hold the glidepath to minimums');
    expect(await page.getByLabel('Instructor').inputValue()).toBe('Juniper Crane');
    expect(await page.getByLabel('Conditions').inputValue()).toBe('simulated');
    expect(app.complaints).toEqual([]);
  }, 120_000);

  it('opens a debrief as it was kept, and keeps what is stated since', async () => {
    await page.locator('.lesson-approaches .link').first().click();
    await page.locator('h1.summary').waitFor();
    await page.getByText(/Kept in the library: Fern Ruff, /).waitFor();
    await page.getByLabel('Target airspeed on final, kt').fill('95');
    await page.getByLabel('Target airspeed on final, kt').press('Enter');
    await press('Keep what was stated since');
    await page.getByRole('button', { name: 'Keep what was stated since' }).waitFor({ state: 'detached' });
    await press('Show the lesson');
    await page.getByText(/The debrief was made anew since/).waitFor();
    await press('Close flight-8.csv');
    await press('Flights');
    await row('Fern Ruff').first().locator('.clipped').click();
    await page.locator('h1.summary').waitFor();
    expect(await page.getByLabel('Target airspeed on final, kt').inputValue()).toBe('95');
    // What is stated and not kept there is offered when it is opened again.
    await page.getByLabel('Target airspeed on final, kt').fill('97');
    await page.getByLabel('Target airspeed on final, kt').press('Enter');
    await page.getByRole('button', { name: 'Keep what was stated since' }).waitFor();
    await press('Close flight-8.csv');
    await press('Flights');
    await row('Fern Ruff').first().locator('.clipped').click();
    await page.getByText('Opened as it was kept, without what you stated last time.').waitFor();
    expect(await page.getByLabel('Target airspeed on final, kt').inputValue()).toBe('95');
    await press('Take it over');
    await soon(() => page.getByLabel('Target airspeed on final, kt').inputValue()).toBe('97');
    await press('Close flight-8.csv');
    expect(app.complaints).toEqual([]);
  }, 120_000);

  it('is backed up and exported, and another library takes it in', async () => {
    await press('Flights');
    await press('Back up, export…');
    await press('Back up now');
    await status(new RegExp(`^Backed up with ${LOGS} logs to .*library-backups`));
    await press('Export now');
    await status(/^Exported \d+ entries to .*library-exports/);
    expect(await violationsIn(page, 'backups')).toEqual([]);
    const [made] = readdirSync(`${library}-exports`);
    const elsewhere = join(folder, 'elsewhere');
    expect(
      halfdot('import', '--from', join(`${library}-exports`, made!), '--library', elsewhere),
    ).toMatchObject({ status: 0 });
    expect(halfdot('check', '--library', elsewhere)).toMatchObject({ status: 0 });
    const [backup] = readdirSync(`${library}-backups`);
    const restored = join(folder, 'restored');
    expect(halfdot('restore', join(`${library}-backups`, backup!), '--library', restored)).toMatchObject({
      status: 0,
    });
    const list = (path: string) => halfdot('list', 'approaches', '--format', 'json', '--library', path).said;
    expect(JSON.parse(list(elsewhere))).toHaveLength(LOGS);
    expect(list(elsewhere)).toBe(list(library));
    expect(list(restored)).toBe(list(library));
  }, 240_000);

  it('has a student deleted for good, and a backup brings everything back', async () => {
    // The question of one student goes with the choice of another.
    await page.getByLabel('Student', { exact: true }).selectOption('Hazel Wren');
    await press('Delete Hazel Wren…');
    await page.getByRole('button', { name: 'Delete for good' }).waitFor();
    await page.getByLabel('Student', { exact: true }).selectOption('Clover Avocet');
    await page.getByRole('button', { name: 'Delete Clover Avocet…' }).waitFor();
    expect(await page.locator('.student-panel').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Delete for good' }).count()).toBe(0);
    await press('Delete Clover Avocet…');
    await page
      .getByText(/Delete Clover Avocet with 8 lessons, 8 logs and 8 approaches, for good\?/)
      .waitFor();
    await press('Delete for good');
    await page.getByText('Clover Avocet was deleted. Nothing of theirs is left in the library.').waitFor();
    await press('Show all');
    await soon(shown).toBe(`${LOGS - LESSONS} approaches.`);
    expect(holding(library, 'Clover Avocet')).toEqual([]);
    await press('Restore it…');
    await press('Restore it');
    await status(new RegExp(`^${LOGS} logs brought back`));
    await soon(shown).toBe(`${LOGS} approaches.`);
    expect(halfdot('check', '--library', library)).toMatchObject({ status: 0 });
    expect(app.complaints).toEqual([]);
  }, 120_000);
});

/** Files of a folder that hold a text, packed ones as what they hold. */
function holding(path: string, text: string): string[] {
  if (!existsSync(path)) return [];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((name) => {
      const bytes = readFileSync(name);
      const content = name.endsWith('.gz') ? gunzipSync(bytes) : bytes;
      return content.includes(text) || content.includes(Buffer.from(text, 'utf16le'));
    });
}
