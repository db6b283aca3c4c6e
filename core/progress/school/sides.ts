import { together, type Adjusting, type StudentMean } from './adjusting.ts';

/** What is held against what: the students of two sides, or those who flew on both sides with themselves. */
export interface Sides {
  readonly how: 'between-students' | 'within-students';
  readonly here: readonly StudentMean[];
  /** Within students in the same order. */
  readonly others: readonly StudentMean[];
}

/** With a larger share of students on both sides these are held against themselves. */
const MOST_ON_BOTH = 1 / 5;

/** A group and those that it is held against, all together. */
export function sidesOf(means: Adjusting['means'], group: string, others: readonly string[]): Sides {
  const here = means.get(group)!;
  const there = together(others.map((other) => means.get(other)!));
  const byStudent = new Map(there.map((mean) => [mean.studentId, mean]));
  const onBoth = here.filter(({ studentId }) => byStudent.has(studentId));
  const students = here.length + there.length - onBoth.length;
  if (onBoth.length <= students * MOST_ON_BOTH) return { how: 'between-students', here, others: there };
  const themselves = onBoth.map(({ studentId }) => byStudent.get(studentId)!);
  return { how: 'within-students', here: onBoth, others: themselves };
}

export function approachesIn(side: readonly StudentMean[]): number {
  return side.reduce((sum, { approaches }) => sum + approaches, 0);
}
