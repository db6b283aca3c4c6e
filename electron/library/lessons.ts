import { randomUUID } from 'node:crypto';
import { from, type Library } from './library.ts';
import { findPerson, keepPerson } from './people.ts';
import type { Lesson } from './tables.ts';

export type LessonFacts = Omit<Lesson, 'id'>;

/** A lesson of which nothing is known but its date. */
export function lessonOn(date: string): LessonFacts {
  return {
    date,
    student_id: null,
    instructor_id: null,
    aircraft: null,
    target_airspeed_kt: null,
    intercept_airspeed_kt: null,
    vref_kt: null,
    conditions: null,
    syllabus_number: null,
    objective: null,
  };
}

/**
 * The id of the student's lesson of that date, which is added if need be: the logs of a day are one lesson's until
 * somebody parts them. Within a `write`.
 */
export function keepLesson(library: Library, facts: LessonFacts): string {
  const { student_id, date } = facts;
  const known = library.first(
    from
      .selectFrom('lessons')
      .select('id')
      .where('date', '=', date)
      .where('student_id', student_id === null ? 'is' : '=', student_id)
      .orderBy('id'),
  );
  return known ? known.id : addLesson(library, facts);
}

/** Within a `write`. */
export function addLesson(library: Library, facts: LessonFacts): string {
  const id = randomUUID();
  library.run(from.insertInto('lessons').values({ id, ...facts }));
  return id;
}

/**
 * Moves a log that is here already to the day and student that are asked for; null for either asks for none. Gives the
 * lesson where it stays in spite of that: no log is taken from a student, nor from a lesson in which it was debriefed.
 * Within a `write`.
 */
export function moveLog(
  library: Library,
  sha256: string,
  facts: LessonFacts,
  asked: { readonly student: string | null; readonly date: string | null },
): Lesson | null {
  const now = library.first(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .selectAll('lessons')
      .where('logs.sha256', '=', sha256),
  )!;
  const { student, date } = asked;
  const isTheirs =
    student === null || (findPerson(library, 'student', student)?.id ?? 'new') === now.student_id;
  if (isTheirs && (date === null || date === now.date)) return null;
  const debriefed = from.selectFrom('debriefs').select('id').where('log_sha256', '=', sha256);
  if ((!isTheirs && now.student_id !== null) || library.first(debriefed)) return now;
  const student_id = student === null ? now.student_id : keepPerson(library, 'student', student);
  const lesson_id = keepLesson(library, { ...facts, student_id, date: date ?? now.date });
  library.run(from.updateTable('logs').set({ lesson_id }).where('sha256', '=', sha256));
  dropBare(library, now);
  return null;
}

/** A lesson that an import began, of which nothing is left. */
function dropBare(
  library: Library,
  { id, instructor_id, aircraft, syllabus_number, objective }: Lesson,
): void {
  if (instructor_id ?? aircraft ?? syllabus_number ?? objective) return;
  const left = (['logs', 'notes', 'goals'] as const).some((table) =>
    library.first(from.selectFrom(table).select('lesson_id').where('lesson_id', '=', id)),
  );
  if (!left) library.run(from.deleteFrom('lessons').where('id', '=', id));
}

/** Corrects what is kept of a lesson; its approaches go with it to another student or day. */
export function changeLesson(library: Library, id: string, change: Partial<LessonFacts>): void {
  library.write(() => {
    library.run(from.updateTable('lessons').set(change).where('id', '=', id));
    const { student_id, date } = library.first(
      from.selectFrom('lessons').select(['student_id', 'date']).where('id', '=', id),
    )!;
    library.run(from.updateTable('approaches').set({ student_id, date }).where('lesson_id', '=', id));
  });
}
