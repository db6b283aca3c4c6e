import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { METRES_PER_FOOT } from '../../core/units/units.ts';
import { columnInstead, columnsOf } from '../support/files/column-instead.ts';
import { appForEachTest, violationsIn } from './app-in-page.ts';

/** A machine that has other work needs a while for what is done in a second. */
const PATIENCE = { timeout: 40_000 };
const FLIGHT = readFileSync('samples/tidy-landing.csv', 'utf8');
const ALTITUDE = 'GNSS Altitude (ft MSL)';

/** A log that names no unit at all, its altitude in metres. */
const METRES = columnsOf(columnInstead(FLIGHT, ALTITUDE, 'GNSS Altitude', METRES_PER_FOOT), [
  ['Date/Time (UTC)', 'Date/Time (UTC)'],
  ['Latitude (deg)', 'Latitude'],
  ['Longitude (deg)', 'Longitude'],
  ['GNSS Altitude', 'GNSS Altitude'],
]);

const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
  page.setDefaultTimeout(PATIENCE.timeout);
});

/** Opens a log, and what was recognised in it. */
async function open(name: string, csv: string): Promise<void> {
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(csv) };
  await page.locator('header input[type=file]').setInputFiles([file]);
  await page.getByText(`What was recognised in ${name}`).click();
}
const said = () => page.locator('.recognised pre.page');
const rowOf = (header: string) =>
  page.locator('table.columns tr', { has: page.getByRole('rowheader', { name: header, exact: true }) });
const notes = () =>
  JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as {
    mappings: object;
    units?: Record<string, Record<string, string>>;
  };

describe('the unit of a column', () => {
  it('that the log does not name is said by keyboard, changes the debrief, and is remembered for these headers', async () => {
    await open('metres.csv', METRES);
    await expect
      .poll(() => rowOf('GNSS Altitude').textContent(), PATIENCE)
      .toContain('Assumed: ft. The header names no unit.');
    expect(await rowOf('Latitude').textContent()).toContain('deg, as usual');
    const judgedInFeet = await page.locator('.answer').locator('h1').textContent();
    expect(judgedInFeet).not.toContain('Stable at');

    const unit = page.getByLabel('Unit of GNSS Altitude');
    expect(await unit.locator('option').allTextContents()).toEqual(['as the header has it', 'ft', 'm']);
    await page.getByLabel('GNSS Altitude is taken for').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('m');
    await expect
      .poll(() => page.locator('h1.summary').textContent(), PATIENCE)
      .toContain('Stable at 1,000 ft');
    expect(await unit.inputValue()).toBe('m');
    expect(await rowOf('GNSS Altitude').textContent()).not.toContain('Assumed');
    // Reading anew neither shuts the table nor takes the keyboard's place away.
    expect(await unit.evaluate((element) => element === element.ownerDocument.activeElement)).toBe(true);

    // Another log, by its content: of the same one its own statements would be remembered.
    await open('metres-again.csv', METRES.split('\n').slice(0, -9).join('\n'));
    await page.locator('h1.summary').waitFor();
    expect(await page.getByLabel('Unit of GNSS Altitude').inputValue()).toBe('m');
    expect(await page.locator('h1.summary').textContent()).toContain('Stable at 1,000 ft');
    expect(Object.values(notes().units ?? {})).toEqual([{ 'GNSS Altitude': 'm' }]);
    expect(notes().mappings).toEqual({});

    await page.getByLabel('Unit of GNSS Altitude').selectOption('');
    await expect.poll(() => rowOf('GNSS Altitude').textContent(), PATIENCE).toContain('Assumed: ft');
    await expect.poll(() => notes().units, PATIENCE).toBeUndefined();
  }, 240_000);

  it('has nothing that axe finds wrong, assumed or said', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await open(`${colorScheme}.csv`, METRES);
      await rowOf('GNSS Altitude').waitFor();
      expect(await violationsIn(page, colorScheme, '.recognised')).toEqual([]);
    }
  }, 240_000);

  it('goes where the column is taken for something that cannot have it', async () => {
    await open('metres.csv', columnInstead(FLIGHT, 'Vertical Speed (ft/min)', 'Climb', 1));
    await page.getByLabel('Unit of Climb').selectOption('ft/s');
    await expect.poll(() => said().textContent(), PATIENCE).toContain('ft/s, as you said');
    await page.getByLabel('Climb is taken for').selectOption('pitchDeg');
    await expect
      .poll(() => page.getByLabel('Unit of Climb').locator('option').allTextContents(), PATIENCE)
      .toEqual(['as the header has it', 'deg', 'rad']);
    expect(await page.getByLabel('Unit of Climb').inputValue()).toBe('');
  }, 240_000);
});

describe('a change that a log cannot be read with', () => {
  it('is told and taken back, and is not remembered', async () => {
    await open('metres.csv', METRES);
    await page.getByLabel('GNSS Altitude is taken for').selectOption('none');
    await page.getByText('no column holds an altitude', { exact: false }).first().waitFor();
    await expect
      .poll(() => page.getByLabel('GNSS Altitude is taken for').inputValue(), PATIENCE)
      .toBe('altitudeGeometricFt');
    await page.getByText('The log is read as before.').waitFor();
    await expect.poll(() => rowOf('GNSS Altitude').textContent(), PATIENCE).toContain('Assumed: ft');
    expect(notes().mappings).toEqual({});
  }, 240_000);

  it('though it was remembered from another log, leaves this one read as its headers say', async () => {
    const two = columnInstead(FLIGHT, 'Pitch (deg)', 'Second', 100);
    await open('two.csv', two);
    await page.getByLabel('Second is taken for').selectOption('altitudePressureFt');
    await expect.poll(() => page.getByLabel('Unit of Second').count(), PATIENCE).toBe(1);
    for (const header of [ALTITUDE, 'Indicated Altitude (ft)']) {
      await page.getByLabel(`${header} is taken for`).selectOption('none');
      await expect.poll(() => page.getByLabel(`Unit of ${header}`).count(), PATIENCE).toBe(0);
    }
    await expect.poll(() => JSON.stringify(notes().mappings), PATIENCE).toContain(`"${ALTITUDE}":null`);
    const empty = two
      .trimEnd()
      .split('\n')
      .map((line, i) => (i === 0 ? line : line.split(',').with(10, '').join(',')))
      .join('\n');
    await open('empty.csv', empty);
    await page.getByText('no row holds a usable altitude in column "Second"', { exact: false }).waitFor();
    await expect
      .poll(() => page.getByLabel(`${ALTITUDE} is taken for`).inputValue(), PATIENCE)
      .toBe('altitudeGeometricFt');
  }, 240_000);
});

describe('what else a log leaves open', () => {
  it('is the start of one that counts seconds, and of no other', async () => {
    const [, ...rows] = METRES.trimEnd().split('\n');
    const startS = Date.parse(rows[0]!.split(',')[0]!) / 1000;
    const counted = rows.map((row) => {
      const [time, ...cells] = row.split(',');
      return [Date.parse(time!) / 1000 - startS, ...cells].join(',');
    });
    await open('counted.csv', ['Elapsed,Latitude,Longitude,GNSS Altitude', ...counted].join('\n'));
    const start = page.getByLabel('Start of the log, UTC');
    await start.fill('noon');
    await start.press('Enter');
    await page.getByText('Write day and time, as 2026-05-01 09:00.').waitFor();
    await start.fill('2026-05-01 09:00');
    await start.press('Enter');
    await expect.poll(() => said().textContent(), PATIENCE).toContain('1 May 2026, 09:00:00');
    expect(await start.inputValue()).toBe('2026-05-01 09:00');
    await open('metres.csv', METRES);
    await page.getByLabel('Zone of its local times').waitFor();
    expect(await page.getByLabel('Start of the log, UTC').count()).toBe(0);
  }, 240_000);

  it('is a zone, and one that is none changes nothing', async () => {
    await open('metres.csv', METRES);
    await page.getByLabel('Zone of its local times').fill('Nowhere');
    await page.getByLabel('Zone of its local times').press('Enter');
    await page.getByText('Write an offset, as +02:00').waitFor();
    expect(await page.getByRole('heading', { name: 'This file cannot be read' }).count()).toBe(0);
  }, 240_000);

  it('are heights that a roll can correct, by the height of the antenna, where there is a roll', async () => {
    await open('flight.csv', FLIGHT);
    const heights = page.getByLabel('Heights of the log');
    await heights.waitFor();
    await heights.selectOption('from-rollout');
    await expect
      .poll(() => page.locator('.sources').textContent(), PATIENCE)
      .toMatch(/every height of the log/);
    const before = await page.locator('.sources').textContent();
    await page.getByLabel('Antenna above the ground, ft (6 if not said)').fill('16');
    await page.getByLabel('Antenna above the ground, ft (6 if not said)').press('Enter');
    await expect
      .poll(() => page.locator('.sources').textContent(), PATIENCE)
      .toContain('an antenna 16 ft above');
    expect(await page.locator('.sources').textContent()).not.toBe(before);
    await open('no-roll.csv', readFileSync('samples/missed-at-minimums.csv', 'utf8'));
    await page.locator('h1.summary').waitFor();
    await page.getByLabel('Zone of its local times').waitFor();
    expect(await page.getByLabel('Heights of the log').count()).toBe(0);
  }, 240_000);
});

describe('a log whose headers name no position, time or altitude', () => {
  const LOG = columnsOf(FLIGHT, [
    ['Date/Time (UTC)', 'Stamp'],
    ['Latitude (deg)', 'Northing pos'],
    ['Longitude (deg)', 'Easting pos'],
    [ALTITUDE, 'Up'],
    ['Groundspeed (kt)', 'Groundspeed (kt)'],
    ['Bank (deg)', 'Bank (deg)'],
    ['Pitch (deg)', 'Pitch (deg)'],
  ]);
  const choose = (words: string, header: string) =>
    page.getByLabel(words, { exact: true }).selectOption(header);

  it('is read once it is said which columns hold them, one after the other, and the next one at once', async () => {
    const file = (name: string, csv = LOG) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(csv) });
    await page.locator('header input[type=file]').setInputFiles([file('named.csv')]);
    await page.getByText('no column holds the position', { exact: false }).waitFor();
    await choose('Column of the latitude', 'Northing pos');
    await choose('Column of the longitude', 'Easting pos');
    expect(await violationsIn(page, 'columns to be named')).toEqual([]);
    await page.getByRole('button', { name: 'Read it so' }).click();
    await page.getByText('no column holds the time', { exact: false }).waitFor();
    await page.getByLabel('Column of the values', { exact: true }).selectOption('Stamp');
    await page.getByRole('button', { name: 'Read it so' }).click();
    await page.getByText('no column holds an altitude', { exact: false }).waitFor();
    await page.getByLabel('Column of the values', { exact: true }).selectOption('Up');
    await page.getByRole('button', { name: 'Read it so' }).click();
    await page.getByText('What was recognised in named.csv').click();
    await expect
      .poll(() => page.getByLabel('Up is taken for').inputValue(), PATIENCE)
      .toBe('altitudeGeometricFt');
    await expect.poll(() => JSON.stringify(notes().mappings), PATIENCE).toContain('"Northing pos":"latDeg"');
    await page.locator('header input[type=file]').setInputFiles([file('next.csv', `${LOG}\n`)]);
    await page.getByText('What was recognised in next.csv').click();
    expect(app.complaints).toEqual([]);
  }, 240_000);
});
