import { mkdtempSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeCourse } from '../support/library/course.ts';
import { violationsIn } from './app-in-page.ts';
import { flightsOfOneApp, soon } from './flights-page.ts';
import { bare, pdfPages } from './pdf-pages.ts';

/** A course of four, each with something of their own, brought in once. */
const STUDENTS = ['Rowan Teal', 'Hazel Wren', 'Juniper Crane', 'Willow Dunlin'];
const LESSONS = 6;
const folder = mkdtempSync(join(tmpdir(), 'halfdot-course-'));
const course = join(folder, 'Course');
const userFolder = join(folder, 'user');
const library = join(userFolder, 'library');

const FLOWN = ['--target-airspeed', '90', '--conditions', 'simulated', '--runway', 'seen'];
const flights = flightsOfOneApp(folder, userFolder, () => {
  writeCourse(course, STUDENTS, LESSONS);
  const facility = ['--facility', 'samples/petrelholm-ils-07.json'];
  const whose = ['--student-from', 'folder', '--add-students', 'yes'];
  halfdot('import', course, ...facility, ...whose, ...FLOWN, '--library', library);
});
const { app, press } = flights;
let page: Page;
beforeAll(() => {
  page = flights.page;
});

function halfdot(...words: string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/halfdot.js', ...words], {
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  return stdout;
}

const heading = () => page.getByRole('heading', { level: 1 }).textContent();
const needs = (text: string) => page.locator('table.needs tbody tr').filter({ hasText: text });
const card = (title: string) => page.getByRole('region', { name: title, exact: true });

describe('a school', () => {
  it('says first what most need, and who, without a name', async () => {
    await press('Progress');
    await page.locator('table.needs').waitFor();
    expect(await heading()).toMatch(/ is to be practised by \d of 4 students/);
    for (const name of STUDENTS) expect(await page.locator('table').getByText(name).count()).toBe(0);
    expect(await needs('Student ').count()).toBe(4);
    expect(await page.getByLabel('Open a student').count()).toBe(0);
    expect(await violationsIn(page, 'a school')).toEqual([]);
  });

  it('shows names where they are asked for: who needs what', async () => {
    await page.getByLabel('Show names').check();
    await needs('Juniper Crane').waitFor();
    const flagged = async (name: string) => needs(name).locator('td.flagged').count();
    const column = async (title: string) =>
      (await page.locator('table.needs thead th').allTextContents()).indexOf(title);
    expect(await flagged('Willow Dunlin')).toBe(0);
    const airspeed = (await column('Airspeed on final')) - 1;
    expect(await needs('Juniper Crane').locator('td').nth(airspeed).textContent()).toMatch(/▲ \d of 6/);
    const localizer = (await column('Localizer on final')) - 1;
    expect(await needs('Hazel Wren').locator('td').nth(localizer).textContent()).toMatch(/▲ \d of 6/);
  });

  it('is looked at by another criterion, in part, and in groups', async () => {
    await page.getByLabel('Looked at by').selectOption('glidepath-final');
    await page.getByRole('heading', { name: 'Glidepath on final over the lessons' }).waitFor();
    // Drawn, and not only promised.
    await soon(() => page.locator('.lesson-spread .recharts-line-dot').count()).toBe(LESSONS);
    const rowan = page.locator('table.school-matrix tbody tr').filter({ hasText: 'Rowan Teal' });
    const values = (await rowan.locator('td').allTextContents()).map((text) =>
      Number(text.match(/[\d.]+/)![0]),
    );
    expect(values).toHaveLength(LESSONS);
    expect(values[0]!).toBeGreaterThan(2 * values.at(-1)!);
    expect(await rowan.locator('td').first().innerText()).toContain('2 approaches');
    await page.getByText('The figures of the chart').click();
    const figures = page.getByRole('region', { name: 'Glidepath on final, figures over the lessons' });
    const first = await figures.locator('tbody tr').first().locator('td').allTextContents();
    const column = page.locator('table.school-matrix tbody tr > td:nth-child(2)');
    const flown = (await column.allTextContents()).map((text) => text.match(/[\d.]+/)![0]).sort();
    expect([first[0], first[1], first.at(-1)]).toEqual(['4', flown[0], flown.at(-1)]);
    expect(await figures.locator('tbody tr').count()).toBe(LESSONS);
    await page.getByLabel('Groups side by side').selectOption('conditions');
    await page.locator('table.groups').getByText('there is no other group').waitFor();
    await page.getByLabel('To', { exact: true }).fill('2026-03-20');
    await soon(() => page.locator('.school > p.aside').textContent()).toMatch(/^24 approaches of 4 students/);
    await page.getByText('flown on other days than asked for').waitFor();
    await page.getByLabel('To', { exact: true }).fill('');
    expect(await violationsIn(page, 'a school in groups')).toEqual([]);
  });

  it('has wide tables that the arrow keys move', async () => {
    const size = page.viewportSize()!;
    await page.setViewportSize({ width: 420, height: size.height });
    const table = page.getByRole('region', { name: 'Glidepath on final, lesson by lesson' });
    // By Tab, since a script can put the focus where the keyboard never goes.
    await table.getByRole('button').first().focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('ArrowRight');
    await soon(() => table.evaluate(({ scrollLeft }) => scrollLeft)).toBeGreaterThan(0);
    await page.setViewportSize(size);
  });

  it('goes back to the level where nobody is held any more to what it was looked at by', async () => {
    const gone = /"measure":"airspeed-final"/;
    await page.route('**/call/schoolProgress', (route) =>
      gone.test(route.request().postData()!)
        ? route.fulfill({ json: { ok: true, value: null } })
        : route.continue(),
    );
    await page.getByLabel('Looked at by').selectOption('airspeed-final');
    await page.getByRole('heading', { name: 'Level over the lessons' }).waitFor();
    await page.unroute('**/call/schoolProgress');
    await page.getByLabel('Looked at by').selectOption('glidepath-final');
    await page.getByRole('heading', { name: 'Glidepath on final over the lessons' }).waitFor();
  });
});

describe('a student', () => {
  it('is opened from the table: what changed, criterion by criterion', async () => {
    await needs('Rowan Teal').getByRole('button', { name: 'Rowan Teal' }).click();
    await card('Glidepath on final').waitFor();
    expect(await heading()).toMatch(
      /^Over 12 approaches in 6 lessons, .* Rowan Teal .*improved in .*glidepath on final/,
    );
    expect(await card('Glidepath on final').textContent()).toMatch(
      /[Bb]etter by 0\.\d+ of full scale a lesson/,
    );
    await soon(() => card('Glidepath on final').locator('.recharts-line-dot').count()).toBe(LESSONS);
    await page
      .locator('table.lesson-table tbody tr')
      .nth(LESSONS - 1)
      .waitFor();
  });

  it('has the last and the best approach on one sheet, and opens either', async () => {
    const sheet = page.locator('.one-sheet svg.sheet');
    await sheet.waitFor({ timeout: 30_000 });
    expect(await page.locator('.one-sheet h2').textContent()).toMatch(/^The last approach/);
    expect(await violationsIn(page, 'a student')).toEqual([]);
    await page.locator('.one-sheet').getByRole('button', { name: 'Open its debrief' }).first().click();
    await page.locator('h1.summary').waitFor();
    await press('Progress');
    await page.getByLabel('Open a student').selectOption('Rowan Teal');
    await card('Level').waitFor();
  });

  it('is told after a lesson what was better than the last time, also on the page to hand over', async () => {
    await press('Flights');
    const lesson = page.getByRole('button', { name: 'Lesson of Rowan Teal, 2026-03-16' });
    await page.getByLabel('Student', { exact: true }).selectOption('Rowan Teal');
    await lesson.first().click();
    await page.locator('.lesson-approaches .link').first().click();
    const better = page.locator('.findings li').filter({ hasText: 'Better than the last time.' });
    await better.waitFor();
    const words =
      /Against the approach of 2026-03-09: .*glidepath on final 0\.\d\d of full scale RMS after 0\.\d\d/;
    expect(await better.textContent()).toMatch(words);
    const [download] = await Promise.all([page.waitForEvent('download'), press('Save the page')]);
    expect(readFileSync(await download.path(), 'utf8')).toMatch(words);
    // What is stated since may turn it: then it is no longer known.
    await page.getByLabel('Runway at minimums').selectOption('not-seen');
    await better.waitFor({ state: 'detached' });
    await press('Progress');
    await page.getByLabel('Open a student').selectOption('Rowan Teal');
    await card('Level').waitFor();
  });

  it('agrees on a goal, which is reached and stands in the report', async () => {
    await page.getByLabel('Agree on a goal').fill('Hold the glidepath to 200 ft');
    await press('Keep the goal');
    // Ticked once the library has kept it.
    await page.getByLabel('Hold the glidepath to 200 ft').click();
    await page.getByText(/^reached on/).waitFor();
  });

  it('is saved as a page that the command writes too, word for word', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), press('Save the report')]);
    expect(download.suggestedFilename()).toBe('Rowan Teal.progress.html');
    const text = readFileSync(await download.path(), 'utf8');
    expect(text).toContain('Hold the glidepath to 200 ft: reached on');
    const written = halfdot('progress', '--student', 'Rowan Teal', '--format', 'html', '--library', library);
    expect(text).toBe(written);
  });

  it('is printed as that page', async () => {
    await page.evaluate(() => {
      window.print = () => {};
    });
    await press('Print');
    await page.emulateMedia({ media: 'print' });
    const pages = pdfPages(await page.pdf({ format: 'A4' }));
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.emulateMedia({ media: 'screen' });
    expect(pages.length).toBeGreaterThanOrEqual(2);
    expect(pages.length).toBeLessThanOrEqual(4);
    expect(pages[0]).toContain(bare('Rowan Teal'));
    expect(pages[0]).toContain(bare('Glidepath on final'));
    expect(pages.join('')).toContain(bare('For training debrief only, never for navigation.'));
    expect(await page.locator('.printed').count()).toBe(0);
  });

  it('is printed as that page by the keys that print a page, too', async () => {
    await page.evaluate(() => {
      window.print = () =>
        document.body.setAttribute('data-printed', document.querySelector('.printed')!.textContent);
    });
    await page.keyboard.press('Control+p');
    expect(await page.locator('body').getAttribute('data-printed')).toContain('Rowan Teal');
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.printed').count()).toBe(0);
  });

  it('reads in dark as well, and nothing complained', async () => {
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsIn(page, 'a student in dark')).toEqual([]);
    await press('All students');
    await page.locator('table.needs').waitFor();
    // As it was left.
    expect(await page.getByLabel('Looked at by').inputValue()).toBe('glidepath-final');
    expect(await page.getByLabel('Groups side by side').inputValue()).toBe('conditions');
    expect(await page.getByLabel('Show names').isChecked()).toBe(true);
    expect(await violationsIn(page, 'a school in dark')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    expect(app.complaints).toEqual([]);
  });
});
