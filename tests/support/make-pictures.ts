import { mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { launch } from '../e2e/browser.ts';
import { optionsOf } from './samples/sample-options.ts';

/**
 * The pictures of the README, of invented flights: `npm run pictures`, from the project's folder. A picture is as large
 * as it is said to be here, whatever screen there is.
 */
const MOST_BYTES = 200_000;
const PICTURES = 'docs';

const folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
const browser = await launch();
try {
  mkdirSync(PICTURES, { recursive: true });
  await picture('went-around.csv', 'sheet.png', { width: 1040, height: 900, only: 'svg.sheet' });
  await picture('first-approach.csv', 'hand-over.png', { width: 860, height: 1060, only: null });
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}

interface Size {
  readonly width: number;
  readonly height: number;
  /** What of the page is shown; null is what a screen of that size shows of it. */
  readonly only: string | null;
}

async function picture(sample: string, name: string, { width, height, only }: Size): Promise<void> {
  const file = join(folder, `${name}.html`);
  const words = ['--facility', 'samples/petrelholm-ils-07.json', ...optionsOf(sample), '--format', 'html'];
  execFileSync(
    process.execPath,
    ['dist/halfdot.js', 'debrief', join('samples', sample), ...words, '--out', file],
    { stdio: ['ignore', 'inherit', 'ignore'] },
  );
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: 1,
    colorScheme: 'light',
  });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  const path = join(PICTURES, name);
  await (only === null ? page.screenshot({ path }) : page.locator(only).screenshot({ path }));
  await context.close();
  const { size } = statSync(path);
  if (size > MOST_BYTES) throw new Error(`${path} has ${size} bytes, and may have ${MOST_BYTES}`);
}
