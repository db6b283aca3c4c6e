import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** Brings in a facility of the user's own, which is a sample's under the name "Mine 07". */
export async function bringInMine(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Facilities', exact: true }).click();
  const text = readFileSync('samples/petrelholm-ils-07.json', 'utf8');
  await page.locator('.side input[type=file]').setInputFiles({
    name: 'mine.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text.replace('Petrelholm ILS 07', 'Mine 07')),
  });
  await page.getByRole('button', { name: 'Mine 07' }).waitFor();
}
