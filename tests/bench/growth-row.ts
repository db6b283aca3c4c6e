import { debriefLog } from '../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../core/standard/standards.ts';
import { NOTHING_STATED, type Stated } from '../../core/standard/stated.ts';
import { benchLog } from './bench-log.ts';
import { timingOf } from './measure.ts';
import { assert, benchFacility, JOB, sourceOf, type Row } from './rows.ts';

const ROUNDS = 3;
const TEN_HZ = 10;

/** A log of the benchmarks, and one of a receiver alone with the wind stated: more is worked out for it than is read. */
const KINDS: readonly {
  readonly what: string;
  readonly lacks: readonly string[];
  readonly stated: Stated;
}[] = [
  { what: 'all recorded', lacks: [], stated: NOTHING_STATED },
  {
    what: 'a receiver alone, wind stated',
    lacks: ['Indicated Altitude (ft)', 'Indicated Airspeed (kt)', 'Vertical Speed (ft/min)'],
    stated: { ...NOTHING_STATED, targetAirspeedKt: 105, wind: { fromTrueDeg: 80, speedKt: 15 } },
  },
];
const SIZES = [1000, 10_000, 100_000, 1_000_000];

/**
 * How the time of a debrief grows: that of a fix among a million over that of a fix among a hundred thousand, where the
 * fixed costs are small in both. More than twice would be a step that looks at everything again for every fix, or for
 * every approach.
 */
export async function growth(): Promise<Row> {
  const ratios: number[] = [];
  const details: string[] = [];
  for (const { what, lacks, stated } of KINDS) {
    const perFixUs = new Map<number, number>();
    for (const fixes of SIZES) {
      const whole = [...benchLog(fixes, TEN_HZ)].join('');
      const text = lacks.reduce((log, header) => log.replace(header, 'Other'), whole);
      perFixUs.set(fixes, ((await debriefMs(text, fixes, stated)) / fixes) * 1000);
    }
    ratios.push(perFixUs.get(1_000_000)! / perFixUs.get(100_000)!);
    const figures = [...perFixUs].map(([fixes, us]) => `${fixes.toLocaleString('en')}: ${us.toFixed(1)}`);
    details.push(`${what}, µs a fix of ${figures.join(', ')}`);
  }
  const spread = timingOf(ratios);
  return {
    what: 'time of a fix in a debrief of 1,000,000, over that in one of 100,000',
    budget: 2,
    ratio: spread.max,
    spread,
    detail: details.join('; '),
  };
}

async function debriefMs(text: string, fixes: number, stated: Stated): Promise<number> {
  const judging = { standard: DEFAULT_STANDARD, stated };
  const runs: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    globalThis.gc?.();
    const startMs = performance.now();
    const debrief = await debriefLog(sourceOf(text), benchFacility(), {}, JOB, judging);
    runs.push(performance.now() - startMs);
    assert(debrief.ok && debrief.value.log.fixes === fixes, 'fixes are missing');
  }
  return timingOf(runs).median;
}
