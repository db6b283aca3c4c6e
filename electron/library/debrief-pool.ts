import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { refused, type Outcome } from '../../core/issue/issue.ts';
import { debriefBytes, type DebriefedBytes, type DebriefLog } from './debrief-bytes.ts';
import type { Answer, Question } from './debrief-worker.ts';

/** Threads that debrief logs beside the one that reads and writes the library. */
export interface DebriefPool {
  readonly count: number;
  /** How many of them run in a thread of their own now. */
  working(): number;
  /** As `debriefBytes`, by whichever of them is free first; what is asked while none is, waits in its order. */
  readonly debrief: DebriefLog;
  /** Ends them; what is being debriefed or waits is refused. */
  close(): Promise<void>;
}

/**
 * `count` of them, each started with its first log. Where the built worker is not there, or none can be started, the
 * work is done in this thread.
 */
export function debriefersOf(count: number, file = workerFile()): DebriefPool {
  const debriefers = Array.from({ length: count }, () => new Debriefer(file));
  const free = [...debriefers];
  const waiting: ((debriefer: Debriefer) => void)[] = [];
  return {
    count,
    working: () => debriefers.filter(({ isWorking }) => isWorking).length,
    async debrief(...words) {
      const debriefer = free.pop() ?? (await new Promise<Debriefer>((resolve) => waiting.push(resolve)));
      try {
        return await debriefer.debrief(words);
      } finally {
        const next = waiting.shift();
        if (next) next(debriefer);
        else free.push(debriefer);
      }
    },
    close: async () => void (await Promise.all(debriefers.map((debriefer) => debriefer.close()))),
  };
}

const NAME = 'debrief-worker.mjs';

/** Beside the built program, or above its chunks and the window's file; null where the sources run. */
function workerFile(): URL | null {
  return [`./${NAME}`, `../${NAME}`].map(beside).find((url) => existsSync(fileURLToPath(url))) ?? null;
}

const beside = (path: string): URL => new URL(path, import.meta.url);

/** A worker that fell twice without having answered is none that can be started here. */
const FALLS = 2;

class Debriefer {
  readonly #file: URL | null;
  #worker: Worker | null = null;
  #falls = 0;
  #isClosed = false;

  constructor(file: URL | null) {
    this.#file = file;
  }

  async debrief(words: Parameters<DebriefLog>): Promise<Outcome<DebriefedBytes>> {
    const [log, facilities, asked, job] = words;
    if (this.#isClosed) return stopped(log.name);
    const worker = this.#started();
    if (worker !== null) {
      const answered = await answerOf(worker, words);
      if ('outcome' in answered) {
        this.#falls = 0;
        return answered.outcome;
      }
      this.#worker = null;
      if (this.#isClosed) return stopped(log.name);
      // In this thread it would take the whole program with it.
      if (answered.code === 'ERR_WORKER_OUT_OF_MEMORY') return tooLarge(log.name);
      this.#falls++;
    }
    const cancelled = () => this.#isClosed || job.cancelled();
    return debriefBytes(log, facilities, asked, { progress: (share) => job.progress(share), cancelled });
  }

  get isWorking(): boolean {
    return this.#worker !== null;
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await this.#worker?.terminate();
  }

  #started(): Worker | null {
    if (this.#file === null || this.#falls >= FALLS) return null;
    if (this.#worker) return this.#worker;
    const worker = new Worker(this.#file);
    // One that dies between two logs is replaced at the next.
    worker.on('error', () => {});
    worker.once('exit', () => void (this.#worker === worker && (this.#worker = null)));
    return (this.#worker = worker);
  }
}

interface Fallen {
  /** Node's; null where it ended without an error. */
  readonly code: string | null;
}

function answerOf(
  worker: Worker,
  [log, facilities, { settings, judging, packsLog = false }, job]: Parameters<DebriefLog>,
): Promise<{ readonly outcome: Outcome<DebriefedBytes> } | Fallen> {
  const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  return new Promise((resolve) => {
    const settle = (made: { readonly outcome: Outcome<DebriefedBytes> } | Fallen) => {
      worker.off('message', heard).off('error', failed).off('exit', ended);
      resolve(made);
    };
    const heard = (answer: Answer) => {
      if ('outcome' in answer) settle(answer);
      else {
        job.progress(answer.share);
        if (job.cancelled()) Atomics.store(stop, 0, 1);
      }
    };
    const failed = ({ code }: { code?: string }) => settle({ code: code ?? null });
    const ended = () => settle({ code: null });
    // Of what is asked no more than this: an import's asking holds a rule too, which no other thread can be handed.
    const question: Question = { log, facilities, asked: { settings, judging, packsLog }, stop };
    worker.postMessage(question);
    worker.on('message', heard).on('error', failed).on('exit', ended);
  });
}

function stopped(name: string): Outcome<never> {
  return refused('stopped', `Stopped before ${name} was debriefed.`);
}

function tooLarge(name: string): Outcome<never> {
  return refused('log-too-large', `${name} needs more memory than there is.`);
}
