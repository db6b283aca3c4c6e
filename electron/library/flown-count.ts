import { sql, type RawBuilder } from 'kysely';
import { from, type Library } from './library.ts';

/** An approach as it was flown: one that was debriefed by two standards was flown once. */
const FLOWN = sql`debriefs.log_sha256 || approaches.start_utc || approaches.facility`;

/** How many approaches were flown, of those for which a condition on `approaches` or `debriefs` holds. */
export function flownCount(condition: RawBuilder<unknown>): RawBuilder<number> {
  return sql<number>`(
    SELECT count(DISTINCT ${FLOWN})
    FROM approaches JOIN debriefs ON debriefs.id = approaches.debrief_id
    WHERE ${condition}
  )`;
}

/**
 * How many each student flew, by id; null: those that are nobody's. Read in one go, since the page asks for all: every
 * row is counted, and taken off what was counted twice in the logs that have several debriefs, which are few.
 */
export function flownByStudent(library: Library): ReadonlyMap<string | null, number> {
  const rows = library.tuples<CountOfStudent>(
    from
      .selectFrom('approaches')
      .select(['student_id', sql<number>`count(*)`.as('count')])
      .groupBy('student_id'),
  );
  const several = from
    .selectFrom('debriefs')
    .select('log_sha256')
    .groupBy('log_sha256')
    .having(sql<boolean>`count(*) > 1`);
  const twice = library.tuples<CountOfStudent>(
    from
      .selectFrom(several.as('several'))
      .innerJoin('debriefs', 'debriefs.log_sha256', 'several.log_sha256')
      .innerJoin('approaches', 'approaches.debrief_id', 'debriefs.id')
      .select(['approaches.student_id', sql<number>`count(*) - count(DISTINCT ${FLOWN})`.as('count')])
      .groupBy('approaches.student_id'),
  );
  const flown = new Map(rows);
  for (const [student, count] of twice) flown.set(student, flown.get(student)! - count);
  return flown;
}

type CountOfStudent = readonly [studentId: string | null, count: number];
