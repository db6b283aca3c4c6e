import type { Case } from './case.ts';
import type { CriterionJudgement } from './judgement.ts';
import { judgeTimed, type TimedQuestion } from './timed-criterion.ts';

/** The plain judgement, and beside it what it would be with the room that the user allowed. */
export function withAllowance({ stated }: Pick<Case, 'stated'>, asked: TimedQuestion): CriterionJudgement {
  const question = { ...asked, instructorFlew: stated.instructorFlew };
  const plain = judgeTimed(question);
  const allowance = stated.allowances.find(({ criterion }) => criterion === question.id);
  if (!allowance) return plain;
  const { by, reason } = allowance;
  const { lower, upper } = question.limit;
  const limit = {
    ...question.limit,
    lower: lower === null ? null : lower - by,
    upper: upper === null ? null : upper + by,
  };
  return { ...plain, allowed: { by, reason, verdict: judgeTimed({ ...question, limit }).verdict } };
}
