import { describe, expect, it } from 'vitest';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import type { FlightPlan } from '../../support/flight/flight-plan.ts';
import { fly } from '../../support/flight/fly.ts';
import { CHOUGHFELL } from '../../support/samples/choughfell.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { WHIMBRELNESS } from '../../support/samples/whimbrelness.ts';
import { holdThenLanding, levelThroughGlidepath } from '../../support/scenarios/approaches.ts';
import * as none from '../../support/scenarios/no-approaches.ts';
import { judge, ONE_A_SECOND, readAs } from './judged.ts';

type Situation = (facility: FacilityFile) => FlightPlan;

const NOT_TOWARDS = /^No approach: nothing was flown towards this runway; it came within \d+\.\d NM/;
const NOT_DOWN = /it did not descend along the glidepath/;

/** What is flown, and the sentence that says why it is no approach. */
const NOTHING: readonly (readonly [string, Situation, RegExp])[] = [
  ['an overflight', none.overflight, NOT_TOWARDS],
  ['a flight straight through the localizer at 30°', (f) => none.through(f, 30), NOT_DOWN],
  ['a flight straight through the localizer at 90°', (f) => none.through(f, 90), NOT_TOWARDS],
  ['a landing the other way', none.reciprocalLanding, NOT_TOWARDS],
  ['circuits with a final of 1 NM', none.circuits, /it joined the final \d\.\d NM out, as a circuit does/],
  [
    'a landing on a parallel runway 750 ft away',
    (f) => none.parallelLanding(f, 750),
    /was flown to another runway, (7|8)[05]0 ft to the right/,
  ],
];

const LISTED: readonly (readonly [string, Situation, string, RegExp])[] = [
  ['a final joined at 2 NM', none.joinedAtTwoMiles, 'visual-final', /it joined the final \d\.\d NM out$/],
  ['level flight through the glidepath', levelThroughGlidepath, 'localizer-pass', NOT_DOWN],
];

async function readPlan(plan: FlightPlan) {
  const { found, expected, differences } = await readAs(judge(fly(plan)), 'english', ONE_A_SECOND, {
    rateHz: 1,
  });
  expect(differences).toEqual([]);
  expect(expected.some(({ kind }) => kind === 'approach')).toBe(plan.outcomes.length > 0);
  return found;
}

describe.each([PETRELHOLM, CHOUGHFELL, WHIMBRELNESS])('at $name', (facility: FacilityFile) => {
  it.each(NOTHING)('%s is no approach, and a sentence says why', async (_, situation, why) => {
    const { approaches, notes } = await readPlan(situation(facility));
    expect(approaches).toEqual([]);
    expect(notes.length).toBeGreaterThan(0);
    for (const { message } of notes) expect(message).toMatch(why);
  });

  it.each(LISTED)('%s is listed and not graded, and says why', async (_, situation, kind, why) => {
    const { approaches } = await readPlan(situation(facility));
    expect(approaches.map((approach) => approach.kind)).toEqual([kind]);
    expect(approaches[0]!.why).toMatch(why);
  });

  it('a landing on a parallel runway 1,500 ft away is no approach, and a sentence says why', async () => {
    const { approaches, notes } = await readPlan(none.parallelLanding(facility, 1500));
    expect(approaches.filter(({ kind }) => kind === 'approach')).toEqual([]);
    const sentences = [...notes.map(({ message }) => message), ...approaches.map(({ why }) => why)];
    expect(sentences.join()).toMatch(/another runway, 1[45][05]0 ft to the right|did not descend/);
  });

  it('a turn in a hold is listed as a pass, and the approach after it is found', async () => {
    const { approaches } = await readPlan(holdThenLanding(facility));
    expect(approaches.map(({ kind }) => kind)).toEqual(['localizer-pass', 'approach']);
    expect(approaches[0]!.why).toMatch(NOT_DOWN);
  });
});
