import type { JudgedBy, SchoolApproach } from './school-input.ts';

/** Lessons that count for what a student needs now. */
const LATELY = 3;

/** Ids of every student's latest lessons with an approach that was judged by that standard and engine. */
export function latestLessons(
  approaches: readonly SchoolApproach[],
  { standardKey, engineVersion }: Pick<JudgedBy, 'standardKey' | 'engineVersion'>,
): string[] {
  const students = new Map<string, Map<string, string>>();
  for (const { studentId, lessonId, date, judgedBy } of approaches) {
    if (judgedBy.standardKey !== standardKey || judgedBy.engineVersion !== engineVersion) continue;
    const lessons = students.get(studentId);
    if (lessons) lessons.set(lessonId, date);
    else students.set(studentId, new Map([[lessonId, date]]));
  }
  return [...students.values()].flatMap((lessons) =>
    [...lessons]
      .sort(([, a], [, b]) => (a < b ? 1 : -1))
      .slice(0, LATELY)
      .map(([id]) => id),
  );
}
