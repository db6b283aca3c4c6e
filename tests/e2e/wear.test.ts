import { existsSync, readFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { appForEachTest } from './app-in-page.ts';

/** `npm run test:long` opens 500 files and moves the cursor for as long as an hour of replay has frames at 10 Hz. */
const LONG = process.env['HALFDOT_LONG'] !== undefined;
const FILES = LONG ? 500 : 40;
const MOVES = LONG ? 36_000 : 2000;
/** What a page keeps besides: compiled code, caches of the engine. Ten logs of a sample's size would be more. */
const MOST_GROWTH_BYTES = 6e6;

/** Of the machine's memory, which is given back late: of 500 files that were held each would be half a megabyte. */
const MOST_TAKEN_BYTES = 150e6;
const PAGE_BYTES = 4096;
const hasProc = existsSync('/proc/self/statm');

const app = appForEachTest();
let page: Page;
let session: CDPSession;
beforeEach(async () => {
  page = app.page;
  session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.enable');
});

/** What the page holds after the rubbish is cleared away. */
async function held(): Promise<{ bytes: number; nodes: number; listeners: number }> {
  for (let i = 0; i < 3; i++) await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
  return { bytes: usedSize, nodes, listeners: jsEventListeners };
}

/** What the processes of all pages take of the machine, with the worker that reads and judges, bytes. */
async function taken(): Promise<number> {
  const browser = await app.browser.newBrowserCDPSession();
  const { processInfo } = await browser.send('SystemInfo.getProcessInfo');
  const pages = processInfo.filter(({ type }) => type === 'renderer');
  const pagesOf = ({ id }: { id: number }) => Number(readFileSync(`/proc/${id}/statm`, 'utf8').split(' ')[1]);
  return pages.reduce((sum, one) => sum + pagesOf(one) * PAGE_BYTES, 0);
}

const sample = readFileSync('samples/first-approach.csv', 'utf8');

async function openAndClose(i: number): Promise<void> {
  const file = {
    name: `flight-${i}.csv`,
    mimeType: 'text/csv',
    buffer: Buffer.from(sample + '\n'.repeat(i)),
  };
  await page.locator('header input[type=file]').setInputFiles(file);
  await page.locator('h1.summary').waitFor();
  await page.getByRole('button', { name: `Close ${file.name}` }).click();
  await page.locator('h1.summary').waitFor({ state: 'detached' });
}

describe('the page does not wear out', () => {
  it(`with ${FILES} files opened one after another`, async () => {
    for (let i = 0; i < 10; i++) await openAndClose(i);
    const before = await held();
    const takenBefore = await taken();
    for (let i = 10; i < FILES; i++) await openAndClose(i);
    const after = await held();
    expect(after.bytes - before.bytes).toBeLessThan(MOST_GROWTH_BYTES);
    expect(after.nodes - before.nodes).toBeLessThan(500);
    expect(after.listeners - before.listeners).toBeLessThan(100);
    if (hasProc) expect((await taken()) - takenBefore).toBeLessThan(MOST_TAKEN_BYTES);
  }, 3_600_000);

  it(`with ${MOVES} moves of the cursor`, async () => {
    await page
      .getByRole('button', { name: /unstable-and-continued\.csv/ })
      .first()
      .click();
    await page.locator('h1.summary').waitFor();
    await page.getByRole('button', { name: 'Replay', exact: true }).click();
    const holder = page.locator('.sheet-holder');
    await holder.focus();
    const move = (times: number) =>
      holder.evaluate(
        (element, count) =>
          new Promise<void>((resolve) => {
            const { left, top, width } = element.getBoundingClientRect();
            let i = 0;
            const view = element.ownerDocument.defaultView!;
            const step = () => {
              const at = {
                clientX: left + 100 + ((i * 7) % (width - 150)),
                clientY: top + 100,
                bubbles: true,
                pointerId: 1,
              };
              element.dispatchEvent(new view.PointerEvent('pointermove', { ...at, buttons: 1 }));
              if (++i < count) view.setTimeout(step, 0);
              else resolve();
            };
            step();
          }),
        times,
      );
    await move(200);
    const before = await held();
    await move(MOVES);
    const after = await held();
    expect(after.bytes - before.bytes).toBeLessThan(MOST_GROWTH_BYTES / 2);
    expect(after.nodes - before.nodes).toBeLessThan(200);
    expect(app.complaints).toEqual([]);
  }, 3_600_000);
});
