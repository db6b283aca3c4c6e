import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { launch } from '../e2e/browser.ts';
import { serveApp } from '../e2e/served-app.ts';
import { BENCH_FACILITY, benchLog } from './bench-log.ts';
import { timingOf } from './measure.ts';
import type { Row } from './rows.ts';

/** A page with the bench's facility in its notes, ready to be given a log. */
async function withPage<T>(folder: string, use: (page: Page, browser: Browser) => Promise<T>): Promise<T> {
  const served = await serveApp();
  const browser = await launch();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(served.address);
    await page.getByRole('button', { name: 'Facilities', exact: true }).click();
    const facility = join(folder, 'bench-facility.json');
    writeFileSync(facility, JSON.stringify(BENCH_FACILITY));
    await page.getByRole('button', { name: /Bring one in/ }).waitFor();
    await page.locator('main input[type=file]').setInputFiles(facility);
    await page.getByRole('button', { name: BENCH_FACILITY.name }).waitFor();
    return await use(page, browser);
  } finally {
    await browser.close();
    await served.stop();
  }
}

function keptLog(folder: string, name: string, fixes: number, perSecond: number): string {
  const path = join(folder, name);
  writeFileSync(path, [...benchLog(fixes, perSecond)].join(''));
  return path;
}

/** By the button, as a user does: a file that was chosen before is so chosen again. */
async function choose(page: Page, path: string): Promise<void> {
  const asked = page.waitForEvent('filechooser');
  await page.locator('header').getByRole('button', { name: 'Open a log…' }).click();
  await (await asked).setFiles(path);
}

/** Row 5: milliseconds from a file's being given to its sheet being drawn, two hours at 1 Hz. */
export async function droppedToDrawn(folder: string): Promise<Row> {
  const log = keptLog(folder, 'dropped.csv', 7200, 1);
  const runs = await withPage(folder, async (page) => {
    const times: number[] = [];
    for (let run = 0; run < 8; run++) {
      await page.evaluate(WATCH_FOR_SHEET);
      await choose(page, log);
      times.push(await page.evaluate<number>('drawn'));
      await page.getByRole('button', { name: 'Close dropped.csv' }).click();
    }
    // The first also loads the worker's code from the disk: all count.
    return times;
  });
  return inMilliseconds('a 2-hour 1 Hz log dropped to its sheet drawn', 1000, runs);
}

/** In the page: resolves with the time from a file's being chosen to the frame after its sheet is there. */
const WATCH_FOR_SHEET = `
  globalThis.drawn = new Promise((resolve) => {
    let startMs = NaN;
    document.addEventListener('change', () => (startMs = performance.now()), { capture: true, once: true });
    const observer = new MutationObserver(() => {
      if (!document.querySelector('svg.sheet')) return;
      observer.disconnect();
      requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - startMs)));
    });
    observer.observe(document.body, { childList: true, subtree: true });
  });
  null`;

const MOVES = 240;
/** Apart by more than a frame, so that each has frames of its own. */
const APART_MS = 40;

/** Row 6: milliseconds of the page's main thread that a move of the cursor costs, on an hour at 10 Hz. */
export async function cursorMoves(folder: string): Promise<Row> {
  const log = keptLog(folder, 'hour.csv', 36_000, 10);
  const costs = await withPage(folder, async (page, browser) => {
    await choose(page, log);
    await page.getByRole('button', { name: 'Replay', exact: true }).click();
    const box = (await page.locator('.sheet-holder').boundingBox())!;
    await page.mouse.move(box.x + 100, box.y + 100);
    await page.mouse.down();
    // In the page, so that telling a move costs nothing of its own.
    await page.evaluate(
      "addEventListener('pointermove', () => performance.mark('halfdot-move'), { capture: true })",
    );
    await browser.startTracing(page, { categories: ['devtools.timeline', 'blink.user_timing'] });
    for (let move = 0; move < MOVES; move++) {
      await page.mouse.move(box.x + 100 + ((move * 7) % (box.width - 150)), box.y + 120);
      await page.waitForTimeout(APART_MS);
    }
    return costOfMoves(JSON.parse((await browser.stopTracing()).toString()) as Trace);
  });
  const sorted = costs.toSorted((a, b) => a - b);
  const row = inMilliseconds('moving the cursor on 36,000 fixes, 95 % of moves', 8, costs);
  return { ...row, ratio: sorted[Math.floor(sorted.length * 0.95)]! };
}

interface Trace {
  readonly traceEvents: readonly {
    readonly name: string;
    readonly pid: number;
    readonly tid: number;
    readonly ts: number;
    readonly dur?: number;
    /** Time of the thread itself: what else the machine was doing does not count. */
    readonly tdur?: number;
    readonly args?: { readonly name?: string };
  }[];
}

/** Script, style, layout and paint, as the browser tells them apart; none of these stands within another. */
const WORK = new Set([
  'EventDispatch',
  'FireAnimationFrame',
  'TimerFire',
  'UpdateLayoutTree',
  'Layout',
  'PrePaint',
  'Paint',
  'Layerize',
  'Commit',
]);

/** What a page did of that from each mark to the next, milliseconds. */
function costOfMoves({ traceEvents }: Trace): number[] {
  const marks = traceEvents.filter(({ name }) => name === 'halfdot-move').toSorted((a, b) => a.ts - b.ts);
  const { pid, tid } = marks[0]!;
  const work = traceEvents.filter((event) => event.pid === pid && event.tid === tid && WORK.has(event.name));
  if (work.length < marks.length)
    throw new Error('the trace holds too little work to tell what a move costs');
  // The event that a mark stands in began before it.
  const begins = marks.map(({ ts }) =>
    work.filter((one) => one.ts <= ts).reduce((at, one) => Math.max(at, one.ts), 0),
  );
  return begins.slice(0, -1).map((from, i) => {
    const within = work.filter(({ ts }) => ts >= from && ts < begins[i + 1]!);
    return within.reduce((sum, { dur = 0, tdur = dur }) => sum + tdur, 0) / 1000;
  });
}

/** Row 7: kilobytes of the page's first view, compressed as a server would. */
export function firstView(page: string): Row {
  const assets = readdirSync(join(page, 'assets'));
  const entry = readFileSync(join(page, 'index.html'));
  const named = assets.filter((name) => entry.includes(name));
  const sizes = [entry, ...named.map((name) => readFileSync(join(page, 'assets', name)))];
  const kilobytes = sizes.reduce((sum, bytes) => sum + gzipSync(bytes).length, 0) / 1000;
  const spread = { min: kilobytes, median: kilobytes, max: kilobytes };
  return {
    what: 'first view of the page, kB compressed',
    budget: 250,
    ratio: kilobytes,
    spread,
    detail: named.join(', '),
  };
}

function inMilliseconds(what: string, budget: number, runs: readonly number[]): Row {
  const { min, median, max } = timingOf(runs);
  const detail = `${runs.length} runs, ms`;
  return { what, budget, ratio: median, spread: { min, median, max }, detail };
}
