import type { Verdict } from '../../standard/judgement.ts';
import { listed } from '../../units/listed.ts';
import type { VerdictCounts } from '../progress.ts';
import { inSentence } from '../in-sentence.ts';
import { alphabetical } from './alphabetical.ts';
import { counted } from '../sentences.ts';
import { isEnoughDecided, isNeeded } from './needs.ts';
import type { SchoolInput, SchoolMeasure } from './school-input.ts';

/** A student's latest lessons, criterion by criterion; no order but the alphabet's. */
export interface StudentNeeds {
  readonly studentId: string;
  readonly name: string;
  readonly criteria: readonly {
    readonly id: string;
    readonly verdicts: VerdictCounts;
    /** Not met in at least half of those decided, of at least three. */
    readonly isFlagged: boolean;
  }[];
}

/** How many approaches of a student's latest lessons have a verdict on a criterion. */
export interface LatestVerdict {
  readonly studentId: string;
  readonly criterion: string;
  readonly verdict: Verdict;
  readonly count: number;
}

/** What most students need, as one sentence; an order of what is taught, and of nobody. */
export function needsSentence(
  needs: readonly StudentNeeds[],
  measures: readonly Pick<SchoolMeasure, 'id' | 'title'>[],
): string {
  const students = counted(needs.length, 'student');
  const counts = measures
    .map(({ id, title }) => ({
      title,
      count: needs.filter(({ criteria }) => criteria.some((told) => told.id === id && told.isFlagged)).length,
    }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  const [most, next] = counts;
  if (needs.length === 0) return 'Nobody has a judged approach among what is let in.';
  if (!most) return nobodySentence(needs, students) + openSentence(needs, measures);
  const ties = next ? counts.slice(1).filter(({ count }) => count === next.count) : [];
  const others = listed(ties.map(({ title }) => inSentence(title)));
  const by = ties.length > 1 ? `${next!.count} each` : String(next?.count);
  return `${most.title} is to be practised by ${most.count} of ${students}${others === '' ? '' : `; ${others} by ${by}`}.`;
}

function nobodySentence(needs: readonly StudentNeeds[], students: string): string {
  const isDecided = ({ criteria }: StudentNeeds) =>
    criteria.some(({ verdicts }) => isEnoughDecided(verdicts));
  const open = needs.filter((one) => !isDecided(one)).length;
  const few =
    open === 0 ? '' : ` Of ${open === needs.length ? 'all of them' : open} too little is decided to tell.`;
  return `Of ${students}, nobody has a criterion that was not met in half of three or more that were decided lately.${few}`;
}

/** What can mostly not be told: that nobody failed it is no praise then. */
function openSentence(
  needs: readonly StudentNeeds[],
  measures: readonly Pick<SchoolMeasure, 'id' | 'title'>[],
): string {
  const sum = (id: string, of: (verdicts: VerdictCounts) => number) =>
    needs.reduce((total, { criteria }) => {
      const told = criteria.find((criterion) => criterion.id === id);
      return total + (told ? of(told.verdicts) : 0);
    }, 0);
  const open = measures.filter(
    ({ id }) => sum(id, ({ unclear }) => unclear) > sum(id, (verdicts) => verdicts.met + verdicts['not-met']),
  );
  return open.length === 0 ? '' : ` Mostly unclear: ${listed(open.map(({ title }) => inSentence(title)))}.`;
}

/** Who needs what, of the measures that are criteria, in their order. */
export function needsByCriterion(
  latest: readonly LatestVerdict[],
  measures: readonly Pick<SchoolMeasure, 'id'>[],
  names: SchoolInput['names'],
): StudentNeeds[] {
  const students = new Map<string, Map<string, Record<Verdict, number>>>();
  for (const { studentId, criterion, verdict, count } of latest) {
    const criteria = students.get(studentId) ?? new Map<string, Record<Verdict, number>>();
    students.set(studentId, criteria);
    const counts = criteria.get(criterion) ?? { met: 0, 'not-met': 0, unclear: 0, 'not-assessed': 0 };
    criteria.set(criterion, counts);
    counts[verdict] += count;
  }
  const needs = [...students].map(([studentId, criteria]) => ({
    studentId,
    name: names.get(studentId) ?? studentId,
    criteria: measures.flatMap(({ id }) => {
      const verdicts = criteria.get(id);
      return verdicts ? [{ id, verdicts, isFlagged: isNeeded(verdicts) }] : [];
    }),
  }));
  return alphabetical(needs, ({ name }) => name);
}
