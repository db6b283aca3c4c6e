import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { parseFacility } from '../../core/facility/parse-facility.ts';
import { appForEachTest, violationsIn } from './app-in-page.ts';

const app = appForEachTest();
let page: Page;
beforeEach(async () => {
  page = app.page;
  page.setDefaultTimeout(25_000);
  await showFacilities();
}, 60_000);

const showFacilities = () => page.getByRole('button', { name: 'Facilities', exact: true }).click();
const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const box = (label: string) => page.getByLabel(label, { exact: true });
const status = (name: string) => page.getByRole('heading', { name, exact: true }).waitFor();
const said = (label: string) =>
  box(label).evaluate((element) =>
    (element.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id: string) => element.ownerDocument.getElementById(id)?.textContent ?? '')
      .join('; '),
  );
const fact = (words: string) => page.locator('.facts div', { hasText: words }).locator('dd').textContent();
const notes = () =>
  JSON.parse(readFileSync(join(app.userFolder, 'notes.json'), 'utf8')) as {
    facilities: { id: string; text: string }[];
    drafts?: Record<string, string>;
  };

async function enter(values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values)) await box(label).fill(value);
}

/** An invented aerodrome where the sample flights are flown to, as a chart of it would be printed. */
const CHART = {
  Name: 'Duneholm ILS 07',
  'Runway designator': '07',
  'Threshold latitude': 'S31 12.0',
  'Threshold longitude': 'W016 24 00.0',
  'Threshold elevation, ft': '34',
  'Far end latitude': '311115.63S',
  'Far end longitude': '16°23′05.81″ W',
  'Far end elevation, ft': '46',
  'Glidepath angle, degrees': '3.00°',
  'Threshold crossing height, ft': '52',
};
const REST = {
  'Decision altitude, ft': '240',
  'Runway visual range, ft': '550 m',
  'Fix name': 'dunox',
  'Fix to threshold, NM': '5.0',
  'Fix altitude, ft': '1,700',
  'DME at the fix, NM': '6.2',
  Ident: 'IZDU',
  'Frequency, MHz': '110.95',
  'Magnetic course, degrees': '070',
  'Airport elevation, ft': '46',
  'Magnetic variation, as 3.5 W': '23.6 W',
  'Touchdown zone elevation, ft': '40',
  'Climb to, ft': '2000',
  Instructions: 'Straight ahead to 1,000 ft, then left to DUNOX.',
};

describe('a facility that is typed in from its chart', () => {
  it('from nothing, by its labels, and then a log is debriefed with it', async () => {
    await press('Enter a new one');
    await status('Not complete yet');
    expect(await said('Name')).toBe('Needed.');
    await enter(CHART);
    await status('Complete: it can be used');
    await page.getByText('The rest of the chart').click();
    await enter(REST);
    await expect.poll(() => fact('Variation')).toBe('23.6 west given');
    expect(await fact('Runway length')).toBe('6,500 ft from the two ends');
    expect(await fact('Decision height')).toBe('200 ft above the touchdown zone at 40 ft');
    expect(await page.getByRole('img', { name: 'Duneholm ILS 07 from above, north up' }).count()).toBe(1);
    expect(await box('Threshold latitude').inputValue()).toBe('S31 12.0');
    expect(await said('Threshold longitude')).toBe('W016° 24′ 00.00″\nor W016° 24.000′');

    await press('Keep the change');
    await expect.poll(() => notes().facilities[0]?.text).toContain('Duneholm');
    const parsed = parseFacility(notes().facilities[0]!.text, 'kept');
    expect(parsed).toMatchObject({
      ok: true,
      value: {
        runway: { threshold: { latDeg: -31.2, lonDeg: -16.4 }, farEnd: { latDeg: -31.187675 } },
        minimums: { decisionAltitudeFt: 240, rvrFt: 1804.5 },
        finalApproachFix: { name: 'DUNOX', distanceNm: 5, altitudeFt: 1700, dmeNm: 6.2 },
        magneticVariationDeg: -23.6,
      },
    });
    expect(notes().drafts ?? {}).toEqual({});

    await page.locator('header input[type=file]').setInputFiles('samples/first-approach.csv');
    await page.locator('h1.summary').waitFor();
    const choice = page.getByLabel('Facility', { exact: true });
    await choice.selectOption({ label: 'Duneholm ILS 07' });
    await expect.poll(() => page.locator('pre.page').first().textContent()).toContain('Duneholm ILS 07');
    expect(await page.locator('h1.summary').textContent()).toContain('Stable at 1,000 ft and 500 ft');
    expect(app.complaints).toEqual([]);
  });

  it('says of a mistake beside its field what is wrong, once the field is left, and is gone to from the list', async () => {
    await press('Enter a new one');
    await status('Not complete yet');
    await enter({ ...CHART, 'Threshold latitude': 'S31 72.0' });
    await page.getByText('The rest of the chart').click();
    await box('Decision altitude, ft').fill('24000');
    await expect.poll(() => page.locator('.live').textContent()).toContain('24000');
    // While it is typed it may well be half a value.
    expect(await box('Decision altitude, ft').getAttribute('aria-invalid')).toBe('false');
    await page.keyboard.press('Tab');
    expect(await box('Decision altitude, ft').getAttribute('aria-invalid')).toBe('true');
    expect(await said('Decision altitude, ft')).toContain(
      'It is 24000: a decision altitude lies between -1500 and 20000 ft.',
    );
    expect(await said('Threshold latitude')).toContain('“S31 72.0” is no latitude.');
    await page.getByText('The rest of the chart').click();
    await press('Decision altitude');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('240');
    await page.keyboard.press('Tab');
    await press('Threshold latitude');
    await box('Threshold latitude').fill('S31 12.0');
    await page.keyboard.press('Enter');
    await status('Complete: it can be used');
    expect(await said('Decision altitude, ft')).toBe('');
  });

  it('lists two mistakes that are alike as two, and those that are left when one is put right', async () => {
    await press('Enter a new one');
    await status('Not complete yet');
    await enter({
      'Runway designator': '77',
      'Threshold latitude': 'S31 72.0',
      'Far end latitude': 'S31 72.0',
    });
    await page.keyboard.press('Tab');
    const wrong = page.locator('.remarks .wrong');
    await expect.poll(() => wrong.count()).toBe(3);
    await box('Runway designator').fill('07');
    await expect.poll(() => page.locator('.live').textContent()).not.toContain('77');
    expect(await wrong.count()).toBe(2);
    await box('Far end latitude').fill('S31 11.0');
    await expect.poll(() => wrong.count()).toBe(1);
  });

  it('is not lost by going elsewhere, nor by loading the page anew, kept or not', async () => {
    await press('Enter a new one');
    await status('Not complete yet');
    await enter({ Name: 'Half a chart', 'Threshold latitude': 'S31 1' });
    await press('Start');
    await showFacilities();
    expect(await box('Name').inputValue()).toBe('Half a chart');
    await page.getByText('not complete yet, changed, not kept').waitFor();
    await expect.poll(() => Object.values(notes().drafts ?? {}).join('')).toContain('Half a chart');
    expect(notes().facilities[0]!.text).not.toContain('Half a chart');
    await page.reload();
    await showFacilities();
    await press('Half a chart');
    expect(await box('Threshold latitude').inputValue()).toBe('-31.01666667');
    await press('Keep the change');
    await expect.poll(() => notes().facilities[0]!.text).toContain('Half a chart');
    await expect.poll(() => page.getByText('changed, not kept').count()).toBe(0);
    await box('Name').fill('Another');
    await press('Undo it');
    expect(await box('Name').inputValue()).toBe('Half a chart');
    await expect.poll(() => page.getByRole('button', { name: 'Keep the change' }).isDisabled()).toBe(true);
  });
});

describe('a facility’s form and its text', () => {
  it('are one: a key that no field knows stays, and what is written in the text is seen in the fields', async () => {
    await press('Petrelholm ILS 07');
    expect(await box('Fix name').getAttribute('readonly')).not.toBeNull();
    await press('Make a copy');
    await page.getByRole('button', { name: 'Petrelholm ILS 07 (copy)' }).waitFor();
    await expect.poll(() => box('Name').inputValue()).toBe('Petrelholm ILS 07 (copy)');
    await page.getByText('Its file', { exact: true }).click();
    const file = page.getByLabel('Its file, as the JSON text that it is');
    await file.fill((await file.inputValue()).replace('"PETRU"', '"QUUXO", "chart": "third edition"'));
    expect(await box('Fix name').inputValue()).toBe('QUUXO');
    await page.getByText('finalApproachFix.chart is not a key of a facility file').first().waitFor();
    await box('Fix altitude, ft').fill('1800');
    expect(await file.inputValue()).toContain('"chart": "third edition"');
    expect(await file.inputValue()).toContain('"altitudeFt": 1800');
    await press('Take the final approach fix out');
    expect(await box('Fix name').inputValue()).toBe('');
    expect(await file.inputValue()).not.toContain('finalApproachFix');
    await status('Complete: it can be used');

    const whole = await file.inputValue();
    await file.fill(whole.replace('{', ''));
    await page.getByText('The form is shown when its file can be read again.').waitFor();
    await file.fill(whole);
    await expect.poll(() => box('Runway designator').inputValue()).toBe('07');
    expect(await file.isVisible()).toBe(true);
  });

  it('takes no log for a facility', async () => {
    await page.locator('.side input[type=file]').setInputFiles('samples/offset-course.csv');
    await page.getByText('offset-course.csv was not brought in').waitFor();
  });

  it.each(['light', 'dark'] as const)(
    'have nothing that axe finds wrong, in %s, complete and not',
    async (colorScheme) => {
      await page.emulateMedia({ colorScheme });
      const wrong: string[] = [];
      const look = async (view: string) => {
        wrong.push(...(await violationsIn(page, view)));
      };
      await press('Whimbrelness ILS 13');
      await page.locator('.facts').waitFor();
      await page.getByText('All that follows from it').click();
      await look('sample');
      await press('Enter a new one');
      await status('Not complete yet');
      await page.getByText('The rest of the chart').click();
      await enter({ 'Threshold latitude': 'S31 72', 'Runway length, ft': '1650 m', 'Fix name': 'DUNOX' });
      await page.keyboard.press('Tab');
      await page.getByText('To be put right').waitFor();
      await look('not complete');
      await box('Threshold latitude').fill('S31 12');
      await enter({ ...CHART, 'Magnetic course, degrees': '170' });
      await page.getByText('To be checked').first().waitFor();
      await look('to be checked');
      expect(wrong).toEqual([]);
    },
    120_000,
  );
});
