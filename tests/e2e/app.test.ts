import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { appForEachTest, violationsIn } from './app-in-page.ts';

const SAMPLES = 'samples';
const sample = (name: string) => join(SAMPLES, name);
const text = (name: string) => readFileSync(sample(name), 'utf8');
const upload = (name: string, content: string) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(content),
});

const app = appForEachTest();
let page: Page;
beforeEach(() => {
  page = app.page;
});

const open = (...files: Parameters<ReturnType<Page['locator']>['setInputFiles']>[0][]) =>
  page.locator('header input[type=file]').setInputFiles(files.flat() as string[]);
const summary = () => page.locator('h1.summary');
const rowOf = (title: string) => page.locator('table.criteria tr', { hasText: title });

describe('the app', () => {
  it('opens a log, finds its facility, debriefs it, and judges anew what is said', async () => {
    await open(sample('first-approach.csv'));
    await summary().waitFor();
    await expect.poll(() => summary().textContent()).toContain('Stable at 1,000 ft and 500 ft');
    expect(await page.getByLabel('Facility').inputValue()).toBe('petrelholm-ils-07.json');
    expect(await rowOf('Airspeed on final').textContent()).toContain('no target airspeed was given');
    await page.getByLabel('Target airspeed on final, kt').fill('90');
    await page.getByLabel('Target airspeed on final, kt').press('Enter');
    await expect
      .poll(() => rowOf('Airspeed on final').textContent())
      .toContain('within ±10 kt of the target of 90 kt');
    await page.getByLabel('Vref, kt').fill('4000');
    await page.getByLabel('Vref, kt').press('Enter');
    await page.getByText('A number from 30 to 400.').waitFor();
    await page.getByLabel('Wind, as 250/18').fill('north');
    await page.getByLabel('Wind, as 250/18').press('Enter');
    await page.getByText('Write it as 250/18').waitFor();
    await page.getByLabel('Dots to full scale').selectOption('5');
    await expect.poll(() => rowOf('Localizer on final').textContent()).toContain('left 1.0');
    await page.getByLabel('Standard').selectOption('airline-transport');
    await expect.poll(() => rowOf('Glidepath on final').textContent()).toContain('not met');
    expect(app.complaints).toEqual([]);
  });

  it('gives the same debrief as the command', async () => {
    await page
      .getByRole('button', { name: /Turned late/ })
      .first()
      .click();
    await summary().waitFor();
    const told = text('debriefs/first-approach.csv.txt');
    expect(await page.locator('pre.page').first().textContent()).toBe(told);
  });

  it('takes a column for what the user says, and remembers it for logs with these headers', async () => {
    const log = text('first-approach.csv')
      .replace('GNSS Altitude (ft MSL)', 'Quux (ft)')
      .replace('Indicated Altitude (ft)', 'Note (ft)');
    await open(upload('odd.csv', log));
    await page.getByRole('heading', { name: 'This file cannot be read as a track log' }).waitFor();
    await page.getByRole('button', { name: 'Close it' }).click();

    const wrong = text('first-approach.csv').replace('Indicated Airspeed (kt)', 'True Airspeed (kt)');
    await open(upload('wrong.csv', wrong));
    await summary().waitFor();
    await page.getByText('What was recognised in wrong.csv').click();
    await page.getByLabel('True Airspeed (kt) is taken for').selectOption('airspeedIndicatedKt');
    await page.getByLabel('Target airspeed on final, kt').fill('90');
    await page.getByLabel('Target airspeed on final, kt').press('Enter');
    await expect.poll(() => rowOf('Airspeed on final').textContent()).toContain('within ±10 kt');
    await open(upload('wrong-again.csv', wrong));
    await page.getByText('What was recognised in wrong-again.csv').click();
    expect(await page.getByLabel('True Airspeed (kt) is taken for').inputValue()).toBe('airspeedIndicatedKt');
    const notes = JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as {
      mappings: object;
    };
    expect(Object.keys(notes.mappings)).toHaveLength(1);
  });

  it('opens two at once, and says of a file that is none what is wrong with it', async () => {
    await open(sample('first-approach.csv'), sample('went-around.csv'), 'package.json');
    for (const name of ['first-approach.csv', 'went-around.csv', 'package.json'])
      await page.getByRole('button', { name, exact: true }).waitFor();
    await page.getByRole('button', { name: 'went-around.csv', exact: true }).click();
    await expect.poll(() => summary().textContent()).toContain('went around');
    await page.getByRole('button', { name: 'package.json', exact: true }).click();
    await page.getByRole('alert').waitFor();
    await page.getByRole('button', { name: 'Close package.json' }).click();
    expect(await page.getByRole('button', { name: 'package.json', exact: true }).count()).toBe(0);
  });

  it('stops reading a long log when it is told to', async () => {
    const [header, ...rows] = text('first-approach.csv').trimEnd().split('\n');
    const long = join(app.userFolder, 'long.csv');
    writeFileSync(long, `${header}\n${`${rows.join('\n')}\n`.repeat(3000)}`);
    await open(long);
    await page.getByText(/Reading long\.csv, \d+ %/).waitFor();
    const stopped = page.getByRole('heading', { name: 'This file cannot be read as a track log' });
    const stop = page.getByRole('button', { name: 'Stop' });
    // At once, since a click waits until the button stands still; and again, where it was being drawn just then.
    await expect
      .poll(async () => {
        await stop.dispatchEvent('click', undefined, { timeout: 500 }).catch(() => {});
        return stopped.isVisible();
      })
      .toBe(true);
    expect(await page.getByRole('alert').textContent()).toMatch(/stopped/i);
  }, 60_000);

  it('asks for the facility where the log was flown to none that it knows', async () => {
    await open(sample('overflight.csv'));
    await page.getByRole('heading', { name: 'Which facility?' }).waitFor();
    await page.getByLabel('Facility').selectOption('petrelholm-ils-07.json');
    await page.getByRole('heading', { name: 'No approach was found' }).waitFor();
  });

  it('keeps a facility of the user’s own, checks it while it is written, and takes it away when told to', async () => {
    await page.getByRole('button', { name: 'Facilities', exact: true }).click();
    await page
      .locator('.side input[type=file]')
      .setInputFiles(
        upload('own.json', text('petrelholm-ils-07.json').replace('Petrelholm ILS 07', 'My own 07')),
      );
    await page.getByText('Its file', { exact: true }).click();
    const file = page.getByLabel('Its file, as the JSON text that it is');
    await file.waitFor();
    const before = await file.inputValue();
    await file.fill(before.replace('"angleDeg": 3', '"angleDeg": 33'));
    await page.getByRole('heading', { name: 'Not complete yet' }).waitFor();
    await page.getByText('a glidepath angle lies between 1.5 and 10 degrees').first().waitFor();
    await page.getByRole('button', { name: 'Undo it' }).click();
    await page.getByRole('heading', { name: 'Complete: it can be used' }).waitFor();
    expect(await file.inputValue()).toBe(before);
    await page.getByRole('button', { name: 'My own 07' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Facilities', exact: true }).click();
    await page.getByRole('button', { name: 'My own 07' }).click();
    await page.getByRole('button', { name: 'Remove…' }).click();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect.poll(() => page.getByRole('button', { name: 'My own 07' }).count()).toBe(0);
  });

  it('is all done by the keyboard', async () => {
    const sampleButton = page.getByRole('button', { name: /Turned late/ }).first();
    for (
      let i = 0;
      i < 30 && !(await sampleButton.evaluate((el) => el === el.ownerDocument.activeElement));
      i++
    )
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await summary().waitFor();
    const standard = page.getByLabel('Standard');
    for (let i = 0; i < 30 && !(await standard.evaluate((el) => el === el.ownerDocument.activeElement)); i++)
      await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.locator('.sources').textContent()).toContain('11A');
  });
});

describe('what gets out, and what gets in', () => {
  it('asks nobody but its own host for anything', async () => {
    await page
      .getByRole('button', { name: /Turned late/ })
      .first()
      .click();
    await summary().waitFor();
    const { origin } = new URL(app.served.address);
    expect(app.requests.length).toBeGreaterThan(4);
    expect(app.requests.filter((url) => !url.startsWith(`${origin}/`) && !url.startsWith('data:'))).toEqual(
      [],
    );
  });

  it('shows the HTML in a log as the text that it is', async () => {
    const nasty = '<img src=x onerror="window.hacked=1"><script>window.hacked=1</script>';
    const log = text('first-approach.csv').replace('Pitch (deg)', nasty.replaceAll('"', "'"));
    await open(upload(`${nasty.slice(0, 12)}.csv`, log));
    await page.locator('.recognised summary').click();
    await page.getByRole('rowheader', { name: /<img src=x/ }).waitFor();
    expect(await page.evaluate(() => (globalThis as { hacked?: number }).hacked)).toBeUndefined();
    expect(await page.locator('main img, main script').count()).toBe(0);
  });

  it('answers no page of another origin, and nobody without its token', async () => {
    const { origin } = new URL(app.served.address);
    const stranger = await app.browser.newPage();
    await stranger.goto('data:text/html,<p>another page</p>');
    const asked = await stranger.evaluate(async (url) => {
      try {
        return (
          await fetch(url, { method: 'POST', body: '{}', headers: { 'content-type': 'application/json' } })
        ).status;
      } catch {
        return 'refused';
      }
    }, `${origin}/call/notes`);
    expect(asked).toBe('refused');
    await stranger.close();
    // By itself another end of the address loads nothing anew.
    await page.goto('about:blank');
    await page.goto(`${origin}/#forged`);
    await page.getByText('This page was not opened by Halfdot').waitFor();
  });
});

describe('every view', () => {
  it.each(['light', 'dark'] as const)(
    'has nothing that axe finds wrong, in %s',
    async (colorScheme) => {
      await page.emulateMedia({ colorScheme });
      const wrong: string[] = [];
      const look = async (view: string) => {
        wrong.push(...(await violationsIn(page, view)));
      };
      await look('start');
      await page
        .getByRole('button', { name: /Turned late/ })
        .first()
        .click();
      await summary().waitFor();
      await page.locator('.recognised summary').click();
      await look('flight');
      await page.getByRole('button', { name: 'Facilities', exact: true }).click();
      await page.getByRole('button', { name: 'Petrelholm ILS 07' }).click();
      await page.locator('.facts').waitFor();
      await page.getByText('Its file', { exact: true }).click();
      await page.getByLabel('Its file, as the JSON text that it is').waitFor();
      await look('facilities');
      expect(wrong).toEqual([]);
    },
    120_000,
  );
});
