import { parentPort } from 'node:worker_threads';
import type { DefinedFacility } from '../../core/analyze.ts';
import type { Outcome } from '../../core/issue/issue.ts';
import { debriefBytes, type Asked, type DebriefedBytes, type LogBytes } from './debrief-bytes.ts';

/** One log to be debriefed; a worker answers one after the other, in the order in which it was asked. */
export interface Question {
  readonly log: LogBytes;
  readonly facilities: readonly [DefinedFacility, ...DefinedFacility[]];
  readonly asked: Asked;
  /** Shared with who asks: not 0 when the log is no longer wanted. */
  readonly stop: Int32Array;
}

/** Of each question any number of shares, then the outcome. */
export type Answer = { readonly share: number | null } | { readonly outcome: Outcome<DebriefedBytes> };

async function answer({ log, facilities, asked, stop }: Question): Promise<void> {
  const say = (words: Answer) => parentPort!.postMessage(words);
  const job = {
    progress: (share: number | null) => say({ share }),
    cancelled: () => Atomics.load(stop, 0) !== 0,
  };
  say({ outcome: await debriefBytes(log, facilities, asked, job) });
}

// A fault of ours is thrown here and ends the worker: the log is then debriefed by who asked, where it is met again.
let answered = Promise.resolve();
parentPort!.on('message', (question: Question) => void (answered = answered.then(() => answer(question))));
