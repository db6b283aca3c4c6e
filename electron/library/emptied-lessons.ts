import { sql } from 'kysely';

/**
 * Whether a lesson is shown. One whose logs were all moved away stays in its table, since undoing the move needs it; it
 * is in no list unless somebody said something of it.
 */
export const IS_LISTED = sql<boolean>`(
  EXISTS (SELECT 1 FROM logs WHERE logs.lesson_id = lessons.id)
  OR coalesce(lessons.instructor_id, lessons.syllabus_number, lessons.objective) IS NOT NULL
  OR EXISTS (SELECT 1 FROM notes WHERE notes.lesson_id = lessons.id)
  OR EXISTS (SELECT 1 FROM goals WHERE goals.lesson_id = lessons.id)
)`;
