import { readFileSync, mkdtempSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violationsIn } from './app-in-page.ts';
import { flightsOfOneApp, soon } from './flights-page.ts';
import { bare, pdfPages } from './pdf-pages.ts';

const FACILITY = 'samples/petrelholm-ils-07.json';
const GOALS = ['Hold the glidepath to 200 ft', 'Brief the missed approach before the fix'];
const OBJECTIVE = 'Both needles within half scale from the fix to decision altitude.';
const MARK =
  'Training aid. Data entered by Hazel Wren, of 1 March 2026. Not for navigation. Use the current chart.';

const folder = mkdtempSync(join(tmpdir(), 'halfdot-brief-'));
const userFolder = join(folder, 'user');
const flights = flightsOfOneApp(folder, userFolder, () => {
  const roster = join(folder, 'roster.csv');
  writeFileSync(roster, 'name,role\nRowan Teal,student\n');
  halfdot('roster', roster, '--library', join(userFolder, 'library'));
});
const { app, press } = flights;

function halfdot(...words: string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/halfdot.js', ...words], {
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  return stdout;
}

const page = (): Page => app.page;
const sheet = () => page().locator('.briefing').innerText();
async function type(label: string, text: string): Promise<void> {
  const field = page().getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
}

/** Goals that were agreed with the student, as the app keeps them. */
async function agreeOnGoals(): Promise<void> {
  await page().getByLabel('Open a student').selectOption('Rowan Teal');
  for (const goal of GOALS) {
    await page().getByLabel('Agree on a goal').fill(goal);
    await press('Keep the goal');
    await page().getByLabel(goal).waitFor();
  }
}

/** Size of the first page, in points. */
const sizeOf = (pdf: Buffer) =>
  /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1'))!.slice(1).map(Number);

const PAPERS = [
  ['a5', 148, 210],
  ['half-letter', 139.7, 215.9],
] as const;
const MM_PER_POINT = 25.4 / 72;

function isOn(pdf: Buffer, widthMm: number, heightMm: number): void {
  const [width, height] = sizeOf(pdf).map((points) => points * MM_PER_POINT) as [number, number];
  expect(Math.abs(width - widthMm)).toBeLessThan(0.5);
  expect(Math.abs(height - heightMm)).toBeLessThan(0.5);
}

describe('before the flight', () => {
  it('a facility is briefed as soon as it is chosen, with what is typed about the flight', async () => {
    await agreeOnGoals();
    await press('Brief');
    await page().getByText('Choose a facility to see its sheet.').waitFor();
    await page().getByLabel('Facility').selectOption({ label: 'Petrelholm ILS 07' });
    await soon(sheet).toContain('070° magnetic');
    expect(await sheet()).toContain('________ ft');
    await type('Groundspeed on final, kt', '90');
    await type('Indicated airspeed on final, kt', '95');
    await type('Wind, as 250/18 (true, kt)', '100/12');
    await type('Temperature at the aerodrome, °C', '-20');
    await soon(sheet).toContain('Altimeter at −20 °C');
    await soon(sheet).toContain('heading 076° magnetic');
    expect(await page().locator('.briefing th.this-speed').textContent()).toBe('90');
  });

  it('a decision altitude is on it once it was typed twice alike, and never before', async () => {
    const alert = () =>
      page()
        .getByRole('alert')
        .allInnerTexts()
        .then((all) => all.join(''));
    await type('Decision altitude, ft', '240');
    await soon(alert).toContain('type it again');
    await type('The same again, ft', '250');
    await soon(alert).toContain('240 ft and 250 ft');
    for (const typed of ['240', '250']) expect(await sheet()).not.toMatch(new RegExp(`\\b${typed}\\s+ft`));
    expect(await sheet()).toContain('__:__');
    await type('The same again, ft', '240');
    await soon(alert).toBe('');
    await soon(sheet).toMatch(/240\s+ft\s+200\s+ft above the touchdown zone/);
    expect(await sheet()).not.toContain('__:__');
  });

  it('a student’s open goals and the objective are on it, and what was typed stays', async () => {
    await page().getByLabel('Student, whose goals are put on it').selectOption('Rowan Teal');
    await type('Objective of the lesson', OBJECTIVE);
    await type('Entered by', 'Hazel Wren');
    await type('Of the day', '2026-03-01');
    await soon(sheet).toContain(GOALS[1]!);
    await press('Start');
    await press('Brief');
    await soon(sheet).toContain(GOALS[0]!);
    const text = await sheet();
    for (const words of [OBJECTIVE, MARK]) expect(text).toContain(words);
    expect(await page().getByLabel('The same again, ft', { exact: true }).inputValue()).toBe('240');
  });

  it('reads in light and dark', async () => {
    expect(await violationsIn(page(), 'a briefing')).toEqual([]);
    await page().emulateMedia({ colorScheme: 'dark' });
    expect(await violationsIn(page(), 'a briefing in dark')).toEqual([]);
    await page().emulateMedia({ colorScheme: 'light' });
  });

  it.each(PAPERS)('is printed on one page of %s', async (paper, widthMm, heightMm) => {
    await page().getByLabel('Paper').selectOption(paper);
    await page().evaluate(() => {
      window.print = () => {};
    });
    await press('Print');
    const pdf = await page().pdf({ preferCSSPageSize: true });
    await page().evaluate(() => dispatchEvent(new Event('afterprint')));
    const pages = pdfPages(pdf);
    expect(pages).toHaveLength(1);
    isOn(pdf, widthMm, heightMm);
    for (const words of ['Petrelholm ILS 07', 'WIMBO and hold', OBJECTIVE, ...GOALS, MARK])
      expect(pages[0]).toContain(bare(words));
    // The app's own page is not on it.
    expect(pages[0]).not.toContain(bare('Before the flight'));
    expect(await page().locator('.printed').count()).toBe(0);
  });

  it('is saved as the page that the command writes', async () => {
    await page().getByLabel('Student, whose goals are put on it').selectOption('nobody');
    await soon(sheet).not.toContain(GOALS[0]!);
    await page().getByLabel('Paper').selectOption('a5');
    const [saved] = await Promise.all([page().waitForEvent('download'), press('Save the page')]);
    expect(saved.suggestedFilename()).toBe('Petrelholm ILS 07.briefing.html');
    const flight = ['--groundspeed', '90', '--airspeed', '95', '--wind', '100/12', '--temperature', '-20'];
    const decision = ['--decision-altitude', '240', '--decision-altitude-again', '240'];
    const entered = ['--objective', OBJECTIVE, '--entered-by', 'Hazel Wren', '--entered-on', '2026-03-01'];
    const words = ['--facility', FACILITY, ...flight, ...decision, ...entered, '--format', 'html'];
    expect(readFileSync(await saved.path(), 'utf8')).toBe(halfdot('brief', ...words));
    expect(app.complaints).toEqual([]);
  });

  it('of another facility has nothing of what was taken off the chart of the first', async () => {
    await page().getByLabel('Facility').selectOption({ label: 'Whimbrelness ILS 13' });
    await soon(sheet).toContain('Whimbrelness ILS 13');
    const text = await sheet();
    expect(text).toContain('________ ft');
    for (const words of ['240', '−20 °C', 'Hazel Wren']) expect(text).not.toContain(words);
    expect(text).toContain(OBJECTIVE);
    const boxes = [
      'Decision altitude, ft',
      'The same again, ft',
      'Temperature at the aerodrome, °C',
      'Entered by',
    ];
    for (const words of boxes) expect(await page().getByLabel(words, { exact: true }).inputValue()).toBe('');
  });
});

describe('the page of the command', () => {
  it.each(PAPERS)(
    'goes on to another page of %s where it must, each of them marked',
    async (paper, ...size) => {
      const facility = JSON.parse(readFileSync(FACILITY, 'utf8')) as {
        missedApproach: { instructions: string };
      };
      const instructions = 'Climb straight ahead to the lake and turn left. '.repeat(40).trim();
      const [long, written] = [join(folder, 'long.json'), join(folder, `${paper}.html`)];
      writeFileSync(
        long,
        JSON.stringify({ ...facility, missedApproach: { ...facility.missedApproach, instructions } }),
      );
      const entered = ['--entered-by', 'Hazel Wren', '--entered-on', '2026-03-01'];
      const words = [
        '--facility',
        long,
        '--groundspeed',
        '90',
        ...entered,
        '--paper',
        paper,
        '--format',
        'html',
      ];
      writeFileSync(written, halfdot('brief', ...words));
      const own = await app.browser.newPage();
      await own.goto(pathToFileURL(written).href);
      expect(await violationsIn(own, 'the page of a briefing')).toEqual([]);
      const pdf = await own.pdf({ preferCSSPageSize: true });
      await own.close();
      isOn(pdf, ...size);
      const pages = pdfPages(pdf);
      expect(pages).toHaveLength(2);
      for (const text of pages) expect(text).toContain(bare(MARK));
    },
  );
});
