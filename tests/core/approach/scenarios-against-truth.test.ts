import { describe, expect, it } from 'vitest';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import type { FlightPlan } from '../../support/flight/flight-plan.ts';
import { fly } from '../../support/flight/fly.ts';
import { CHOUGHFELL } from '../../support/samples/choughfell.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { SAMPLE_FLIGHTS } from '../../support/samples/sample-flights.ts';
import { WHIMBRELNESS } from '../../support/samples/whimbrelness.ts';
import * as approaches from '../../support/scenarios/approaches.ts';
import { hairOf, judge, ONE_A_SECOND, planned, readAs, TEN_A_SECOND, type JudgedFlight } from './judged.ts';

const SCENARIOS = Object.values(approaches);
const SAMPLES = [...new Set(SAMPLE_FLIGHTS.map(({ plan }) => plan))];

/** Everything that is asked of a flight, each file's differences under its name. */
async function differencesOf(judged: JudgedFlight): Promise<Record<string, readonly string[]>> {
  const tenHz = { rateHz: 10 } as const;
  const oneHz = { rateHz: 1 } as const;
  return {
    'english, 10 Hz': (await readAs(judged, 'english', TEN_A_SECOND, tenHz)).differences,
    'gpx, 10 Hz': (await readAs(judged, 'gpx', TEN_A_SECOND, tenHz)).differences,
    'english, 1 Hz': (await readAs(judged, 'english', ONE_A_SECOND, oneHz)).differences,
    'units row, 1 Hz': (await readAs(judged, 'units', ONE_A_SECOND, oneHz)).differences,
    'german, 1 Hz': (await readAs(judged, 'german', ONE_A_SECOND, oneHz)).differences,
    'epoch, 1 Hz': (await readAs(judged, 'epoch', ONE_A_SECOND, oneHz)).differences,
    'gpx, 1 Hz': (await readAs(judged, 'gpx', ONE_A_SECOND, oneHz)).differences,
  };
}

async function expectNoDifference(plan: FlightPlan): Promise<void> {
  const judged = judge(fly(plan));
  // The plan, the flight's columns and the program: three that must agree.
  const truth = judged.by('indicated', hairOf('english', 10));
  expect(planned(truth)).toEqual({ outcomes: plan.outcomes, ungraded: plan.ungraded ?? [] });
  for (const [file, found] of Object.entries(await differencesOf(judged))) expect(found, file).toEqual([]);
}

describe.each([PETRELHOLM, CHOUGHFELL, WHIMBRELNESS])(
  'the truth of a flight at $name is found: outcome, every moment, no other, and both needles on final',
  (facility: FacilityFile) => {
    it.each(SCENARIOS)('%o', (scenario) => expectNoDifference(scenario(facility)));
  },
);

describe('the truth of a sample flight is found: outcome, every moment, no other, and both needles on final', () => {
  it.each(SAMPLES.map((plan) => [plan.name, plan] as const))('%s', (_, plan) => expectNoDifference(plan));
});
