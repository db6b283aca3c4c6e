import type { CriterionJudgement } from './judgement.ts';
import type { Limit } from './standard.ts';

/** A criterion that this approach, this log or this standard cannot answer, and why. */
export function notAssessed(
  id: string,
  title: string,
  why: string,
  limit: Limit | null = null,
  unit: CriterionJudgement['unit'] = null,
): CriterionJudgement {
  return {
    id,
    title,
    limit,
    unit,
    measured: null,
    halfWidth: null,
    counted: [],
    assessedS: 0,
    outsideS: null,
    assessedNm: null,
    outsideNm: null,
    outsideRangeS: null,
    excursions: [],
    insideHalfShare: null,
    verdict: 'not-assessed',
    why,
    allowed: null,
  };
}
