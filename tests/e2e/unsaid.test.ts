import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { violationsIn } from './app-in-page.ts';
import { flightsOfOneApp, soon } from './flights-page.ts';

/** A library of one lesson, and a log that is opened beside it; each test goes on with what the one before has left. */
const folder = mkdtempSync(join(tmpdir(), 'halfdot-unsaid-'));
const userFolder = join(folder, 'user');
const LOG = 'unstable-and-continued.csv';
let page: Page;

const flights = flightsOfOneApp(folder, userFolder, () => {
  mkdirSync(userFolder);
  const words = 'import samples/first-approach.csv --facility samples/petrelholm-ils-07.json'.split(' ');
  const whose = ['--student', 'Rowan Teal', '--library', join(userFolder, 'library')];
  const { status, stderr } = spawnSync(process.execPath, ['dist/halfdot.js', ...words, ...whose], {
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
});
const { app, press, row } = flights;
beforeAll(() => {
  page = flights.page;
});

const field = (label: string) => page.getByLabel(label, { exact: true });
const standing = async (label: string) => field(label).inputValue();
const open = async () => {
  // By its dialogue: the same file is chosen again.
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Open a log…')]);
  await chooser.setFiles(`samples/${LOG}`);
  await page.getByRole('button', { name: `Close ${LOG}` }).waitFor();
};
const findings = () => page.getByRole('region', { name: 'What to say' });
const first = () => findings().locator('ol li').first();
const isWriting = () =>
  page.evaluate(() => /^(INPUT|TEXTAREA|SELECT)$/.test(document.activeElement!.tagName));

/** To another way of seeing the log and back, and to another place and back. */
async function awayAndBack(): Promise<void> {
  await press('Replay');
  await page.locator('.now').first().waitFor();
  await press('Debrief');
  await first().waitFor();
  await toFlightsAndBack();
  await first().waitFor();
}

async function toFlightsAndBack(): Promise<void> {
  await press('Flights');
  await row('Rowan Teal').first().waitFor();
  await press(LOG);
}

describe('what is written to a finding', () => {
  it('is there after another view, and after a leap to the sheet, until it is said', async () => {
    await open();
    await first().waitFor();
    await first().getByRole('button', { name: 'Say it otherwise…' }).click();
    await field('In your words').fill('Begin the turn');
    await awayAndBack();
    expect(await standing('In your words')).toBe('Begin the turn');
    // It is open again, and does not take the keyboard from where one came.
    expect(await isWriting()).toBe(false);
    expect(await violationsIn(page, 'a form that is open again')).toEqual([]);
    await findings()
      .getByRole('button', { name: /on the sheet$/ })
      .first()
      .click();
    await page.locator('.now').first().waitFor();
    await press('Debrief');
    await field('In your words').fill(`${await standing('In your words')} at one dot.`);
    await press('Keep these words');
    await soon(() => first().textContent()).toContain('Begin the turn at one dot.');
    expect(await field('In your words').count()).toBe(0);
    await awayAndBack();
    expect(await field('In your words').count()).toBe(0);
  }, 90_000);

  it('is there as the student’s answer, and gone once it is left', async () => {
    await first().getByRole('button', { name: 'The student’s answer…' }).click();
    await field('The student’s answer').fill('I looked at the chart.');
    await awayAndBack();
    expect(await standing('The student’s answer')).toBe('I looked at the chart.');
    await press('Leave them');
    await first().getByRole('button', { name: 'The student’s answer…' }).click();
    expect(await standing('The student’s answer')).toBe('');
    await press('Leave them');
  }, 90_000);
});

describe('what is written about a log', () => {
  it('stands in the form that keeps it, until that is cancelled or said', async () => {
    await press('Keep it in the library…');
    await field('Student (empty: not said yet)').fill('Hazel Wren');
    await field('Lesson of (empty: the log’s day)').fill('2026-03-09');
    await awayAndBack();
    expect(await standing('Student (empty: not said yet)')).toBe('Hazel Wren');
    expect(await standing('Lesson of (empty: the log’s day)')).toBe('2026-03-09');
    await press('Cancel');
    await press('Keep it in the library…');
    expect(await standing('Student (empty: not said yet)')).toBe('');
    expect(await standing('Lesson of (empty: the log’s day)')).toBe('');
    await field('Student (empty: not said yet)').fill('Rowan Teal');
    await press('Keep it');
    await page.getByText(/Kept in the library: Rowan Teal, /).waitFor();
  }, 90_000);

  it('stands in what is being added to its statements', async () => {
    await press('Add a span');
    await field('From, hh:mm:ss').fill('14:30:09');
    await press('Add an allowance');
    await field('Reason').fill('first lesson');
    await toFlightsAndBack();
    expect(await standing('From, hh:mm:ss')).toBe('14:30:09');
    expect(await standing('Reason')).toBe('first lesson');
    for (const group of ['My controls', 'Allowances'])
      await page.getByRole('group', { name: group }).getByRole('button', { name: 'Cancel' }).click();
    await press('Add a span');
    expect(await standing('From, hh:mm:ss')).toBe('');
    await press('Add an allowance');
    expect(await standing('Reason')).toBe('');
  }, 90_000);

  it('goes with it when it is closed', async () => {
    await first().getByRole('button', { name: 'The student’s answer…' }).click();
    await field('The student’s answer').fill('Never said.');
    await press(`Close ${LOG}`);
    await open();
    await first().waitFor();
    expect(await field('The student’s answer').count()).toBe(0);
    expect(await field('From, hh:mm:ss').count()).toBe(0);
    await press(`Close ${LOG}`);
  }, 90_000);

  it('stands in what a student thinks of it, asked first', async () => {
    await press('Start');
    const asks = page.getByLabel('Ask the student first, before a debrief is shown');
    await asks.check();
    await open();
    await field('Level, 1 to 5').selectOption('4');
    await field('What went well, and what did not').fill('A steady glidepath');
    await toFlightsAndBack();
    expect(await standing('Level, 1 to 5')).toBe('4');
    expect(await standing('What went well, and what did not')).toBe('A steady glidepath');
    await press('Show the debrief');
    await page.getByText('level 4, “A steady glidepath”').waitFor();
    await press(`Close ${LOG}`);
    await open();
    await field('Level, 1 to 5').waitFor();
    expect(await standing('Level, 1 to 5')).toBe('');
    expect(await standing('What went well, and what did not')).toBe('');
    await press(`Close ${LOG}`);
    expect(app.complaints).toEqual([]);
  }, 90_000);
});

describe('what is written about a lesson', () => {
  const toLesson = async () => {
    await press('Flights');
    await row('Rowan Teal')
      .last()
      .getByRole('button', { name: /^Lesson of Rowan Teal/ })
      .click();
    await field('Write a note').waitFor();
  };

  it('is there when one comes back to it, and gone once it is said or cancelled', async () => {
    await toLesson();
    await field('Write a note').fill('Ahead of the aircraft');
    await field('Written by').fill('Juniper Crane');
    await field('Agree on a goal').fill('Look at the speed');
    await press('I graded it…');
    await field('Graded by').fill('Juniper');
    await press('Standards');
    await toLesson();
    expect(await standing('Write a note')).toBe('Ahead of the aircraft');
    expect(await standing('Written by')).toBe('Juniper Crane');
    expect(await standing('Agree on a goal')).toBe('Look at the speed');
    expect(await standing('Graded by')).toBe('Juniper');
    await press('Keep the note');
    await page
      .locator('.note', { hasText: 'Ahead of the aircraft' })
      .getByText(/Juniper Crane/)
      .waitFor();
    await soon(() => standing('Write a note')).toBe('');
    // Who wrote one may write the next.
    expect(await standing('Written by')).toBe('Juniper Crane');
    await press('Keep the goal');
    await page.getByLabel('Look at the speed').waitFor();
    await soon(() => standing('Agree on a goal')).toBe('');
    await press('Cancel');
    await press('I graded it…');
    expect(await standing('Graded by')).toBe('');
    await press('Cancel');
  }, 90_000);

  it('is another’s than what is written about its student', async () => {
    await field('Agree on a goal').fill('At this lesson');
    await press('All lessons together');
    await field('Agree on a goal').waitFor();
    expect(await standing('Agree on a goal')).toBe('');
    await field('Agree on a goal').fill('Of all lessons');
    await toLesson();
    expect(await standing('Agree on a goal')).toBe('At this lesson');
    await press('All lessons together');
    await soon(() => standing('Agree on a goal')).toBe('Of all lessons');
    await press('Keep the goal');
    await soon(() => standing('Agree on a goal')).toBe('');
    expect(app.complaints).toEqual([]);
  }, 90_000);
});
