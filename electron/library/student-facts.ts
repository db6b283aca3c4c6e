import type { ApproachFacts, CriterionFacts } from '../../core/progress/approach-facts.ts';
import { from, type Library } from './library.ts';
import { mixOf } from './mix-text.ts';
import { standardsByKey } from './standards-by-key.ts';

/** What progress reads of every approach of a student; see `makeMissingFacts` for those without facts. */
export function factsOfStudent(library: Library, studentId: string): ApproachFacts[] {
  const rows = approachesOf(library, studentId);
  const criteria = criteriaOf(library, studentId);
  const standards = standardsByKey(library, rows);
  return rows.map((row) => ({
    debriefId: row.debrief_id,
    number: row.number,
    lessonId: row.lesson_id,
    date: row.date,
    logSha256: row.log_sha256,
    startUtc: row.start_utc,
    endUtc: row.end_utc,
    kind: row.kind as ApproachFacts['kind'],
    isByDraft: row.by_draft === 1,
    facility: row.facility,
    standard: standards.get(row.standard_sha256)!,
    standardKey: row.standard_sha256,
    engineVersion: row.engine_version,
    ...mixOf(row.mix),
    wentOn: row.went_on as ApproachFacts['wentOn'],
    criteria: criteria.get(row.approach_id) ?? [],
    gates: [...gate('gate-1000', row.gate_1000), ...gate('gate-500', row.gate_500)],
    level: row.level === null ? null : { level: row.level, isOpen: row.level_low !== row.level_high },
    score: row.score,
  }));
}

function approachesOf(library: Library, studentId: string) {
  return library.all(
    from
      .selectFrom('approaches')
      .innerJoin('approach_facts', 'approach_facts.approach_id', 'approaches.id')
      .where('approaches.student_id', '=', studentId)
      .selectAll('approach_facts')
      .select([
        'approaches.debrief_id',
        'approaches.number',
        'approaches.lesson_id',
        'approaches.date',
        'approaches.start_utc',
        'approaches.kind',
        'approaches.facility',
        'approaches.level',
        'approaches.level_low',
        'approaches.level_high',
        'approaches.score',
      ])
      .orderBy('approaches.date')
      .orderBy('approaches.start_utc')
      .orderBy('approaches.debrief_id')
      .orderBy('approaches.number'),
  );
}

/** Of each approach by its id, in the standard's order. */
function criteriaOf(library: Library, studentId: string): Map<number, CriterionFacts[]> {
  const rows = library.all(
    from
      .selectFrom('approaches')
      .innerJoin('measures', 'measures.approach_id', 'approaches.id')
      .where('approaches.student_id', '=', studentId)
      .selectAll('measures')
      .orderBy('measures.place'),
  );
  const criteria = new Map<number, CriterionFacts[]>();
  for (const row of rows) {
    const there = criteria.get(row.approach_id) ?? [];
    criteria.set(row.approach_id, there);
    there.push({
      id: row.criterion,
      title: row.title,
      verdict: row.verdict as CriterionFacts['verdict'],
      insideShare: row.inside_share,
      whyNoShare: row.why_no_share,
      rms: row.rms,
      whyNoRms: row.why_no_rms,
    });
  }
  return criteria;
}

function gate(name: 'gate-1000' | 'gate-500', verdict: string | null): ApproachFacts['gates'] {
  return verdict === null
    ? []
    : [{ gate: name, verdict: verdict as ApproachFacts['gates'][number]['verdict'] }];
}
