import { sql } from 'kysely';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import { IS_LISTED } from './emptied-lessons.ts';
import { from, type Library } from './library.ts';
import { lastMove } from './moves.ts';

/** Who and what the library holds, and how much of it. */
export function overviewOf(library: Library) {
  return {
    students: library.all(
      from
        .selectFrom('people')
        .where('role', '=', 'student')
        .select([
          'people.id',
          'people.name',
          sql<number>`(SELECT count(*) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as(
            'lessons',
          ),
          sql<number>`(SELECT count(*) FROM approaches WHERE student_id = people.id)`.as('approaches'),
          sql<
            string | null
          >`(SELECT max(date) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as('last'),
        ])
        .orderBy('people.name'),
    ),
    instructors: library
      .all(from.selectFrom('people').where('role', '=', 'instructor').select('name').orderBy('name'))
      .map(({ name }) => name),
    facilities: library
      .all(from.selectFrom('facilities').select('name').distinct().orderBy('name'))
      .map(({ name }) => name),
    approaches: library.first(from.selectFrom('approaches').select(sql<number>`count(*)`.as('count')))!.count,
    lastMove: lastMove(library),
    ofOtherVersions: library.first(
      from
        .selectFrom('debriefs')
        .select(sql<number>`count(*)`.as('count'))
        .where('engine_version', '!=', ENGINE_VERSION),
    )!.count,
  };
}
