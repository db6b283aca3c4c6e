import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import { appForEachTest, showApp, violationsIn } from './app-in-page.ts';
import { serveAppIn } from './served-app.ts';

const LOG = 'samples/first-approach.csv';
/** The machine that tests may be doing something else as well. */
const soon = <T>(value: () => T) => expect.poll(value, { timeout: 20_000 });

const app = appForEachTest();
const { userFolder } = app;
let page: Page;
beforeEach(() => {
  page = app.page;
});

/** A process of its own: nothing is remembered but what is on the disk. */
async function again(): Promise<void> {
  await app.stop();
  page = await app.start();
}

const open = (...files: (string | { name: string; mimeType: string; buffer: Buffer })[]) =>
  page.locator('header input[type=file]').setInputFiles(files as string[]);
const summary = () => page.locator('h1.summary');
const lately = () => page.getByRole('region', { name: 'Opened lately' });
const entry = (name: string) => lately().getByRole('button', { name: new RegExp(`^${name}`) });
const notes = () => JSON.parse(readFileSync(join(userFolder, 'notes.json'), 'utf8')) as Notes;
const copies = () => {
  try {
    return readdirSync(join(userFolder, 'logs'));
  } catch {
    return [];
  }
};
const say = async (label: string, text: string) => {
  await page.getByLabel(label).fill(text);
  await page.getByLabel(label).press('Enter');
};
const airspeed = () => page.locator('table.criteria tr', { hasText: 'Airspeed on final' }).textContent();

/** Opens the log by its file, and waits until it is copied. */
async function opened(): Promise<void> {
  await open(LOG);
  await summary().waitFor();
  await soon(copies).toHaveLength(1);
}

async function stateThings(): Promise<void> {
  await say('Target airspeed on final, kt', '90');
  await soon(airspeed).toContain('target of 90 kt');
  await page.getByLabel('Conditions').selectOption('simulated');
  await page.getByLabel('Standard').selectOption('airline-transport');
  await say('Wind, as 250/18', '250/18');
  await page.getByLabel('Facility').selectOption('choughfell-ils-32.json');
  await page.getByLabel('Positions come from').selectOption('plain');
  // The last of all, said just before the page goes.
  await page.getByLabel('One engine out').waitFor();
  await page.getByLabel('One engine out').check();
}

async function expectStated(): Promise<void> {
  await page.getByLabel('One engine out').waitFor();
  expect(await page.getByLabel('Target airspeed on final, kt').inputValue()).toBe('90');
  expect(await page.getByLabel('Conditions').inputValue()).toBe('simulated');
  expect(await page.getByLabel('Standard').inputValue()).toBe('airline-transport');
  expect(await page.getByLabel('Wind, as 250/18').inputValue()).toBe('250/18');
  expect(await page.getByLabel('Facility').inputValue()).toBe('choughfell-ils-32.json');
  expect(await page.getByLabel('Positions come from').inputValue()).toBe('plain');
  expect(await page.getByLabel('One engine out').isChecked()).toBe(true);
}

describe('a log opened lately', () => {
  it('opens again in another run, with everything that was stated, though its file has gone', async () => {
    const file = join(userFolder, 'lesson.csv');
    writeFileSync(file, readFileSync(LOG));
    await open(file);
    await summary().waitFor();
    await soon(copies).toHaveLength(1);
    await stateThings();
    rmSync(file);
    // The page goes in the moment of the last word; its host, once it has heard it.
    await page.close();
    await soon(() => JSON.stringify(notes())).toContain('"engineOut":true');
    await again();
    await soon(() => entry('lesson.csv').textContent()).toMatch(/Choughfell.*opened today at \d\d:\d\d/);
    await entry('lesson.csv').click();
    await expectStated();
    await page.getByText('What you stated last time was taken over.').waitFor();
    expect(app.complaints).toEqual([]);
  }, 120_000);

  it('is shown with the first sentence of its debrief, and samples are not among them', async () => {
    await page
      .getByRole('button', { name: /Turned late/ })
      .first()
      .click();
    await summary().waitFor();
    await opened();
    const sentence = (await summary().textContent())!;
    await page.getByRole('button', { name: 'Start' }).click();
    expect(await lately().getByRole('listitem').count()).toBe(1);
    expect(await entry('first-approach.csv').textContent()).toContain(sentence);
    await entry('first-approach.csv').click();
    // It is open already: shown, and not opened twice.
    await summary().waitFor();
    expect(await page.getByRole('button', { name: 'first-approach.csv', exact: true }).count()).toBe(2);
  });

  it('opened by its file under another name takes over what was stated; afresh and back lose nothing', async () => {
    await opened();
    await say('Target airspeed on final, kt', '90');
    await page.getByLabel('Positions come from').selectOption('phone');
    await soon(() => notes().recents[0]?.settings).toEqual({ receiver: 'phone' });
    await again();
    await open({ name: 'renamed.csv', mimeType: 'text/csv', buffer: readFileSync(LOG) });
    await soon(airspeed).toContain('target of 90 kt');
    await page.getByRole('button', { name: 'Start afresh' }).click();
    await soon(airspeed).toContain('no target airspeed was given');
    expect(await page.getByLabel('Target airspeed on final, kt').inputValue()).toBe('');
    expect(await page.getByLabel('Positions come from').inputValue()).toBe('');
    await soon(() => notes().recents[0]?.stated?.targetAirspeedKt).toBeNull();
    await page.getByRole('button', { name: 'Take it over' }).click();
    await soon(airspeed).toContain('target of 90 kt');
    expect(await page.getByLabel('Positions come from').inputValue()).toBe('phone');
    expect(notes().recents.map(({ name }) => name)).toEqual(['renamed.csv']);
    await soon(() => notes().recents[0]?.stated?.targetAirspeedKt).toBe(90);
  }, 120_000);

  it('says nothing of last time where nothing was stated', async () => {
    await opened();
    await again();
    await entry('first-approach.csv').click();
    await summary().waitFor();
    expect(await page.locator('.last-time').count()).toBe(0);
  });

  it('is not remembered with settings that it cannot be read with', async () => {
    await opened();
    await page.locator('.recognised summary').click();
    await page.getByLabel(/Zone of its local times/).fill('Nowhere/Else');
    await page.getByLabel(/Zone of its local times/).press('Enter');
    await page.waitForTimeout(500);
    await again();
    await entry('first-approach.csv').click();
    await summary().waitFor();
  });

  it('whose copy has gone says so, and takes over what was stated when its file is opened', async () => {
    await opened();
    await say('Target airspeed on final, kt', '90');
    await soon(() => notes().recents[0]?.stated?.targetAirspeedKt).toBe(90);
    await page.getByRole('button', { name: 'Close first-approach.csv' }).click();
    // While the page is open: it is found out when it is asked for.
    rmSync(join(userFolder, 'logs', copies()[0]!));
    await entry('first-approach.csv').click();
    await page.getByText('The copy of this log is not there any more. Open the file itself.').waitFor();
    await lately().getByText('There is no copy of this log here.').waitFor();
    await again();
    await lately().getByText('There is no copy of this log here.').waitFor();
    await open(LOG);
    await soon(airspeed).toContain('target of 90 kt');
    await soon(copies).toHaveLength(1);
  }, 120_000);

  it('whose copy is damaged is refused with a sentence', async () => {
    await opened();
    await page.getByRole('button', { name: 'Close first-approach.csv' }).click();
    writeFileSync(join(userFolder, 'logs', copies()[0]!), 'something else');
    await entry('first-approach.csv').click();
    await page.getByText('The copy of this log is damaged').waitFor();
  });

  it('that is too large to be copied is debriefed, and said to be so', async () => {
    const [header, ...rows] = readFileSync(LOG, 'utf8').trimEnd().split('\n');
    const long = join(userFolder, 'long.csv');
    // Spaces at the ends of lines: large on the disk, and read in a moment.
    writeFileSync(long, [header, ...rows.map((row) => row + ' '.repeat(90_000))].join('\n'));
    await open(long);
    await page.getByText(/Halfdot has no copy of this log\. It is 55 MB/).waitFor({ timeout: 50_000 });
    expect(copies()).toEqual([]);
    await soon(() => notes().recents.map(({ name }) => name)).toEqual(['long.csv']);
  }, 90_000);
});

describe('the list', () => {
  it('is taken apart by the keyboard, asked once, and the copies go with it', async () => {
    await opened();
    await open({
      name: 'other.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(`${readFileSync(LOG, 'utf8')}\n`),
    });
    await soon(copies).toHaveLength(2);
    await page.getByRole('button', { name: 'Start' }).click();
    await tabTo('Take other.csv off the list');
    await page.keyboard.press('Enter');
    await page.getByRole('group', { name: /^Forget other\.csv/ }).waitFor();
    expect(await focused()).toBe('Leave it');
    await page.keyboard.press('Enter');
    await soon(focused).toBe('Take other.csv off the list');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('Forget it');
    await page.keyboard.press('Enter');
    await soon(copies).toHaveLength(1);
    expect(await focused()).toBe('Opened lately');
    expect(notes().recents.map(({ name }) => name)).toEqual(['first-approach.csv']);
    await tabTo('Forget all…');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await soon(copies).toEqual([]);
    await soon(() => lately().count()).toBe(0);
    expect(notes().recents).toEqual([]);
  }, 120_000);

  it('does not take up again what was forgotten while it is open', async () => {
    await opened();
    writeFileSync(join(userFolder, 'logs', `${'0'.repeat(64)}.gz`), 'of a list that was lost');
    await page.getByRole('button', { name: 'Start' }).click();
    await page.getByRole('button', { name: 'Forget all…' }).click();
    await page.getByRole('button', { name: 'Forget all', exact: true }).click();
    await soon(copies).toEqual([]);
    await page.getByRole('button', { name: 'first-approach.csv', exact: true }).first().click();
    await say('Target airspeed on final, kt', '90');
    await soon(airspeed).toContain('target of 90 kt');
    await page.waitForTimeout(300);
    expect(notes().recents).toEqual([]);
  });

  it('holds what two windows of two processes have opened and stated', async () => {
    const second = await serveAppIn(userFolder);
    try {
      const first = page;
      await opened();
      const other = await first.context().newPage();
      await showApp(other, second);
      await say('Target airspeed on final, kt', '90');
      await soon(airspeed).toContain('target of 90 kt');
      page = other;
      await open('samples/went-around.csv');
      await summary().waitFor();
      await soon(copies).toHaveLength(2);
      page = first;
      await say('Vref, kt', '70');
      await soon(
        () => notes().recents.find(({ name }) => name === 'first-approach.csv')?.stated,
      ).toMatchObject({ targetAirspeedKt: 90, vrefKt: 70 });
      expect(notes().recents.map(({ name }) => name)).toEqual(['went-around.csv', 'first-approach.csv']);
      expect(await first.locator('.notice').count()).toBe(0);
      expect(await other.locator('.notice').count()).toBe(0);
    } finally {
      await second.stop();
    }
  }, 120_000);

  it.each(['light', 'dark'] as const)(
    'has nothing that axe finds wrong, in %s',
    async (colorScheme) => {
      await opened();
      await say('Target airspeed on final, kt', '90');
      await soon(() => notes().recents[0]?.stated?.targetAirspeedKt).toBe(90);
      await again();
      await page.emulateMedia({ colorScheme });
      const wrong: string[] = [];
      const look = async (view: string) => {
        wrong.push(...(await violationsIn(page, view)));
      };
      await page.getByRole('button', { name: /^Take first-approach/ }).click();
      await page.getByRole('button', { name: 'Forget all…' }).click();
      await look('list, asked');
      await entry('first-approach.csv').click();
      await summary().waitFor();
      await look('taken over');
      rmSync(join(userFolder, 'logs'), { recursive: true });
      await page.reload();
      await lately().getByText('There is no copy of this log here.').waitFor();
      await look('gone');
      expect(wrong).toEqual([]);
    },
    150_000,
  );
});

/** What has the focus, by what a screen reader calls it. */
function focused(): Promise<string | null> {
  return page.evaluate(() => {
    const { document } = globalThis as unknown as {
      document: { activeElement: { getAttribute(name: string): string | null; textContent: string | null } };
    };
    return document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent;
  });
}

async function tabTo(name: string): Promise<void> {
  for (let i = 0; i < 60 && (await focused()) !== name; i++) await page.keyboard.press('Tab');
  expect(await focused()).toBe(name);
}
