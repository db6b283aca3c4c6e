import type { Issue } from '../../core/issue/issue.ts';
import type { FromWorker, Job, JobInput, JobOutput, ToWorker } from '../worker/protocol.ts';

/** What became of a job. */
export type Done<T> =
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'refused'; readonly issue: Issue }
  | { readonly kind: 'fault'; readonly message: string };

/** A job under way. */
export interface Running<T> {
  readonly done: Promise<Done<T>>;
  cancel(): void;
}

interface Waiting {
  readonly resolve: (done: Done<never>) => void;
  readonly progress: (share: number | null) => void;
}

/** The worker that reads and judges, so that the page never stands still. */
export class Analyst {
  readonly #worker = new Worker(new URL('../worker/worker.ts', import.meta.url), { type: 'module' });
  readonly #waiting = new Map<number, Waiting>();
  #last = 0;

  constructor() {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => this.#hear(data));
  }

  start<J extends Job>(
    job: J,
    input: JobInput<J>,
    progress: (share: number | null) => void = () => {},
  ): Running<JobOutput<J>> {
    const id = ++this.#last;
    const done = new Promise<Done<JobOutput<J>>>((resolve) => {
      this.#waiting.set(id, { resolve: resolve as Waiting['resolve'], progress });
    });
    this.#worker.postMessage({ id, job, input } as ToWorker);
    return { done, cancel: () => this.#worker.postMessage({ id, job: 'cancel' } satisfies ToWorker) };
  }

  #hear(message: FromWorker): void {
    const waiting = this.#waiting.get(message.id);
    if (!waiting) return;
    if (message.kind === 'progress') {
      waiting.progress(message.share);
      return;
    }
    this.#waiting.delete(message.id);
    waiting.resolve(message as unknown as Done<never>);
  }
}
