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

/** How many each student flew, by id; null: those that are nobody's. Read in one go, since the page asks for all. */
export function flownByStudent(library: Library): ReadonlyMap<string | null, number> {
  const rows = library.tuples<readonly [string | null, number]>(
    from
      .selectFrom('approaches')
      .innerJoin('debriefs', 'debriefs.id', 'approaches.debrief_id')
      .select(['approaches.student_id', sql<number>`count(DISTINCT ${FLOWN})`.as('count')])
      .groupBy('approaches.student_id'),
  );
  return new Map(rows);
}
