import { beforeAll, describe, expect, it } from 'vitest';
import { PANEL } from '../../support/flight/altimeter-error.ts';
import { fly } from '../../support/flight/fly.ts';
import { AUGMENTED, PLAIN } from '../../support/flight/gnss-error.ts';
import { randomPlan } from '../../support/scenarios/random-plan.ts';
import type { TrueEvent } from '../../support/truth/true-approach.ts';
import {
  judge,
  ONE_A_SECOND,
  planned,
  readAs,
  TEN_A_SECOND,
  WITH_ERRORS,
  type Habit,
  type Reading,
} from './judged.ts';

/** Flights of chance; HALFDOT_LONG flies ten times as many (`npm run test:long`). */
const FLIGHTS = process.env['HALFDOT_LONG'] ? 2000 : 200;
const HABITS: readonly Habit[] = ['english', 'epoch', 'units', 'gpx', 'german'];

/** What is kept of a reading: two thousand flights with their columns would fill the memory. */
interface Kept {
  readonly differences: readonly string[];
  readonly outcomes: string;
  readonly trueOutcomes: string;
  /** The farthest apart of the moments between which a hair decides; endless where it decides whether one was. */
  readonly widestS: number;
  /** The same without the lowest point: of a pass flown level, a foot tells which of its seconds that was. */
  readonly widestButLowestS: number;
}

function kept({ found, expected, differences }: Reading): Kept {
  const events = expected.flatMap((approach) => approach.events);
  const widestS = (of: readonly TrueEvent[]): number =>
    Math.max(
      0,
      ...of.map(({ betweenS, doubtful }) =>
        doubtful ? Infinity : betweenS ? betweenS.toS - betweenS.fromS : 0,
      ),
    );
  return {
    differences,
    outcomes: planned(found.approaches).outcomes.join(),
    trueOutcomes: planned(expected).outcomes.join(),
    widestS: widestS(events),
    widestButLowestS: widestS(events.filter(({ kind }) => kind !== 'lowest-point')),
  };
}

interface Flown {
  readonly name: string;
  readonly planned: string;
  readonly truly: string;
  readonly tenHz: Kept;
  readonly oneHz: readonly Kept[];
  /** With the errors of an augmented receiver, and of a plain one. */
  readonly augmented: Kept;
  readonly plain: Kept;
}

/** Flies once; reads at ten fixes a second and one, by habits in turn; and as two receivers would have it. */
async function flown(seed: number): Promise<Flown> {
  const judged = judge(fly(randomPlan(seed)));
  const habit = (k: number): Habit => HABITS[(seed + k) % HABITS.length]!;
  const tenHzHabit = seed % 2 === 0 ? 'english' : 'gpx';
  const errors = { rateHz: 1, altimeter: PANEL, seed: 'with errors' } as const;
  const tenHz = kept(await readAs(judged, tenHzHabit, TEN_A_SECOND, { rateHz: 10 }));
  return {
    name: judged.truth.plan.name,
    planned: judged.truth.plan.outcomes.join(),
    truly: tenHz.trueOutcomes,
    tenHz,
    oneHz: [
      kept(await readAs(judged, habit(0), ONE_A_SECOND, { rateHz: 1 })),
      kept(await readAs(judged, habit(1), ONE_A_SECOND, { rateHz: 1 })),
    ],
    augmented: kept(await readAs(judged, 'english', WITH_ERRORS, { ...errors, gnss: AUGMENTED })),
    plain: kept(await readAs(judged, 'units', WITH_ERRORS, { ...errors, gnss: PLAIN })),
  };
}

const namesOf = (flights: readonly Flown[]): string => flights.map(({ name }) => name).join();

describe(`of ${FLIGHTS} flights of chance`, () => {
  const flights: Flown[] = [];
  beforeAll(async () => {
    for (let seed = 0; seed < FLIGHTS; seed++) flights.push(await flown(seed));
  }, 2_400_000);

  it('each that was an approach ended as it was built to, and 19 of 20 were', () => {
    const approaches = flights.filter(({ truly }) => truly !== '');
    const otherwise = approaches.filter(({ planned: built, truly }) => truly !== built);
    // Three in a thousand are flown so poorly that they are off the localizer for a minute before their ending begins.
    expect(otherwise.length, namesOf(otherwise)).toBeLessThanOrEqual(0.003 * FLIGHTS);
    expect(approaches.length / flights.length).toBeGreaterThan(0.93);
    expect(new Set(approaches.map(({ truly }) => truly)).size).toBe(8);
  });

  it('each is found without errors: outcome, every moment, no other, and both needles on final', () => {
    const wrong = flights.flatMap(({ name, tenHz, oneHz }) => {
      const sentences = [tenHz, ...oneHz].flatMap(({ differences }) => differences);
      return sentences.length === 0 ? [] : [`${name}: ${sentences.join('; ')}`];
    });
    expect(wrong.join('\n')).toBe('');
  });

  it.each([
    ['ten fixes', 'moment', 0.94, 1],
    ['ten fixes', 'moment but the lowest', 0.96, 1],
    ['one fix', 'moment', 0.8, 2],
    ['one fix', 'moment but the lowest', 0.89, 2],
  ] as const)(
    'in a log of %s a second a hair seldom moves a %s: none in %d of them by %d s',
    (pace, which, least, byS) => {
      const logs = flights.flatMap(({ tenHz, oneHz }) => (pace === 'ten fixes' ? [tenHz] : oneHz));
      const still = logs.filter((log) => (which === 'moment' ? log.widestS : log.widestButLowestS) < byS);
      expect(still.length / logs.length).toBeGreaterThanOrEqual(least);
    },
  );

  it('99 of 100 outcomes are found through the errors of a receiver and an altimeter', () => {
    const same = ({ outcomes, trueOutcomes }: Kept): boolean => outcomes === trueOutcomes;
    const wrong = flights.flatMap((flight) =>
      [flight.augmented, flight.plain].flatMap((reading) => (same(reading) ? [] : [flight])),
    );
    expect(wrong.length, namesOf(wrong)).toBeLessThanOrEqual(0.01 * 2 * FLIGHTS);
  });

  it('99 of 100 have, through the errors of an augmented receiver, every moment within 5 s and no other', () => {
    const wrong = flights.filter(({ augmented }) => augmented.differences.length > 0);
    const sentences = wrong.map(({ name, augmented }) => `${name}: ${augmented.differences.join('; ')}`);
    expect(wrong.length, sentences.join('\n')).toBeLessThanOrEqual(0.01 * FLIGHTS);
  });
});
