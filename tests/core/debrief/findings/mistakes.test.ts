import { beforeAll, describe, expect, it } from 'vitest';
import type { RecordedBy } from '../../../support/mistakes/debriefed.ts';
import {
  answersTo,
  areAmongThree,
  falseFaults,
  isFirst,
  type Answer,
  type Flown,
} from '../../../support/mistakes/answers.ts';
import { MISTAKES } from '../../../support/mistakes/mistakes.ts';

/** Flights of each mistake; HALFDOT_LONG flies two hundred (`npm run test:long`). */
const LONG = process.env['HALFDOT_LONG'] !== undefined;
const FLIGHTS = LONG ? 200 : 5;
const IDS = Object.keys(MISTAKES);

/**
 * What a phone's log often cannot prove: it has no airspeed and, where nobody landed, heights that may be 66 ft off. Of
 * these the least share that is told all the same; the table in DEVELOPERS.md has the measured ones.
 */
const BEYOND_A_PHONE: Readonly<Record<string, number>> = {
  'unstable-and-continued': 0.8,
  'missed-late': 0.1,
  'speed-decaying': 0,
  'fast-at-gate': 0.1,
};
/** Of these it can hardly ever: the limit and the error are as large as the mistake. */
const HARDLY_EVER: readonly Flown[] = [
  'missed-late',
  'speed-decaying',
  'fast-at-gate',
  'went-around-in-time',
];

async function flown(name: Flown, flights: number): Promise<Record<RecordedBy, Answer[]>> {
  const answers: Record<RecordedBy, Answer[]> = { panel: [], phone: [] };
  for (let seed = 0; seed < flights; seed++) {
    const { panel, phone } = await answersTo(name, seed, ['panel', 'phone']);
    answers.panel.push(panel!);
    answers.phone.push(phone!);
  }
  return answers;
}

const share = (answers: readonly Answer[], is: (answer: Answer) => boolean): number =>
  answers.filter(is).length / answers.length;
/** The answers that are not so, to be read where a rate is missed. */
const others = (answers: readonly Answer[], is: (answer: Answer) => boolean): string =>
  answers
    .filter((answer) => !is(answer))
    .map(({ name, faults }) => `${name}: ${faults?.join(', ') ?? 'no approach'}`)
    .join('\n');
const hasFalse = (answer: Answer): boolean => falseFaults(answer).length > 0;

/** Of few flights one may fail by chance where of two hundred ten may. */
const least = (rate: number): number => (LONG ? rate : Math.max(0, Math.floor(rate * FLIGHTS) / FLIGHTS));

describe(`${FLIGHTS} flights of each mistake`, () => {
  const flights = new Map<Flown, Record<RecordedBy, Answer[]>>();
  beforeAll(async () => {
    for (const name of ['tidy', 'went-around-in-time', ...IDS]) flights.set(name, await flown(name, FLIGHTS));
    flights.set('two', await flown('two', LONG ? FLIGHTS : 16));
  }, 3_600_000);
  const of = (name: Flown, recorded: RecordedBy): Answer[] => flights.get(name)![recorded];
  const single = (recorded: RecordedBy): Answer[] => IDS.flatMap((id) => of(id, recorded));

  it.each(['panel', 'phone'] as const)('a tidy pilot gets no fault (%s)', (recorded) => {
    const isClean = ({ faults }: Answer): boolean => faults?.length === 0;
    expect(
      share(of('tidy', recorded), isClean),
      others(of('tidy', recorded), isClean),
    ).toBeGreaterThanOrEqual(0.95);
  });

  it('a tidy pilot gets a word of praise', () => {
    const isPraised = ({ praise }: Answer): boolean => praise.includes('steady');
    expect(
      share(of('tidy', 'panel'), isPraised),
      others(of('tidy', 'panel'), isPraised),
    ).toBeGreaterThanOrEqual(0.95);
  });

  it.each(IDS)('%s is said first', (id) => {
    expect(share(of(id, 'panel'), isFirst), others(of(id, 'panel'), isFirst)).toBeGreaterThanOrEqual(
      least(0.95),
    );
  });

  it('the right one is said first in 95 of 100', () => {
    expect(share(single('panel'), isFirst), others(single('panel'), isFirst)).toBeGreaterThanOrEqual(0.95);
  });

  it('in 95 of 100 nothing else is said that was not so', () => {
    const isTrue = (answer: Answer): boolean => !hasFalse(answer);
    expect(share(single('panel'), isTrue), others(single('panel'), isTrue)).toBeGreaterThanOrEqual(0.95);
    expect(share(single('phone'), isTrue), others(single('phone'), isTrue)).toBeGreaterThanOrEqual(0.95);
  });

  it.each(LONG ? IDS : IDS.filter((id) => !(id in BEYOND_A_PHONE)))(
    '%s is said first of what a phone recorded, as far as that can tell it',
    (id) => {
      const answers = of(id, 'phone');
      const rate = least(BEYOND_A_PHONE[id] ?? 0.85);
      expect(share(answers, isFirst), others(answers, isFirst)).toBeGreaterThanOrEqual(rate);
    },
  );

  it.each(IDS)('nothing else is said of a flight with %s that was not so, by panel and by phone', (id) => {
    const isTrue = (answer: Answer): boolean => !hasFalse(answer);
    for (const recorded of ['panel', 'phone'] as const) {
      const answers = of(id, recorded);
      expect(share(answers, isTrue), others(answers, isTrue)).toBeGreaterThanOrEqual(least(0.95));
    }
  });

  it('not stable at 500 ft and continued is said first where a phone can tell it', () => {
    const told = of('unstable-and-continued', 'phone').filter((answer) => answer.canTell);
    expect(told.length).toBeGreaterThan(FLIGHTS / 2);
    expect(share(told, isFirst), others(told, isFirst)).toBeGreaterThanOrEqual(LONG ? 0.9 : 0.6);
  });

  it.each(HARDLY_EVER)('%s: a phone can hardly ever tell', (name) => {
    const can = share(of(name, 'phone'), (answer) => answer.canTell === true);
    expect(can).toBeLessThanOrEqual(LONG ? 0.1 : 0.2);
  });

  it('nothing is said of a speed that nobody recorded', () => {
    const isOfSpeed = ({ faults }: Answer): boolean => faults?.includes('speed-decaying') === true;
    expect(share(of('speed-decaying', 'phone'), isOfSpeed)).toBe(0);
  });

  it('of two mistakes both are among the three in 9 of 10', () => {
    expect(
      share(of('two', 'panel'), areAmongThree),
      others(of('two', 'panel'), areAmongThree),
    ).toBeGreaterThanOrEqual(0.9);
  });

  it('of two mistakes that a phone can tell both are among the three in 85 of 100', () => {
    const told = of('two', 'phone').filter(({ mistakes }) => mistakes.every((id) => !(id in BEYOND_A_PHONE)));
    expect(told.length).toBeGreaterThan(0);
    expect(share(told, areAmongThree), others(told, areAmongThree)).toBeGreaterThanOrEqual(least(0.85));
  });

  it('who goes around in good time is told that it was', () => {
    const isPraised = ({ praise }: Answer): boolean => praise[0] === 'went-around-in-time';
    const answers = of('went-around-in-time', 'panel');
    expect(share(answers, isPraised), others(answers, isPraised)).toBeGreaterThanOrEqual(0.95);
  });
});
