import { sql } from 'kysely';
import type { LatestVerdict } from '../../core/progress/school/needs-by-criterion.ts';
import type { SchoolApproach } from '../../core/progress/school/school-input.ts';
import { from, type Library } from './library.ts';

/** Of every student and criterion, how often each verdict among these approaches. */
export function latestVerdicts(
  library: Library,
  approaches: readonly Pick<SchoolApproach, 'ref'>[],
): LatestVerdict[] {
  // As one value: there may be more of them than SQLite takes one by one.
  const refs = JSON.stringify(approaches.map(({ ref }) => ref));
  const rows = library.tuples<[string, string, LatestVerdict['verdict'], number]>(
    from
      .selectFrom('approaches')
      .innerJoin('measures', 'measures.approach_id', 'approaches.id')
      .where(sql<boolean>`approaches.id IN (SELECT value FROM json_each(${refs}))`)
      .groupBy(['approaches.student_id', 'measures.criterion', 'measures.verdict'])
      .select([
        'approaches.student_id',
        'measures.criterion',
        'measures.verdict',
        sql<number>`count(*)`.as('count'),
      ]),
  );
  return rows.map(([studentId, criterion, verdict, count]) => ({ studentId, criterion, verdict, count }));
}
