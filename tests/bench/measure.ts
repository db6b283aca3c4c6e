/** Times of several runs of the same work, milliseconds. */
export interface Timing {
  readonly runs: readonly number[];
  readonly min: number;
  readonly median: number;
  readonly max: number;
}

export function timingOf(runs: readonly number[]): Timing {
  const sorted = [...runs].sort((a, b) => a - b);
  return { runs, min: sorted[0]!, median: sorted[sorted.length >> 1]!, max: sorted.at(-1)! };
}

/**
 * Times two pieces of work in turn, A B A B …, after one warm-up of each: a machine that slows down slows both. The
 * first ratio is of medians; the pairs tell how far to trust it.
 */
export async function sideBySide(
  rounds: number,
  work: () => unknown,
  reference: () => unknown,
): Promise<{ work: Timing; reference: Timing; ratio: number; pairs: Timing }> {
  await work();
  await reference();
  const workMs: number[] = [];
  const referenceMs: number[] = [];
  for (let round = 0; round < rounds; round++) {
    workMs.push(await timed(work));
    referenceMs.push(await timed(reference));
  }
  const worked = timingOf(workMs);
  const referred = timingOf(referenceMs);
  return {
    work: worked,
    reference: referred,
    ratio: worked.median / referred.median,
    pairs: timingOf(workMs.map((ms, i) => ms / referenceMs[i]!)),
  };
}

async function timed(work: () => unknown): Promise<number> {
  globalThis.gc?.();
  const startMs = performance.now();
  await work();
  return performance.now() - startMs;
}
