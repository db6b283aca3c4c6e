import type { Watch } from './watch.ts';

/** Milliseconds: shorter than anybody notices, and long beside what a look at others costs. */
const STRETCH_MS = 20;

/** Calls a watch between small steps of long work, as often as others need to be let in. */
export class Pace {
  readonly #watch: Watch;
  readonly #steps: number;
  #done = 0;
  #since = performance.now();

  constructor(watch: Watch, steps: number) {
    this.#watch = watch;
    this.#steps = steps;
  }

  /** Before each of the steps. */
  async step(): Promise<void> {
    const share = this.#done++ / this.#steps;
    if (performance.now() - this.#since < STRETCH_MS) return;
    await this.#watch(share);
    this.#since = performance.now();
  }
}
