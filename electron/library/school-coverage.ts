import { sql } from 'kysely';
import type { SchoolInput } from '../../core/progress/school/school-input.ts';
import { IS_LISTED } from './emptied-lessons.ts';
import { from, type Library } from './library.ts';

/** What there is nothing to tell of: students and lessons without a log, and logs without an approach. */
export function schoolCoverage(library: Library): SchoolInput['coverage'] {
  const students = library.all(
    from
      .selectFrom('people')
      .where('role', '=', 'student')
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('lessons')
              .innerJoin('logs', 'logs.lesson_id', 'lessons.id')
              .select('lessons.id')
              .whereRef('lessons.student_id', '=', 'people.id'),
          ),
        ),
      )
      .select('id'),
  );
  const lessons = library.all(
    from
      .selectFrom('lessons')
      .where(IS_LISTED)
      .where(({ not, exists, selectFrom }) =>
        not(exists(selectFrom('logs').select('sha256').whereRef('logs.lesson_id', '=', 'lessons.id'))),
      )
      .select('id'),
  );
  const logs = library.first(
    from
      .selectFrom('logs')
      .select(sql<number>`count(*)`.as('count'))
      .where('sha256', 'not in', from.selectFrom('approach_facts').select('log_sha256')),
  )!;
  return {
    studentsWithoutLog: students.map(({ id }) => id),
    lessonsWithoutLog: lessons.length,
    logsWithoutApproach: logs.count,
  };
}
