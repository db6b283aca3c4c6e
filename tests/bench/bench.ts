import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { arch, cpus, platform, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { processOutput } from '../../electron/cli/output.ts';
import { run } from '../../electron/cli/run.ts';
import { growth } from './growth-row.ts';
import { deviationsOverPeer } from './peer-row.ts';
import {
  commandOverNothing,
  memoryOverText,
  numbersOverSines,
  pipelineOverParsing,
  type Row,
} from './rows.ts';

// Loaded when their turn comes: what drives a browser fills the memory that is looked through at every collection.
const PAGE_ROWS = () => import('./page-rows.ts');

/** The budgets of the design's section 16, measured; `only`, a row counted from 1. Over budget: exit status 1. */
async function bench(only: number | null): Promise<number> {
  const self = fileURLToPath(import.meta.url);
  const command = join(self, '..', 'halfdot.js');
  const folder = mkdtempSync(join(tmpdir(), 'halfdot-bench-'));
  try {
    const rows: Row[] = [];
    const measured: (() => Promise<Row | null> | Row)[] = [
      () => pipelineOverParsing(),
      () => numbersOverSines(),
      () => commandOverNothing(folder, command),
      () => memoryOverText(folder, self),
      async () => (await PAGE_ROWS()).droppedToDrawn(folder),
      async () => (await PAGE_ROWS()).cursorMoves(folder),
      async () => (await PAGE_ROWS()).firstView(join(self, '..', 'page')),
      async () => (await import('./library-row.ts')).libraryLists(folder),
      async () => (await import('./import-row.ts')).importByTwo(folder, command),
      () => growth(),
      () => deviationsOverPeer(folder, command, join(self, '..', '..', 'tests', 'bench', 'peer.py')),
    ].filter((_, i) => only === null || i + 1 === only);
    for (const measure of measured) {
      const result = await measure();
      if (result === null) {
        console.log('skipped: this machine has no python3-pandas and python3-pyproj to be compared with');
        continue;
      }
      rows.push(result);
      console.log(line(result));
    }
    if (only === null) keep(rows, join(self, '..', '..', '.bench'));
    return rows.some(({ ratio, budget }) => ratio > budget) ? 1 : 0;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function line({ what, budget, ratio, spread, detail }: Row): string {
  const verdict = ratio <= budget ? 'within' : 'OVER';
  const range = `${spread.min.toFixed(2)} to ${spread.max.toFixed(2)}`;
  return `${ratio.toFixed(2)} (${range}), ${verdict} budget ${budget}: ${what} [${detail}]`;
}

function keep(rows: readonly Row[], folder: string): void {
  const machine = {
    node: process.version,
    platform: platform(),
    arch: arch(),
    processor: cpus()[0]?.model,
    cores: cpus().length,
    memoryGB: Math.round(totalmem() / 2 ** 30),
  };
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'results.json'), `${JSON.stringify({ machine, rows }, null, 2)}\n`);
}

/** Debriefs in this process, so that it can say what it needed at its peak. */
async function peakMemory(words: readonly string[]): Promise<number> {
  const status = await run(['debrief', ...words], processOutput());
  console.error(`peak ${process.resourceUsage().maxRSS} kB`);
  return status;
}

const [flag, ...words] = process.argv.slice(2);
process.exitCode =
  flag === '--peak-memory' ? await peakMemory(words) : await bench(flag ? Number(flag) : null);
