import { moment, type Case } from './case.ts';
import { isVectored } from './counting.ts';
import { timedCriteria } from './criteria.ts';
import { judgeGates, stabilityCriterion } from './gates.ts';
import type { ApproachJudgement, CriterionJudgement } from './judgement.ts';
import { judgeMinimums } from './minimums.ts';
import { safetyLimits, soundGoAround } from './safety.ts';

/** Slower logs give no level (design, section 9). */
const LEVEL_INTERVAL_S = 3;
/** From here on a log is a picture only: one fix in ten seconds, by a clock that may be half a second out (ours). */
const PICTURE_INTERVAL_S = 9.5;

/** Everything that a standard says of one approach. */
export function judgeApproach(sitting: Case): ApproachJudgement {
  const { medianIntervalS } = sitting.flown.track;
  const gates = judgeGates(sitting);
  const timed = timedCriteria(sitting);
  const [before, own] = [
    timed.filter(({ id }) => !isOwn(sitting, id)),
    timed.filter(({ id }) => isOwn(sitting, id)),
  ];
  const criteria = [...before, stabilityCriterion(sitting, gates), judgeMinimums(sitting), ...own];
  const isPicture = medianIntervalS >= PICTURE_INTERVAL_S;
  return {
    criteria: isPicture ? criteria.map(asPicture) : criteria,
    gates,
    safety: isPicture ? [] : safetyLimits(sitting, gates),
    soundGoAround: isPicture ? null : soundGoAround(sitting, criteria, gates),
    ceiling: ceilingOf(sitting),
    noLevelBecause: medianIntervalS > LEVEL_INTERVAL_S ? 'fixes are more than 3 s apart' : null,
  };
}

function isOwn({ standard }: Case, id: string): boolean {
  return standard.own.some((criterion) => criterion.id === id);
}

function asPicture(criterion: CriterionJudgement): CriterionJudgement {
  const why = 'fixes are about 10 s apart or more: a picture only';
  return { ...criterion, verdict: 'not-assessed', why, allowed: null };
}

function ceilingOf(sitting: Case): ApproachJudgement['ceiling'] {
  if (moment(sitting, 'localizer-established') === null)
    return { level: 2, why: 'the localizer was never established by 3 NM' };
  return isVectored(sitting) ? { level: 4, why: 'vectored onto final inside the fix' } : null;
}
