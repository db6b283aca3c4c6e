import type { ApproachFacts } from './approach-facts.ts';
import type { Progress, ShownApproach } from './progress.ts';

/** The last graded approach, and the one with the most points at the same facility; of several the last. */
export function shownOf(approaches: readonly ApproachFacts[]): Progress['shown'] {
  const graded = approaches.flatMap(shown);
  const last = graded.at(-1);
  if (!last) return null;
  const there = graded.filter(({ facility }) => facility === last.facility);
  return { last, best: there.reduce((best, one) => (one.score >= best.score ? one : best)) };
}

function shown(facts: ApproachFacts): ShownApproach[] {
  const { debriefId, number, facility, date, startUtc, level, score } = facts;
  if (level === null || score === null) return [];
  return [{ debriefId, number, facility, date, startUtc, level: level.level, score }];
}
