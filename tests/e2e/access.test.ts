import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeCourse } from '../support/library/course.ts';
import { violationsIn } from './app-in-page.ts';
import { flightsOfOneApp } from './flights-page.ts';

const folder = mkdtempSync(join(tmpdir(), 'halfdot-access-'));
const userFolder = join(folder, 'user');
/** Outside the repository, to be looked at after a run. */
const PICTURES = join(tmpdir(), 'halfdot-pictures');

const flights = flightsOfOneApp(folder, userFolder, () => {
  mkdirSync(PICTURES, { recursive: true });
  writeCourse(join(folder, 'Course'), ['Rowan Teal', 'Hazel Wren'], 3);
  const facility = ['--facility', 'samples/petrelholm-ils-07.json'];
  const whose = ['--student-from', 'folder', '--add-students', 'yes', '--target-airspeed', '90'];
  const words = ['import', join(folder, 'Course'), ...facility, ...whose];
  const said = spawnSync(
    process.execPath,
    ['dist/halfdot.js', ...words, '--library', join(userFolder, 'library')],
    {
      encoding: 'utf8',
    },
  );
  expect(said.status, said.stderr).toBe(0);
});
const { app, press } = flights;
let page: Page;
beforeAll(() => {
  page = flights.page;
});

/** Every view that there is, and how it is come to from the one before. */
const VIEWS: readonly (readonly [view: string, come: () => Promise<void>])[] = [
  ['start', () => press('Start')],
  [
    'debrief',
    async () => {
      await press('Start');
      await page
        .getByRole('button', { name: /unstable-and-continued\.csv/ })
        .first()
        .click();
      await page.locator('h1.summary').waitFor();
    },
  ],
  [
    'replay',
    async () => {
      await press('Replay');
      await page.locator('.replay').waitFor();
    },
  ],
  [
    'flights',
    async () => {
      await press('Flights');
      await page.getByRole('table', { name: 'Approaches' }).waitFor();
    },
  ],
  [
    'lesson',
    async () => {
      await page
        .getByRole('button', { name: /^Lesson of / })
        .first()
        .click();
      await page.getByLabel('Objective').waitFor();
    },
  ],
  [
    'progress',
    async () => {
      await press('Progress');
      await page.locator('table.needs').waitFor();
    },
  ],
  [
    'student',
    async () => {
      await page.getByLabel('Show names').check();
      await page.locator('table.needs').getByRole('button', { name: 'Rowan Teal' }).click();
      await page.locator('.one-sheet svg.sheet').waitFor();
    },
  ],
  [
    'facility',
    async () => {
      await press('Facilities');
      await press('Petrelholm ILS 07');
      await page.getByRole('heading', { name: 'Complete: it can be used' }).waitFor();
    },
  ],
  ['records', () => press('From official records…')],
  ['brief', () => press('Brief')],
  [
    'standards',
    async () => {
      await press('Standards');
      await page.getByRole('heading', { level: 1 }).waitFor();
    },
  ],
];

async function everyView(look: (view: string) => Promise<void>): Promise<void> {
  for (const [view, come] of VIEWS) {
    await come();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await look(view);
  }
  // As it was, for those that come after.
  await press('Progress');
  await page.getByLabel('Show names').uncheck();
}

/** How far the page goes beyond the window to the right, CSS pixels. */
const beyond = () =>
  page.evaluate<number>('document.documentElement.scrollWidth - document.documentElement.clientWidth');

describe('every view', () => {
  it('is used at twice its size, in light and in dark, and scrolls to one side only', async () => {
    // A window of 1280 by 800 at 200 % has so many CSS pixels (WCAG 2.2, 1.4.4 and 1.4.10, from memory).
    await page.setViewportSize({ width: 640, height: 400 });
    const found: string[] = [];
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await everyView(async (view) => {
        const tooWide = await beyond();
        if (tooWide > 0) found.push(`${view} at 200 %: ${tooWide} px too wide`);
        found.push(...(await violationsIn(page, `${view} at 200 %, ${colorScheme}`)));
        await page.screenshot({ path: join(PICTURES, `zoom-${view}-${colorScheme}.png`) });
      });
    }
    await page.emulateMedia({ colorScheme: 'light' });
    await page.setViewportSize({ width: 1280, height: 800 });
    expect(found).toEqual([]);
  }, 300_000);

  it('moves nothing by itself where somebody asked for that', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await everyView(async (view) => {
      const moving = await page.evaluate('document.getAnimations().length');
      expect([view, moving]).toEqual([view, 0]);
    });
    await page.emulateMedia({ reducedMotion: null });
  }, 120_000);

  it('keeps what it says in the colours of who chose their own', async () => {
    await page.emulateMedia({ forcedColors: 'active' });
    await everyView(async (view) => {
      expect(await violationsIn(page, `${view} in forced colours`)).toEqual([]);
      await page.screenshot({ path: join(PICTURES, `forced-${view}.png`) });
    });
    await page.emulateMedia({ forcedColors: null });
    expect(app.complaints).toEqual([]);
  }, 180_000);
});
