import type { Standard } from '../../../core/standard/standard.ts';
import { fly } from '../flight/fly.ts';
import { AUGMENTED, PHONE, PLAIN } from '../flight/gnss-error.ts';
import { randomPlan } from '../scenarios/random-plan.ts';
import { trial, type Coverage, type Trial, type Way } from './trial.ts';

/** Shares of all fixes and all verdicts of many flights. */
export interface Tally {
  readonly flights: number;
  /** Of fixes: the true needle lies within the band. */
  readonly localizerWithin: number;
  readonly glidepathWithin: number;
  /** Of verdicts met: in truth not met; and the other way round. */
  readonly metWrong: number;
  readonly notMetWrong: number;
  /** Of all verdicts that are no "not assessed". */
  readonly unclear: number;
  readonly verdicts: number;
}

/**
 * The ways that are tried. Half of a receiver's slow variance stays the same through a flight, as the program thinks
 * of it (ours); a phone's log has nothing but positions, and a bias that the roll after a landing shows.
 */
export const WAYS = {
  augmented: { receiver: 'augmented', file: 'table', gnss: { ...AUGMENTED, constantShare: 0.5 } },
  plain: { receiver: 'plain', file: 'table', gnss: { ...PLAIN, constantShare: 0.5 } },
  phone: { receiver: 'phone', file: 'positions', gnss: { ...PHONE, timeConstantS: 300, constantShare: 0.5 } },
} as const satisfies Record<string, Way>;

/** Flies flights of chance, records each as one receiver would, and tells how far the program can be believed. */
export async function tallyOf(
  way: Way,
  seeds: readonly number[],
  standard: Standard,
  tick: (done: number) => void = () => {},
): Promise<Tally> {
  const trials: Trial[] = [];
  for (const [k, seed] of seeds.entries()) {
    trials.push(await trial(fly(randomPlan(seed)), way, standard));
    tick(k + 1);
  }
  const verdicts = trials.flatMap((one) => one.verdicts);
  const wrong = (told: 'met' | 'not-met', truth: 'met' | 'not-met') => {
    const of = verdicts.filter((one) => one.told === told);
    return of.filter((one) => one.truth === truth).length / of.length;
  };
  const assessed = verdicts.filter(({ told }) => told !== 'not-assessed');
  return {
    flights: seeds.length,
    localizerWithin: shareOf(trials.map(({ localizer }) => localizer)),
    glidepathWithin: shareOf(trials.map(({ glidepath }) => glidepath)),
    metWrong: wrong('met', 'not-met'),
    notMetWrong: wrong('not-met', 'met'),
    unclear: assessed.filter(({ told }) => told === 'unclear').length / assessed.length,
    verdicts: assessed.length,
  };
}

function shareOf(each: readonly Coverage[]): number {
  const sum = (key: keyof Coverage) => each.reduce((total, one) => total + one[key], 0);
  return sum('within') / sum('fixes');
}
