import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import { appForEachTest } from './app-in-page.ts';
import { bringInMine } from './bring-in-mine.ts';

const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
});

const OWN = 'Own: Instrument rating, precision approach';
const AS_KEPT = '(as kept in the library)';
const button = (name: string) => page.getByRole('button', { name, exact: true });
const press = (name: string) => button(name).click();
const choice = (words: string) => page.getByLabel(words, { exact: true });
const chosen = (words: string) => choice(words).locator('option:checked').textContent();
const listed = (words: string) => choice(words).locator('option').allTextContents();
const glidepath = () => page.locator('table.criteria tr', { hasText: 'Glidepath on final' }).textContent();
const file = () => page.getByRole('textbox', { name: /^Its file/ });
const notes = () => JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as Notes;
const SINCE = 'Keep what was stated since';

/** A log that is kept at a facility and by a standard of the user's own. */
async function keepByOwn(): Promise<void> {
  await bringInMine(page);
  await press('Standards');
  await press('Make your own from this');
  await button(OWN).waitFor();
  await page.locator('header input[type=file]').setInputFiles('samples/first-approach.csv');
  await page.locator('h1.summary').waitFor();
  await choice('Facility').selectOption({ label: 'Mine 07' });
  await choice('Standard').selectOption(OWN);
  await expect.poll(glidepath).toContain('within ¾ scale');
  await press('Keep it in the library…');
  await page.getByLabel('Student (empty: not said yet)').fill('Hazel Wren');
  await press('Add Hazel Wren and keep it');
  await page.getByText(/Kept in the library: Hazel Wren, /).waitFor();
  expect(await button(SINCE).count()).toBe(0);
}

async function tightenOwn(): Promise<void> {
  await press('Standards');
  await press(OWN);
  const before = await file().inputValue();
  await file().fill(before.replace(/("glidepathFullScale": )0\.75/, '$10.05'));
  await press('Keep the change');
  await expect.poll(() => notes().standards[0]!.text).toContain('"glidepathFullScale": 0.05');
}

async function renumberMine(): Promise<void> {
  await press('Facilities');
  await page.getByRole('button', { name: 'Mine 07' }).click();
  await page.getByText('Its file', { exact: true }).click();
  await file().fill((await file().inputValue()).replace('"angleDeg": 3', '"angleDeg": 3.1'));
  await press('Keep the change');
  await expect.poll(() => notes().facilities[0]!.text).toContain('"angleDeg": 3.1');
}

async function openFromFlights(): Promise<void> {
  await page.reload();
  await press('Flights');
  await page.getByRole('table', { name: 'Approaches' }).locator('.clipped').first().click();
  await page.locator('h1.summary').waitFor();
  await page.getByText(/Kept in the library: Hazel Wren, /).waitFor();
}

describe('a debrief that is kept by what is the user’s own', () => {
  it('says while it is open that this was changed since, and opens as it was kept', async () => {
    await keepByOwn();
    await tightenOwn();
    await press('first-approach.csv');
    await expect.poll(glidepath).toContain('0.05 scale');
    await button(SINCE).waitFor();
    await renumberMine();

    await openFromFlights();
    await expect.poll(glidepath).toContain('within ¾ scale');
    expect(await chosen('Standard')).toBe(`${OWN} ${AS_KEPT}`);
    expect(await chosen('Facility')).toBe(`Mine 07 ${AS_KEPT}`);
    expect(await page.locator('.notice').count()).toBe(0);
    expect(await button(SINCE).count()).toBe(0);

    // What is stated now is kept by the standard as it was kept.
    await page.getByLabel('Target airspeed on final, kt').fill('95');
    await page.getByLabel('Target airspeed on final, kt').press('Enter');
    await press(SINCE);
    await button(SINCE).waitFor({ state: 'detached' });
    expect(await page.locator('.notice').count()).toBe(0);

    // Neither is the user's own, nor there for anything else.
    await press('Brief');
    const named = async () => (await listed('Facility')).filter((words) => words.includes('Mine 07'));
    await expect.poll(named).toEqual(['Mine 07']);
    await press('Standards');
    await expect.poll(() => page.locator('.standards .side .place', { hasText: OWN }).count()).toBe(1);
    await press('Start');
    await page.getByRole('button', { name: '· went-around.csv' }).click();
    await page.locator('h1.summary').waitFor();
    const all = [...(await listed('Facility')), ...(await listed('Standard'))];
    expect(all).toEqual(expect.arrayContaining(['Mine 07', OWN]));
    expect(all.filter((words) => words.includes(AS_KEPT))).toEqual([]);
    expect([notes().standards.length, notes().facilities.length]).toEqual([1, 1]);

    // By today's it is another debrief, which can be kept in its place.
    await press('first-approach.csv');
    await choice('Standard').selectOption(OWN);
    await expect.poll(glidepath).toContain('0.05 scale');
    await press(SINCE);
    await button(SINCE).waitFor({ state: 'detached' });
    await openFromFlights();
    await expect.poll(glidepath).toContain('0.05 scale');
    expect(await chosen('Standard')).toBe(OWN);
    expect(app.complaints).toEqual([]);
  }, 120_000);
});
