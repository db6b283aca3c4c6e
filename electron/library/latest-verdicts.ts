import { sql } from 'kysely';
import type { LatestVerdict } from '../../core/progress/school/needs-by-criterion.ts';
import type { JudgedBy } from '../../core/progress/school/school-input.ts';
import { from, type Library } from './library.ts';

/** Of every student and criterion in these lessons, how often each verdict of one standard and engine. */
export function latestVerdicts(
  library: Library,
  lessonIds: readonly string[],
  { standardKey, engineVersion }: Pick<JudgedBy, 'standardKey' | 'engineVersion'>,
): LatestVerdict[] {
  const rows = library.tuples<[string, string, LatestVerdict['verdict'], number]>(
    from
      .selectFrom('approaches')
      .innerJoin('approach_facts as facts', (join) =>
        join
          .onRef('facts.debrief_id', '=', 'approaches.debrief_id')
          .onRef('facts.number', '=', 'approaches.number'),
      )
      .innerJoin('measures', (join) =>
        join
          .onRef('measures.debrief_id', '=', 'approaches.debrief_id')
          .onRef('measures.number', '=', 'approaches.number'),
      )
      // As one value: there may be more of them than SQLite takes one by one.
      .where(
        sql<boolean>`approaches.lesson_id IN (SELECT value FROM json_each(${JSON.stringify(lessonIds)}))`,
      )
      .where('approaches.student_id', 'is not', null)
      .where('approaches.kind', '=', 'approach')
      .where('facts.standard_sha256', '=', standardKey)
      .where('facts.engine_version', '=', engineVersion)
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
