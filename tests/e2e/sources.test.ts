import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { runwayTableText, SAMPLE_RUNWAYS } from '../support/samples/runway-table.ts';
import { appForEachTest, violationsIn } from './app-in-page.ts';
import { pdfPages } from './pdf-pages.ts';

const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
  page.setDefaultTimeout(25_000);
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const choose = async (button: string, path: string) => {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(button)]);
  await chooser.setFiles(path);
};
const complete = () => page.getByRole('heading', { name: 'Complete: it can be used', exact: true }).waitFor();
const openLog = (path: string) => page.locator('header input[type=file]').setInputFiles(path);
const notes = () =>
  JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as { facilities: { text: string }[] };
/** The facility at a place among those on the disk: notes are written a moment after they are made. */
async function keptFacility(place: number) {
  await expect.poll(() => notes().facilities.length).toBeGreaterThan(place);
  return JSON.parse(notes().facilities[place]!.text);
}
const values = (text: string) => page.locator('.draft-values tr').filter({ hasText: text });

async function takeFromRecords(): Promise<void> {
  await press('Facilities');
  await press('From official records…');
  await choose('Choose the file…', 'samples/records.txt');
  await page.getByText(/^Cycle 2602, 2026-02-19 to 2026-03-18: 2 localizers/).waitFor();
  await page.getByLabel('Airport, runway or ident').fill('petrel 07');
  await press('XPEH ILS 07');
  await values('Threshold crossing height').waitFor();
}

describe('a facility that nobody types', () => {
  it('comes out of official records, and a log is debriefed and handed over by it', async () => {
    await takeFromRecords();
    expect(await values('Threshold crossing height').textContent()).toContain('official record, cycle 2602');
    expect(await violationsIn(page, 'a draft from records')).toEqual([]);
    await press('Take it over');
    await complete();
    expect(await keptFacility(0)).toMatchObject({
      name: 'XPEH ILS 07',
      origin: { sources: { 'glidepath.angleDeg': expect.stringContaining('official record') } },
    });
    expect(await violationsIn(page, 'a facility out of records')).toEqual([]);

    await openLog('samples/first-approach.csv');
    await page.locator('h1.summary').waitFor();
    await page.getByLabel('Facility', { exact: true }).selectOption({ label: 'XPEH ILS 07' });
    await expect.poll(() => page.locator('pre.page').first().textContent()).toContain('XPEH ILS 07');
    expect(await page.locator('h1.summary').textContent()).toContain('Stable at 1,000 ft and 500 ft');
    await page.evaluate(() => {
      window.print = () => {};
    });
    await press('Print');
    await page.emulateMedia({ media: 'print' });
    const pages = pdfPages(await page.pdf({ format: 'A4' }));
    expect(pages.join('')).toContain('XPEHILS07');
    expect(app.complaints).toEqual([]);
  });

  it('stays known: the file is read once, its index is kept, and its cycle is told to be over', async () => {
    await takeFromRecords();
    expect(await page.locator('.source-issues').first().textContent()).toContain('no longer in force');
    await expect
      .poll(() => readFileSync(join(app.userFolder, 'records.json'), 'utf8').length)
      .toBeGreaterThan(1000);
    await page.reload();
    await press('Facilities');
    await press('From official records…');
    await page.getByRole('button', { name: 'XWHN ILS 13', exact: true }).waitFor();
    expect(await page.getByRole('button', { name: 'XDOS LOC 22' }).count()).toBe(0);
    await page.getByText('without a glidepath, which is not supported').waitFor();
    await choose('Read another file…', 'samples/first-approach.csv');
    await page.getByRole('alert').filter({ hasText: 'no record of ARINC 424' }).waitFor();
  });

  it('is put beside a table of runways: each difference is shown, and one of both chosen', async () => {
    await takeFromRecords();
    await press('Take it over');
    await complete();
    const table = join(app.userFolder, 'runways.csv');
    writeFileSync(table, runwayTableText(SAMPLE_RUNWAYS).replaceAll(',34,', ',64,'));
    await press('From a table of runways…');
    await choose('Choose the file…', table);
    await page.getByLabel('Ident of the airport').fill('zzpe');
    await press('ZZPE');
    await page.getByRole('button', { name: /^ZZPE 0?7$/ }).click();
    await page.getByLabel('Put beside one of your own').selectOption({ label: 'XPEH ILS 07' });
    const difference = page.getByRole('group').filter({ hasText: 'elevation of the threshold' });
    await difference.waitFor();
    expect(await violationsIn(page, 'two sources')).toEqual([]);
    await difference.getByLabel('XPEH ILS 07').check();
    await press('Take over the two as one');
    await complete();
    const { runway, glidepath, origin } = await keptFacility(1);
    expect(runway.threshold.elevationFt).toBe(34);
    expect(glidepath.angleDeg).toBe(3);
    expect(origin.sources['runway.threshold.elevationFt']).toContain('official record');
    expect(origin.sources['runway.threshold.latDeg']).toContain('open airports dataset');
    expect(app.complaints).toEqual([]);
  });

  it('is drafted from a landing, confirmed value by value, and never judges that log', async () => {
    const elsewhere = join(app.userFolder, 'elsewhere.csv');
    const far = (text: string) => text.replaceAll(/,-31\.(\d+)/g, ',-28.$1');
    writeFileSync(elsewhere, far(readFileSync('samples/first-approach.csv', 'utf8')));
    await openLog(elsewhere);
    await page.getByRole('heading', { name: 'Which facility?' }).waitFor();
    const way = (await page.locator('section.empty > button').boundingBox())!;
    const below = (await page.getByText('Where it landed, a draft').boundingBox())!;
    expect(below.y - (way.y + way.height)).toBeGreaterThanOrEqual(10);
    await press('Draft one from its landing');
    await page.getByText('1,000 ft were assumed').waitFor();
    await press('Take it over');
    await page.getByLabel('Name', { exact: true }).fill('Elsewhere 07');
    await page.getByLabel('Runway designator').fill('07');
    await page.getByText('A draft from a landing.').waitFor();
    await press('Keep the change');
    await press('Brief');
    await page.getByLabel('Facility', { exact: true }).selectOption({ label: 'Elsewhere 07' });
    await page.getByText('Elsewhere 07 is a draft from a landing, and nobody has confirmed').waitFor();
    expect(await page.locator('.briefing').count()).toBe(0);
    const other = join(app.userFolder, 'another.csv');
    writeFileSync(other, far(readFileSync('samples/went-around.csv', 'utf8')));
    await openLog(other);
    await page
      .getByText('Check the facility first. This facility is a draft from a landing: 6 values')
      .waitFor();
    await page.getByText('Not graded: the facility is a draft from a landing').first().waitFor();
    await press('Facilities');
    await page.getByText('A draft from a landing.').waitFor();
    const confirm = page.getByRole('button', { name: /^Confirm: / });
    const open = await confirm.count();
    expect(open).toBeGreaterThan(5);
    for (let left = open; left > 0; left--) {
      await confirm.first().click();
      await expect.poll(() => confirm.count()).toBe(left - 1);
    }
    await press('Keep the change');
    await complete();
    await expect.poll(() => page.getByText('A draft from a landing.').count()).toBe(0);
    await page.getByRole('button', { name: 'elsewhere.csv', exact: true }).click();
    await page.getByLabel('Facility', { exact: true }).selectOption({ label: 'Elsewhere 07 (not flown to)' });
    await page.getByText('Elsewhere 07 was drafted from a landing in this log').waitFor();
    await page.getByRole('button', { name: 'another.csv', exact: true }).click();
    await page.locator('h1.summary').waitFor();
    expect(await page.getByText('Check the facility first.').count()).toBe(0);
    expect(await page.locator('pre.page').first().textContent()).toContain('Elsewhere 07');
  }, 120_000);
});
