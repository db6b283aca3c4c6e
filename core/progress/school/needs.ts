import { sumOf } from '../practise.ts';
import type { VerdictCounts } from '../progress.ts';
import type { SchoolStudent, StudentNeed } from './school.ts';

/** Lessons that count for what a student needs now, and how many decided approaches it takes to say so. */
const LATELY = 3;
const FEWEST_DECIDED = 3;

/** What each student met and did not meet lately, in the students' order. */
export function needsOf(students: readonly SchoolStudent[]): StudentNeed[] {
  return students.map(({ studentId, name, lessons }) => {
    const latest = lessons.slice(-LATELY);
    const verdicts = sumOf(latest);
    return { studentId, name, lessons: latest.length, verdicts, isFlagged: isNeeded(verdicts) };
  });
}

/** Whether at least half of those decided were not met, of enough to say so. */
export function isNeeded(verdicts: VerdictCounts): boolean {
  return isEnoughDecided(verdicts) && verdicts['not-met'] >= verdicts.met;
}

export function isEnoughDecided(verdicts: VerdictCounts): boolean {
  return verdicts.met + verdicts['not-met'] >= FEWEST_DECIDED;
}
