import type { Case } from './case.ts';
import type { CriterionId } from './criterion-ids.ts';
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
    counted: [],
    assessedS: 0,
    outsideS: null,
    excursions: [],
    insideHalfShare: null,
    verdict: 'not-assessed',
    why,
    allowed: null,
  };
}

/** Why a standard has no limit for a criterion. */
export function lackOf({ standard }: Case, id: CriterionId): string {
  return standard.lacks?.[id] ?? 'the standard sets no limit for it here';
}
