import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { complaintsOf } from './app-in-page.ts';
import { chooseOpening, findRuntime } from '../../electron/cli/window-runtime.ts';

const opening = chooseOpening(undefined, findRuntime('.'), process.env, process.platform);
const runtime = opening.in === 'window' ? opening.runtime : null;
if (runtime === null)
  console.warn(
    `SKIPPED: the desktop window was not tried. ${opening.why ?? 'There is no display on this machine.'}`,
  );

describe('the desktop window', () => {
  it.skipIf(runtime === null)(
    'opens the log that it was started with, in a page that has no Node.js and goes nowhere',
    async () => {
      const userFolder = mkdtempSync(join(tmpdir(), 'halfdot-user-'));
      const app = await _electron.launch({
        executablePath: runtime!,
        args: [
          ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
          join('dist', 'window'),
          join('samples', 'first-approach.csv'),
        ],
        env: { ...(process.env as Record<string, string>), HALFDOT_USER_FOLDER: userFolder },
      });
      try {
        const page = await app.firstWindow();
        const complaints = complaintsOf(page);
        expect(page.url()).toBe('halfdot://app/');
        await page.locator('h1.summary').waitFor();
        expect(await page.evaluate('typeof require + typeof process + Object.keys(halfdot).join()')).toBe(
          'undefinedundefinedcall,onEvent',
        );
        await page.evaluate("location.href = 'https://127.0.0.1:1/'").catch(() => {});
        expect(await page.evaluate("fetch('https://127.0.0.1:1/').then(() => 'sent', () => 'refused')")).toBe(
          'refused',
        );
        expect(page.url()).toBe('halfdot://app/');
        expect(complaints).toEqual([]);
      } finally {
        await app.close();
        rmSync(userFolder, { recursive: true, force: true });
      }
    },
    120_000,
  );
});
