import type { CriterionPoints } from '../grade/points.ts';
import type { CriterionJudgement, JudgedExcursion } from '../standard/judgement.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefCriterion, ThreeFigures } from './debrief.ts';
import { unknownOf } from './known.ts';

/** One criterion as the answer holds it. */
export function criterionDebrief(
  judged: CriterionJudgement,
  points: CriterionPoints | null,
): DebriefCriterion {
  const { id, title, limit, unit, measured, outsideS, outsideRangeS, verdict, why } = judged;
  const lower = limit?.lower ?? null;
  const upper = limit?.upper ?? null;
  const values = {
    limit: upper !== null && lower === -upper ? upper : null,
    measured,
    timeOutsideS: outsideS === null ? null : threeFigures(outsideS, outsideRangeS!),
    assessedNm: judged.assessedNm,
    outsideNm: judged.outsideNm,
    halfWidth: judged.halfWidth,
    points: points?.given ?? null,
    pointsPossible: points?.possible ?? null,
  };
  const noPoints =
    verdict === 'unclear'
      ? 'Unclear: its points are neither given nor possible.'
      : 'Only an assessed criterion of a graded standard earns points.';
  const notTold = verdict === 'not-assessed' ? `Not assessed: ${why}.` : 'This criterion is not told by it.';
  return {
    id,
    title,
    lower,
    upper,
    unit,
    code: limit?.code ?? null,
    source: limit?.source ?? null,
    sourceStatus: limit?.status ?? null,
    counted: judged.counted.map(spanDebrief),
    assessedS: judged.assessedS,
    ...values,
    excursions: judged.excursions.map(excursionDebrief),
    verdict,
    why,
    allowed: judged.allowed,
    unknown: unknownOf(values, {
      limit:
        limit === null
          ? 'No single limit applies.'
          : 'The limit is not the same to both sides: see lower and upper.',
      measured: notTold,
      halfWidth:
        judged.measured === null
          ? notTold
          : 'No error is reckoned: the value is what the pilot flew by, or as logged.',
      timeOutsideS: notTold,
      assessedNm: notTold,
      outsideNm: notTold,
      points: noPoints,
      pointsPossible: noPoints,
    }),
  };
}

function excursionDebrief(excursion: JudgedExcursion): DebriefCriterion['excursions'][number] {
  const { peakS, peak, outsideS, prompt, untilEstablished } = excursion;
  const told = { ...spanDebrief(excursion), peakUtc: utcText(peakS)!, peak, outsideS, prompt };
  return untilEstablished ? { ...told, untilEstablished } : told;
}

function threeFigures(best: number, { atLeast, atMost }: { atLeast: number; atMost: number }): ThreeFigures {
  return { atLeast, best, atMost };
}

export function spanDebrief({ startS, endS }: { startS: number; endS: number }): {
  startUtc: string;
  endUtc: string;
} {
  return { startUtc: utcText(startS)!, endUtc: utcText(endS)! };
}
