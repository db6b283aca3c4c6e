import { sql } from 'kysely';
import type { Facility } from '../../core/facility/facility-schema.ts';
import { flownCount } from './flown-count.ts';
import { debriefsAt, logHere } from './kept-log.ts';
import { from, type Library } from './library.ts';

/** In whose lesson and of which day logs are; those that are not here are left out. */
export function whereKept(library: Library, sha256s: readonly string[]) {
  return library.all(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .select(['logs.sha256', 'lessons.id as lessonId', 'people.name as student', 'lessons.date'])
      .where('logs.sha256', 'in', sha256s),
  );
}

/** What is kept of a log that is in the library: how much was found in it, where, and whose it is. */
export function keptOf(library: Library, sha256: string, facility: Facility, standardId: string) {
  const here = logHere(library, sha256)!;
  const { lessonId, debriefs } = here;
  const made = debriefsAt(here, facility).find(({ standard_id }) => standard_id === standardId);
  const { student, date } = library.first(
    from
      .selectFrom('lessons')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .select(['lessons.date', 'people.name as student'])
      .where('lessons.id', '=', lessonId),
  )!;
  const count = flownCount(sql`debriefs.log_sha256 = ${sha256}`);
  const { approaches } = library.first(from.selectNoFrom(count.as('approaches')))!;
  const facilities = [...new Set(debriefs.map(({ name }) => name))];
  return { lessonId, student, date, debriefId: made?.id ?? null, facilities, approaches };
}
