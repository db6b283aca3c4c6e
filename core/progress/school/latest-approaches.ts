import type { SchoolApproach } from './school-input.ts';

/** Lessons that count for what a student needs now. */
const LATELY = 3;

/**
 * The approaches of every student's latest lessons; two of one day go by the clock.
 *
 * @param approaches in the order flown
 */
export function latestApproaches(approaches: readonly SchoolApproach[]): SchoolApproach[] {
  const students = new Map<string, Map<string, SchoolApproach[]>>();
  for (const approach of approaches) {
    const { studentId, lessonId } = approach;
    const lessons = students.get(studentId) ?? new Map<string, SchoolApproach[]>();
    students.set(studentId, lessons);
    const lesson = lessons.get(lessonId) ?? [];
    // The lesson that was flown last stands last.
    lessons.delete(lessonId);
    lessons.set(lessonId, [...lesson, approach]);
  }
  return [...students.values()].flatMap((lessons) => [...lessons.values()].slice(-LATELY).flat());
}
