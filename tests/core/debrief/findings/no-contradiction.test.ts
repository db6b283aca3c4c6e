import { beforeAll, describe, expect, it } from 'vitest';
import type { ApproachDebrief, DebriefFinding } from '../../../../core/debrief/debrief.ts';
import { FINDING_RULES } from '../../../../core/debrief/findings/rules.ts';
import type { Stated } from '../../../../core/standard/stated.ts';
import { secondsOf } from '../../../../core/units/utc.ts';
import { debriefed, filesOf } from '../../../support/mistakes/debriefed.ts';
import { randomPlan } from '../../../support/scenarios/random-plan.ts';

/** Flights of chance; HALFDOT_LONG flies two thousand (`npm run test:long`). */
const FLIGHTS = process.env['HALFDOT_LONG'] ? 2000 : 60;

interface Said {
  readonly flight: string;
  readonly approach: ApproachDebrief;
  readonly finding: DebriefFinding;
}

/** Statements as people make them: not always, and not always the same. */
function statedOf(seed: number): Partial<Stated> {
  const seen = (['seen', 'not-seen', 'not-stated'] as const)[seed % 3]!;
  return {
    conditions: (['simulated', 'vmc', 'not-stated'] as const)[(seed >> 1) % 3]!,
    visualReferenceAtMinimums: seen,
    targetAirspeedKt: seed % 4 === 0 ? null : 90,
  };
}

const verdictOf = ({ criteria }: ApproachDebrief, id: string) =>
  criteria.find((criterion) => criterion.id === id)?.verdict;
const gateOf = ({ stability }: ApproachDebrief, gate: string) => stability.find((one) => one.gate === gate);
/** Met, with nothing outside, and never beyond half scale on final as the log has it. */
function isSpotless({ criteria, segments }: ApproachDebrief, needle: 'localizer' | 'glidepath'): boolean {
  const criterion = criteria.find(({ id }) => id === `${needle}-final`);
  const largest = segments.find(({ kind }) => kind === 'final')?.[needle]?.maxAbsFullScale ?? Infinity;
  return criterion?.verdict === 'met' && criterion.excursions.length === 0 && largest <= 0.5;
}
/** Of final alone: what happened before it no verdict of final speaks of. */
const isOnFinal = ({ approach: { segments }, finding }: Said): boolean =>
  secondsOf(finding.fromUtc) >=
  secondsOf(segments.find(({ kind }) => kind === 'final')?.startUtc ?? '9999-01-01T00:00:00Z');
const ruleOf = (id: string) => FINDING_RULES.find((rule) => rule.id === id)!;

/** What would contradict: the finding that would, and when. */
const CONTRADICTIONS: readonly (readonly [what: string, is: (said: Said) => boolean])[] = [
  [
    'a fault of where a needle stood that was met well inside half scale',
    (said) => {
      const { stoodOff } = ruleOf(said.finding.id);
      return stoodOff !== null && isOnFinal(said) && isSpotless(said.approach, stoodOff);
    },
  ],
  [
    'unstable at 500 ft where that gate was held, unclear or not seen',
    ({ approach, finding }) =>
      finding.id === 'unstable-and-continued' && gateOf(approach, 'gate-500')?.verdict !== 'not-met',
  ],
  [
    'minimums missed that were met, unclear or not assessed',
    ({ approach, finding }) =>
      ['missed-late', 'continued-unseen'].includes(finding.id) &&
      verdictOf(approach, 'minimums') !== 'not-met',
  ],
  [
    'fast at a gate that no airspeed failed',
    ({ approach: { stability }, finding }) =>
      finding.id === 'fast-at-gate' && stability.every(({ failed }) => !failed.includes('airspeed')),
  ],
  [
    'a needle praised that was not met, or was outside',
    ({ approach, finding }) => {
      const needles = {
        steady: ['localizer', 'glidepath'],
        'steady-localizer': ['localizer'],
        'steady-glidepath': ['glidepath'],
      };
      const praised = needles[finding.id as keyof typeof needles] ?? [];
      return praised.some((needle) => {
        const { verdict, excursions } = approach.criteria.find(({ id }) => id === `${needle}-final`)!;
        return verdict !== 'met' || excursions.length > 0;
      });
    },
  ],
  [
    'a needle praised of which a fault is told',
    ({ approach: { findings }, finding }) => {
      const worked = { 'steady-localizer': 'localizer', 'steady-glidepath': 'glidepath' }[finding.id];
      const faults = findings.filter(({ id, kind }) => {
        const { stoodOff } = ruleOf(id);
        if (kind !== 'fault') return false;
        return finding.id === 'steady'
          ? id.startsWith('hunting')
          : id === `hunting-${worked}` || (worked !== undefined && stoodOff === worked);
      });
      return faults.some(
        ({ fromUtc, toUtc }) =>
          secondsOf(fromUtc) <= secondsOf(finding.toUtc) && secondsOf(toUtc) >= secondsOf(finding.fromUtc),
      );
    },
  ],
  [
    'a go-around praised that was none, or was late',
    ({ approach: { outcome, findings }, finding }) =>
      finding.id === 'went-around-in-time' &&
      (!['missed-approach', 'low-approach'].includes(outcome) ||
        findings.some(({ id }) => ['unstable-and-continued', 'missed-late'].includes(id))),
  ],
  [
    'a first sentence that says stable at 500 ft, and a finding that says it was not',
    ({ approach: { summary }, finding }) =>
      finding.id === 'unstable-and-continued' &&
      /^Stable at [^;]*500 ft/.test(summary) &&
      !summary.includes('not at 500 ft'),
  ],
  [
    'a first sentence that says a needle was lost, and a finding that praises it',
    ({ approach: { summary }, finding }) =>
      (['steady', 'steady-localizer'].includes(finding.id) && summary.includes('lost the localizer')) ||
      (['steady', 'steady-glidepath'].includes(finding.id) && summary.includes('lost the glidepath')),
  ],
  [
    'a first sentence that calls the decision sound, and a finding that calls it late',
    ({ approach: { summary }, finding }) =>
      finding.id === 'missed-late' && summary.includes('a sound decision'),
  ],
];

describe(`the findings of ${FLIGHTS} flights of chance`, () => {
  const said: Said[] = [];
  const ranks: string[] = [];
  let ungraded = 0;
  beforeAll(async () => {
    for (let seed = 0; seed < FLIGHTS; seed++) {
      const plan = randomPlan(seed);
      const flight = { plan, stated: statedOf(seed) };
      const recorded = seed % 3 === 0 ? 'phone' : 'panel';
      for (const approach of await debriefed(filesOf(flight)[recorded], flight)) {
        if (approach.kind !== 'approach') ungraded += approach.findings.length;
        said.push(
          ...approach.findings.map((finding) => ({
            flight: `${plan.name} by ${recorded}`,
            approach,
            finding,
          })),
        );
        for (const kind of ['fault', 'praise']) {
          const found = approach.findings.filter((one) => one.kind === kind).map(({ rank }) => rank);
          if (found.some((rank, i) => rank !== i + 1)) ranks.push(plan.name);
        }
      }
    }
  }, 2_400_000);
  const told = (is: (one: Said) => boolean): string[] =>
    said.filter(is).map(({ flight, approach, finding }) => `${flight}: ${finding.id} (${approach.summary})`);

  it('are many, of many kinds', () => {
    expect(said.length).toBeGreaterThan(FLIGHTS);
    expect(new Set(said.map(({ finding }) => finding.id)).size).toBeGreaterThan(12);
  });

  it.each(CONTRADICTIONS)('never are %s', (_what, is) => expect(told(is)).toEqual([]));

  it('are ranked from 1 without a gap, each kind by itself', () => expect(ranks).toEqual([]));

  it('are none of what is no approach', () => expect(ungraded).toBe(0));

  it('lie within their approach, or the minute after it', () => {
    const isElsewhere = ({ approach, finding }: Said): boolean =>
      secondsOf(finding.fromUtc) < secondsOf(approach.startUtc) - 1 ||
      secondsOf(finding.toUtc) < secondsOf(finding.fromUtc) ||
      secondsOf(finding.toUtc) > secondsOf(approach.endUtc) + 61;
    expect(told(isElsewhere)).toEqual([]);
  });

  it('are one to four short sentences without a hole in them, and faults have an exercise', () => {
    const isWrong = ({ finding: { kind, text, practise, evidence } }: Said): boolean =>
      /NaN|undefined|null|Infinity/.test(text) ||
      Object.values(evidence).some((value) => !Number.isFinite(value)) ||
      text.length > 330 ||
      (practise === null) !== (kind === 'praise');
    expect(told(isWrong)).toEqual([]);
  });
});
