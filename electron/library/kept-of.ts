import { sql } from 'kysely';
import { flownCount } from './flown-count.ts';
import { logHere } from './kept-log.ts';
import { from, type Library } from './library.ts';

/** What is kept of a log that is in the library: how much was found in it, where, and whose it is. */
export function keptOf(library: Library, sha256: string) {
  const { lessonId, debriefs } = logHere(library, sha256)!;
  const { student, date } = library.first(
    from
      .selectFrom('lessons')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .select(['lessons.date', 'people.name as student'])
      .where('lessons.id', '=', lessonId),
  )!;
  const debriefIds = debriefs.map(({ id }) => id);
  const count = flownCount(sql`debriefs.log_sha256 = ${sha256}`);
  const { approaches } = library.first(from.selectNoFrom(count.as('approaches')))!;
  const facilities = [...new Set(debriefs.map(({ name }) => name))];
  return { lessonId, student, date, debriefIds, facilities, approaches };
}
