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

/** So many logs has each of them, one that it debriefs and others that lie ready: it never waits for this thread. */
const ASKED_AT_ONCE = 2;

/**
 * `count` of them, each started with its first log. Where the built worker is not there, or none can be started, the
 * work is done in this thread.
 */
export function debriefersOf(count: number, file = workerFile()): DebriefPool {
  const debriefers = Array.from({ length: count }, () => new Debriefer(file));
  const waiting: ((debriefer: Debriefer) => void)[] = [];
  return {
    count,
    working: () => debriefers.filter(({ isWorking }) => isWorking).length,
    async debrief(...words) {
      const idlest = debriefers.reduce((a, b) => (b.asked < a.asked ? b : a));
      const isFree = idlest.asked < ASKED_AT_ONCE;
      const debriefer = isFree ? idlest : await new Promise<Debriefer>((resolve) => waiting.push(resolve));
      try {
        return await debriefer.debrief(words);
      } finally {
        waiting.shift()?.(debriefer);
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

interface Asked {
  readonly words: Parameters<DebriefLog>;
  readonly settle: (made: Outcome<DebriefedBytes> | Promise<Outcome<DebriefedBytes>>) => void;
  /** Shared with the worker: set when the log is no longer wanted. */
  readonly stop: Int32Array;
}

class Debriefer {
  readonly #file: URL | null;
  #worker: Worker | null = null;
  #falls = 0;
  #isClosed = false;
  /** What the worker has, in the order in which it answers. */
  #inWork: Asked[] = [];
  /** So many logs it has, in whatever thread. */
  asked = 0;

  constructor(file: URL | null) {
    this.#file = file;
  }

  async debrief(words: Parameters<DebriefLog>): Promise<Outcome<DebriefedBytes>> {
    this.asked++;
    try {
      return await new Promise((settle) => {
        const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
        this.#ask({ words, settle, stop });
      });
    } finally {
      this.asked--;
    }
  }

  get isWorking(): boolean {
    return this.#worker !== null;
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await this.#worker?.terminate();
  }

  #ask(asked: Asked): void {
    const [log, facilities, { settings, judging, packsLog = false }] = asked.words;
    if (this.#isClosed) return asked.settle(stopped(log.name));
    const worker = this.#started();
    if (worker === null) return asked.settle(this.#here(asked));
    // Of what is asked no more than this: an import's asking holds a rule too, which no other thread can be handed.
    const question: Question = {
      log,
      facilities,
      asked: { settings, judging, packsLog },
      stop: asked.stop,
    };
    worker.postMessage(question);
    this.#inWork.push(asked);
  }

  #started(): Worker | null {
    if (this.#file === null || this.#falls >= FALLS) return null;
    if (this.#worker) return this.#worker;
    const worker = new Worker(this.#file);
    // Node's; null where it ends without an error.
    let code: string | null = null;
    worker.on('message', (answer: Answer) => this.#heard(answer));
    worker.on('error', (error: { code?: string }) => void (code = error.code ?? null));
    worker.once('exit', () => this.#fell(code));
    return (this.#worker = worker);
  }

  #heard(answer: Answer): void {
    const { words, settle, stop } = this.#inWork[0]!;
    const job = words[3];
    if ('outcome' in answer) {
      this.#falls = 0;
      this.#inWork.shift();
      settle(answer.outcome);
    } else {
      job.progress(answer.share);
      if (job.cancelled()) Atomics.store(stop, 0, 1);
    }
  }

  /** It fell over what it had in hand; the rest is asked again. One that ends between two logs is replaced at the next. */
  #fell(code: string | null): void {
    const [inHand, ...others] = this.#inWork;
    this.#inWork = [];
    this.#worker = null;
    if (!inHand) return;
    this.#falls++;
    for (const other of others) this.#ask(other);
    const [{ name }] = inHand.words;
    if (this.#isClosed) inHand.settle(stopped(name));
    // In this thread it would take the whole program with it.
    else inHand.settle(code === 'ERR_WORKER_OUT_OF_MEMORY' ? tooLarge(name) : this.#here(inHand));
  }

  #here({ words: [log, facilities, asked, job] }: Asked): Promise<Outcome<DebriefedBytes>> {
    const cancelled = () => this.#isClosed || job.cancelled();
    return debriefBytes(log, facilities, asked, { progress: (share) => job.progress(share), cancelled });
  }
}

function stopped(name: string): Outcome<never> {
  return refused('stopped', `Stopped before ${name} was debriefed.`);
}

function tooLarge(name: string): Outcome<never> {
  return refused('log-too-large', `${name} needs more memory than there is.`);
}
