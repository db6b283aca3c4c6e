import type { ApproachFacts } from './approach-facts.ts';
import type { Progress, ShownApproach } from './progress.ts';

/**
 * The last graded approach, and the one with the most points at the same facility; of several the last. A score of
 * fewer criteria, or one that may be lower, is beaten by no other: such an approach is the best only if it is the last.
 */
export function shownOf(approaches: readonly ApproachFacts[]): Progress['shown'] {
  const graded = approaches.filter(({ level, score }) => level !== null && score !== null);
  const last = graded.at(-1);
  if (!last) return null;
  const rivals = graded.filter((one) => one === last || isAsSure(one, last));
  const best = rivals.reduce((most, one) => (one.score! >= most.score! ? one : most));
  return { last: shown(last), best: shown(best) };
}

function isAsSure(one: ApproachFacts, last: ApproachFacts): boolean {
  return one.facility === last.facility && !one.level!.isOpen && decidedOf(one) >= decidedOf(last);
}

function decidedOf({ criteria }: ApproachFacts): number {
  return criteria.filter(({ verdict }) => verdict === 'met' || verdict === 'not-met').length;
}

function shown({ debriefId, number, facility, date, startUtc, level, score }: ApproachFacts): ShownApproach {
  const { level: best, isOpen } = level!;
  return { debriefId, number, facility, date, startUtc, level: best, isOpen, score: score! };
}
