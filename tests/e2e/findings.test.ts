import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { appForEachTest, violationsIn } from './app-in-page.ts';

const LOG = 'samples/unstable-and-continued.csv';
const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
});

const findings = () => page.getByRole('region', { name: 'What to say' });
const first = () => findings().locator('ol li').first();
const press = (name: string) => first().getByRole('button', { name }).click();
const kept = () => readFileSync(`${app.userFolder}/notes.json`, 'utf8');

async function open(): Promise<void> {
  await page.locator('header input[type=file]').setInputFiles(LOG);
  await page.locator('h1.summary').waitFor();
  await page.getByLabel('Target airspeed on final, kt').fill('90');
  await page.getByLabel('Target airspeed on final, kt').press('Enter');
  // Until then another one stands first, of the debrief before that was said.
  await expect.poll(() => first().textContent()).toContain('Not stable at 500 ft');
}

async function write(button: string, label: string, words: string): Promise<void> {
  await press(button);
  await page.getByLabel(label).fill(words);
  await page.getByRole('button', { name: 'Keep these words' }).click();
}

describe('what an instructor would say', () => {
  it('stands with its moment and an exercise, and leads to the moment on the sheet', async () => {
    await open();
    // The gravest thing right below the sentence, not in the folded working alone.
    expect(await page.locator('h1.summary + p.notice').textContent()).toMatch(
      /^A safety limit was crossed: /,
    );
    expect(await first().textContent()).toMatch(/Practise: /);
    const leads = first().getByRole('button', { name: /^\d\d:\d\d:\d\d on the sheet$/ });
    const clock = (await leads.textContent())!.slice(0, 8);
    expect(await violationsIn(page, 'findings')).toEqual([]);
    await leads.click();
    await expect.poll(() => page.locator('.now').first().textContent()).toContain(clock);
  });

  it('is kept, said otherwise and answered, and is still so when the log is opened again', async () => {
    await open();
    await press('It stands');
    await first().getByRole('button', { name: '✓ It stands', pressed: true }).waitFor();
    await write('Say it otherwise…', 'In your words', 'Begin the turn at one dot.');
    await expect.poll(() => first().textContent()).toContain('Begin the turn at one dot.');
    await write('The student’s answer…', 'The student’s answer', 'I looked at the chart.');
    await expect.poll(() => first().textContent()).toContain('The student: I looked at the chart.');
    await expect.poll(kept).toContain('I looked at the chart.');
    page = await app.open();
    await page.getByRole('button', { name: /^unstable-and-continued.csv/ }).click();
    await first().waitFor();
    expect(await first().textContent()).toMatch(
      /Begin the turn at one dot\..*The student: I looked at the chart\./,
    );
    // What is handed over says it so as well.
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the page' }).click(),
    ]);
    const html = readFileSync(await download.path(), 'utf8');
    expect(html).toContain('Begin the turn at one dot.');
    expect(html).toContain('The student: I looked at the chart.');
  });

  it('is taken off and taken back, and the words are taken back where they are emptied', async () => {
    await open();
    const title = (await first().locator('strong').textContent())!.replace(/\.$/, '');
    const text = await first().locator('p').first().textContent();
    await write('Say it otherwise…', 'In your words', 'Other words.');
    await expect.poll(() => first().textContent()).toContain('Other words.');
    await write('Say it otherwise…', 'In your words', '');
    await expect.poll(() => first().locator('p').first().textContent()).toBe(text);
    await press('Take it off');
    const off = findings().locator('details').filter({ hasText: 'Taken off (1)' });
    await off.locator('summary').click();
    expect(await off.textContent()).toContain(title);
    await off.getByRole('button', { name: 'Take it back' }).click();
    await expect.poll(() => first().textContent()).toContain(title);
    expect(app.complaints).toEqual([]);
  });
});
