import fc from 'fast-check';
import type { ApproachJudgement, CriterionJudgement, Verdict } from '../../../core/standard/judgement.ts';
import { ALL_IDS, criterion, excursion, gate, item, judgement, lost } from './make-judgement.ts';

const NOT_IN_TIME: ReadonlySet<string> = new Set(['stability', 'minimums']);

function anyCriterion(id: string, verdicts: readonly Verdict[]): fc.Arbitrary<CriterionJudgement> {
  const parts = fc.record({
    verdict: fc.constantFrom(...verdicts),
    outsideS: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 80, noNaN: true })),
    assessedS: fc.double({ min: 80, max: 300, noNaN: true }),
    insideHalfShare: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  return parts.map((made) => {
    if (NOT_IN_TIME.has(id)) return criterion(id, { verdict: made.verdict });
    const excursions = made.outsideS > 0 ? [excursion(made.outsideS, made.verdict === 'met')] : [];
    return criterion(id, { ...made, excursions });
  });
}

/** Approaches with all seven criteria and a bank limit of the user's own, of any verdicts. */
export function anyJudgement(
  verdicts: readonly Verdict[] = ['met', 'not-met', 'unclear', 'not-assessed'],
): fc.Arbitrary<ApproachJudgement> {
  const criteria = fc.tuple(...[...ALL_IDS, 'bank'].map((id) => anyCriterion(id, verdicts)));
  return fc
    .record({
      criteria,
      atGate: fc.constantFrom<Verdict>('met', 'not-met', 'unclear', 'not-assessed'),
      isLost: fc.boolean(),
      safety: fc.array(fc.constant('full scale for 4 s'), { maxLength: 1 }),
      soundGoAround: fc.constantFrom(null, 'begun in time'),
      ceiling: fc.constantFrom(
        null,
        { level: 2, why: 'capped' } as const,
        { level: 4, why: 'capped' } as const,
      ),
    })
    .map(({ atGate, isLost, ...rest }) => {
      const lostAfter = isLost ? [lost('sink', 1, 5)] : [];
      return judgement({ ...rest, gates: [gate({ items: [item('sink', atGate)], lostAfter })] });
    });
}
