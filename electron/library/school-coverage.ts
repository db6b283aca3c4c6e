import { sql } from 'kysely';
import type { SchoolInput } from '../../core/progress/school/school-input.ts';
import { IS_LISTED } from './emptied-lessons.ts';
import { from, type Library } from './library.ts';
import { withoutFacts } from './missing-facts.ts';
import type { SchoolRows } from './school-approaches.ts';

/** What there is nothing to tell of: students and lessons without a log, and logs without an approach. */
export function schoolCoverage(
  library: Library,
  { logsFlown, ...counts }: Omit<SchoolRows, 'approaches'>,
): SchoolInput['coverage'] {
  const lessonsWithLog = from.selectFrom('logs').select('lesson_id');
  const students = library.all(
    from
      .selectFrom('people')
      .where('role', '=', 'student')
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('lessons')
              .select('id')
              .whereRef('lessons.student_id', '=', 'people.id')
              .where('lessons.id', 'in', lessonsWithLog),
          ),
        ),
      )
      .select('id'),
  );
  const count = sql<number>`count(*)`.as('count');
  const lessons = library.first(
    from.selectFrom('lessons').where('id', 'not in', lessonsWithLog).where(IS_LISTED).select(count),
  )!;
  const logs = library.first(from.selectFrom('logs').select(count))!;
  const unread = withoutFacts(library);
  return {
    studentsWithoutLog: students.map(({ id }) => id),
    lessonsWithoutLog: lessons.count,
    logsWithoutApproach: logs.count - logsFlown - logsOfUnread(library, unread),
    ...counts,
    unreadable: unread.length,
  };
}

/** Logs of debriefs that cannot be read, of which no other debrief tells. */
function logsOfUnread(library: Library, unread: readonly { readonly logSha256: string }[]): number {
  const logs = new Set(unread.map(({ logSha256 }) => logSha256));
  const isTold = (sha256: string) =>
    library.first(
      from.selectFrom('approach_facts').select('approach_id').where('log_sha256', '=', sha256).limit(1),
    ) !== null;
  return [...logs].filter((sha256) => !isTold(sha256)).length;
}
