import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Worker } from 'node:worker_threads';
import {
  DEVIATIONS_HEADER,
  deviationColumns,
  deviationLines,
  LINES_IN_A_BLOCK,
} from '../../core/report/deviations-csv.ts';
import type { Deviations } from '../../core/deviation/deviations.ts';
import type { FacilityGeometry } from '../../core/facility/derive-geometry.ts';
import type { Track } from '../../core/track/track.ts';
import type { ToLinesWorker } from './lines-worker.ts';

/** Of a shorter log the lines are written sooner than a thread has begun. */
const WORTH_BYTES = 5_000_000;

function besideProgram(): string {
  return join(dirname(realpathSync(process.argv[1]!)), 'lines-worker.mjs');
}

/**
 * A thread that writes every other block of lines, since numbers to text is what takes longest of a long log. It is
 * begun before the log is read, so that it waits for that.
 */
export class SecondLane {
  readonly #worker: Worker | null;
  #isBroken = false;
  #hear: (text: string | null) => void = () => {};

  constructor(logBytes: number, file = besideProgram()) {
    // Where the sources run it is not built: all is written here.
    this.#worker = logBytes >= WORTH_BYTES && existsSync(file) ? new Worker(file) : null;
    this.#worker?.on('message', (text: string) => this.#hear(text));
    this.#worker?.on('error', () => {
      this.#isBroken = true;
      this.#hear(null);
    });
  }

  /** All lines, in blocks and in their order. */
  async *texts(track: Track, deviations: Deviations, facility: FacilityGeometry): AsyncGenerator<string> {
    yield DEVIATIONS_HEADER;
    const columns = deviationColumns(track, deviations, facility);
    this.#worker?.postMessage(columns satisfies ToLinesWorker);
    const end = track.count;
    const to = (from: number) => Math.min(end, from + LINES_IN_A_BLOCK);
    for (let at = 0; at < end; at = to(to(at))) {
      const next = to(at);
      const second = next < end ? this.#ask(next, to(next)) : Promise.resolve('');
      yield deviationLines(columns, at, next);
      yield (await second) ?? deviationLines(columns, next, to(next));
    }
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
  }

  /** Null where it cannot: then it is written here. */
  #ask(from: number, to: number): Promise<string | null> {
    if (!this.#worker || this.#isBroken) return Promise.resolve(null);
    const asked = new Promise<string | null>((resolve) => (this.#hear = resolve));
    this.#worker.postMessage([from, to] satisfies ToLinesWorker);
    return asked;
  }
}
