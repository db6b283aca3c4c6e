import { sql } from 'kysely';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import { IS_LISTED } from './emptied-lessons.ts';
import { alphabetically } from './folded-column.ts';
import { flownByStudent } from './flown-count.ts';
import { from, type Library } from './library.ts';
import { lastMove } from './moves.ts';

/** Who and what the library holds, and how much of it. */
export function overviewOf(library: Library) {
  const flown = flownByStudent(library);
  const students = library.all(
    from
      .selectFrom('people')
      .where('role', '=', 'student')
      .select([
        'people.id',
        'people.name',
        sql<number>`(SELECT count(*) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as(
          'lessons',
        ),
        sql<string | null>`(SELECT max(date) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as(
          'last',
        ),
      ])
      .orderBy(alphabetically('people.name')),
  );
  return {
    students: students.map(({ id, name, lessons, last }) => ({
      id,
      name,
      lessons,
      approaches: flown.get(id) ?? 0,
      last,
    })),
    instructors: library
      .all(
        from
          .selectFrom('people')
          .where('role', '=', 'instructor')
          .select('name')
          .orderBy(alphabetically('name')),
      )
      .map(({ name }) => name),
    facilities: library
      .all(from.selectFrom('facilities').select('name').distinct().orderBy(alphabetically('name')))
      .map(({ name }) => name),
    approaches: [...flown.values()].reduce((sum, count) => sum + count, 0),
    lastMove: lastMove(library),
    ofOtherVersions: library.first(
      from
        .selectFrom('debriefs')
        .select(sql<number>`count(*)`.as('count'))
        .where('engine_version', '!=', ENGINE_VERSION),
    )!.count,
  };
}
