import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { csvText } from '../support/files/csv.ts';
import { englishLayout } from '../support/files/csv-layouts.ts';
import { EXACT, recordFlight } from '../support/files/logged-fix.ts';
import { fly } from '../support/flight/fly.ts';
import { PETRELHOLM } from '../support/samples/petrelholm.ts';
import { threeInOneLog } from '../support/scenarios/approaches.ts';
import { appForEachTest, violationsIn } from './app-in-page.ts';

/** Outside the repository, to be looked at after a run. */
const PICTURES = join(tmpdir(), 'halfdot-pictures');

beforeAll(() => void mkdirSync(PICTURES, { recursive: true }));
const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
});
afterEach(() => expect(app.complaints).toEqual([]));

const picture = (name: string) => page.screenshot({ path: join(PICTURES, `${name}.png`) });
const clock = () => page.locator('.now .clock span').first().textContent();
const nowOf = (words: string) =>
  page.locator('.now .values > div', { hasText: words }).locator('dd').textContent();

async function openSample(file: string): Promise<void> {
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.getByRole('button', { name: new RegExp(file.replace('.', '\\.')) }).click();
  await page.locator('h1.summary').waitFor();
}
const replay = () => page.getByRole('button', { name: 'Replay', exact: true }).click();

describe('the keys of the replay', () => {
  it('work as soon as it is shown, wherever the keyboard is, and never in a field', async () => {
    await openSample('went-around.csv');
    await replay();
    const before = await clock();
    await page.keyboard.press('Shift+ArrowRight');
    expect(await clock()).not.toBe(before);
    await page.keyboard.press('End');
    const end = await clock();
    await page.getByLabel('Look').focus();
    await page.keyboard.press('Home');
    expect(await clock()).toBe(end);
  });
});

describe('a student is debriefed', () => {
  it('from the debrief to the worst moment, and on from there by keys alone', async () => {
    await openSample('unstable-and-continued.csv');
    await page.locator('table.criteria tr', { hasText: 'Glidepath on final' }).getByRole('button').click();
    await page.locator('.replay').waitFor();
    // The worst moment outside stands under the cursor, and is told as the debrief told it.
    const told = await page.locator('.now .deviations dd').nth(1).textContent();
    expect(told).toMatch(/^high 2\.\d · \d+ ft$/);
    await picture('worst-moment');

    await page.locator('.sheet-holder').focus();
    await page.keyboard.press('Home');
    expect(await clock()).toBe('14:29:11');
    await page.keyboard.press('Shift+ArrowRight');
    expect(await clock()).toBe('14:29:21');
    await page.keyboard.press('ArrowLeft');
    expect(await clock()).toBe('14:29:20');
    await page.keyboard.press('ArrowDown');
    expect(await clock()).toBe('14:30:07');
    await page.keyboard.press('End');
    expect(await page.locator('.now').textContent()).toContain('Below minimums: visual');
    await page.keyboard.press('Home');
    await page.keyboard.press(' ');
    await expect.poll(clock, { timeout: 10_000 }).not.toBe('14:29:11');
    await page.keyboard.press(' ');
    const stopped = await clock();
    await page.waitForTimeout(400);
    expect(await clock()).toBe(stopped);
  });

  it('by what is outside, by an event, and by a press on the sheet', async () => {
    await openSample('unstable-and-continued.csv');
    await replay();
    await page.getByRole('button', { name: /Airspeed on final: \+28 kt, 135 s/ }).click();
    expect(await nowOf('Airspeed')).toBe('118 kt');
    await page.getByRole('button', { name: /500 ft gate/ }).click();
    expect(await nowOf('Altimeter')).toBe('540 ft');
    const before = await nowOf('Miles to go');
    await page.evaluate('scrollTo(0, 0)');
    const box = (await page.locator('.sheet-holder').boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.3, box.y + 200);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.4, box.y + 200);
    await page.mouse.up();
    expect(await nowOf('Miles to go')).not.toBe(before);
    const line = (await page.locator('.cursor line').boundingBox())!;
    expect(Math.abs(line.x - (box.x + box.width * 0.4))).toBeLessThan(2);
  });

  it('sees needles, feet, time and the last miles, and what the log lacks is not offered', async () => {
    await openSample('unstable-and-continued.csv');
    await replay();
    expect(await page.getByLabel('Recorded needles').count()).toBe(0);
    await page.getByLabel('As needles').check();
    await page.locator('.needles').waitFor();
    await page.getByLabel('Needles in').selectOption('feet');
    await page.getByText('Localizer ft').waitFor();
    await page.getByLabel('Over', { exact: true }).selectOption('time');
    await page.getByText('time, UTC').waitFor();
    await page.getByLabel('Other values').check();
    await page.getByText('Pitch', { exact: false }).first().waitFor();
    await picture('time-feet-needles');
    await page.getByLabel('Over', { exact: true }).selectOption('distance');
    await page.getByRole('button', { name: 'Last 3 miles' }).click();
    expect(await page.locator('svg.sheet').textContent()).not.toContain('Localizer alive');
    await page.getByRole('button', { name: 'Whole approach' }).click();
    expect(await page.locator('svg.sheet').textContent()).toContain('Localizer alive');
  });
});

describe('practice approaches are assessed', () => {
  it('three in one log, alone: each with its own answer, and the others laid over it', async () => {
    const fixes = recordFlight(fly(threeInOneLog(PETRELHOLM)), { ...EXACT, rateHz: 1 });
    const buffer = Buffer.from(csvText(englishLayout(), fixes));
    await page
      .locator('header input[type=file]')
      .setInputFiles({ name: 'practice.csv', mimeType: 'text/csv', buffer });
    await page.locator('h1.summary').waitFor();
    const approaches = page.getByRole('navigation', { name: 'Approaches' }).getByRole('button');
    expect(await approaches.count()).toBe(3);
    await approaches.nth(2).click();
    expect(await page.locator('h1.summary').textContent()).toMatch(/landed\.$/);
    await replay();
    await page.getByRole('checkbox', { name: /Approach 1,/ }).check();
    await page.getByRole('checkbox', { name: /Approach 2,/ }).check();
    expect(await page.locator('.sheet .other-0').count()).toBeGreaterThan(3);
    expect(await page.locator('.sheet .other-1').count()).toBeGreaterThan(3);
    await picture('three-in-one-log');
  });

  it('one after the other, and laid over one another', async () => {
    await openSample('touch-and-go-then-again.csv');
    await replay();
    const first = await page.locator('h1.summary').textContent();
    await page.getByRole('navigation', { name: 'Approaches' }).getByRole('button').nth(1).click();
    expect(await page.locator('h1.summary').textContent()).not.toBe(first);
    await page.getByLabel(/Approach 1,/).check();
    expect(await page.locator('.sheet .other').count()).toBeGreaterThan(3);
    await picture('laid-over');
  });

  it('against an earlier log at the same facility', async () => {
    await openSample('went-around.csv');
    await openSample('steep-and-high.csv');
    await openSample('first-approach.csv');
    await replay();
    await page.getByLabel(/went-around\.csv: Approach 1/).check();
    expect(await page.locator('.sheet .other text').first().textContent()).toBe('A');
    // Flown elsewhere: it has nothing to do with these miles.
    expect(await page.getByRole('checkbox', { name: /steep-and-high\.csv/ }).count()).toBe(0);
  });

  it('with the cursor where it was when a statement made the debrief anew', async () => {
    await openSample('first-approach.csv');
    await replay();
    await page.getByRole('button', { name: /1,000 ft gate/ }).click();
    const at = await clock();
    await page.getByRole('button', { name: 'Debrief', exact: true }).click();
    await page.getByLabel('Target airspeed on final').fill('70');
    await page.getByLabel('Target airspeed on final').press('Enter');
    await page.locator('tr.not-met', { hasText: 'Airspeed on final' }).waitFor();
    await replay();
    expect(await clock()).toBe(at);
    await page
      .getByRole('button', { name: /Airspeed on final: \+\d+ kt/ })
      .first()
      .waitFor();
  });
});

describe('the replay', () => {
  it.each(['light', 'dark'] as const)(
    'has nothing that axe finds, %s, and is read at 1920 × 1080 too',
    async (scheme) => {
      await page.emulateMedia({ colorScheme: scheme });
      await openSample('unstable-and-continued.csv');
      await replay();
      await page.getByLabel('As needles').check();
      expect(await violationsIn(page, 'replay')).toEqual([]);
      await page.setViewportSize({ width: 1920, height: 1080 });
      await page.waitForTimeout(200);
      await picture(`replay-1920-${scheme}`);
      const sheet = (await page.locator('svg.sheet').boundingBox())!;
      const player = (await page.locator('.player').boundingBox())!;
      // All of the sheet stands above the player, without scrolling.
      expect(sheet.y + sheet.height).toBeLessThan(player.y + 4);
    },
  );
});
