import { randomUUID } from 'node:crypto';
import { from, type Library } from './library.ts';
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
