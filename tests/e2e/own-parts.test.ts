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

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const file = () => page.getByLabel('Its file, as the JSON text that it is');
const choice = () => page.getByLabel('Facility', { exact: true });
const chosen = () => choice().locator('option:checked').textContent();
const told = () => page.locator('pre.page').first().textContent();
const notes = () => JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as Notes;

async function openMine(): Promise<void> {
  await bringInMine(page);
  await page.getByText('Its file', { exact: true }).click();
}

describe('a facility of the user’s own', () => {
  it('that is not complete any more, or removed, takes its debrief along, and that is said', async () => {
    await openMine();
    await page.locator('header input[type=file]').setInputFiles('samples/first-approach.csv');
    await page.locator('h1.summary').waitFor();
    await choice().selectOption({ label: 'Mine 07' });
    await expect.poll(told).toContain('Mine 07');

    await press('Facilities');
    await page.getByText('Its file', { exact: true }).click();
    await file().fill((await file().inputValue()).replace('"angleDeg": 3', '"angleDeg": 33'));
    await press('Keep the change');
    await press('first-approach.csv');
    await page.getByRole('heading', { name: 'No debrief could be made' }).waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('The facility, line');
    expect(await chosen()).toBe('Mine 07 (not complete)');
    expect(await page.locator('h1.summary').count()).toBe(0);
    await expect.poll(() => notes().recents[0]).not.toHaveProperty('summary');

    await press('Facilities');
    await press('Remove…');
    await press('Remove');
    await page.getByText('The facility at which first-approach.csv was debriefed is not there').waitFor();
    await press('first-approach.csv');
    await expect.poll(told).toContain('Petrelholm ILS 07');
    expect(await chosen()).toBe('Petrelholm ILS 07');
    expect(app.complaints).toEqual([]);
  }, 60_000);

  it('is not taken over where it is too long, and what is said afterwards is still kept', async () => {
    await openMine();
    const before = await file().inputValue();
    await file().fill(before.replace('Mine 07', 'x'.repeat(100_100)));
    await page.getByText('This was not taken over: a facility has at most 100,000 characters.').waitFor();
    expect(await file().inputValue()).toBe(before);
    await page.getByLabel('Look').selectOption('dark');
    await expect.poll(() => notes().settings.theme).toBe('dark');
    await page.getByLabel('Name', { exact: true }).fill('y'.repeat(100_100));
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('Mine 07');
    await page.getByLabel('Look').selectOption('light');
    await expect.poll(() => notes().settings.theme).toBe('light');
  }, 60_000);
});

it('what is typed at a standard of the user’s own is there when the page is loaded anew in the same moment', async () => {
  await press('Standards');
  await press('Make your own from this');
  const text = page.getByRole('textbox', { name: 'Its file' });
  await text.waitFor();
  await text.fill('{ "half a');
  await page.reload();
  await press('Standards');
  await page.getByRole('button', { name: /^Own: / }).click();
  expect(await text.inputValue()).toBe('{ "half a');
  await page.getByText('change not kept yet').waitFor();
  await press('Undo it');
  expect(await text.inputValue()).toContain('"halfdot-standard/1"');
  await expect.poll(() => Object.keys(notes().drafts ?? {})).toEqual([]);
  expect(app.complaints).toEqual([]);
}, 60_000);
