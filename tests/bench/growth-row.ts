import { debriefLog } from '../../core/analyze.ts';
import { benchLog } from './bench-log.ts';
import { timingOf } from './measure.ts';
import { assert, benchFacility, JOB, sourceOf, type Row } from './rows.ts';

const SIZES = [1000, 10_000, 100_000, 1_000_000];
const ROUNDS = 3;
const TEN_HZ = 10;

/**
 * How the time of a debrief grows: that of a fix among a million over that of a fix among a hundred thousand, where the
 * fixed costs are small in both. More than twice would be a step that looks at everything again for every fix.
 */
export async function growth(): Promise<Row> {
  const perFix = new Map<number, number>();
  for (const fixes of SIZES) {
    const text = [...benchLog(fixes, TEN_HZ)].join('');
    const runs: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      globalThis.gc?.();
      const startMs = performance.now();
      const debrief = await debriefLog(sourceOf(text), benchFacility(), {}, JOB);
      runs.push(performance.now() - startMs);
      assert(debrief.ok && debrief.value.log.fixes === fixes, 'fixes are missing');
    }
    perFix.set(fixes, (timingOf(runs).median / fixes) * 1000);
  }
  const ratio = perFix.get(1_000_000)! / perFix.get(100_000)!;
  return {
    what: 'time of a fix in a debrief of 1,000,000, over that in one of 100,000',
    budget: 2,
    ratio,
    spread: { min: ratio, median: ratio, max: ratio },
    detail: [...perFix]
      .map(([fixes, us]) => `${fixes.toLocaleString('en')}: ${us.toFixed(1)} µs a fix`)
      .join(', '),
  };
}
