import { sql } from 'kysely';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { factsOf, type ApproachFacts } from '../../core/progress/approach-facts.ts';
import { readDocument } from './documents.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import { LibraryRefusal } from './refusal.ts';
import type { KeptFacts, KeptMeasure } from './tables.ts';
import type { Watch } from './watch.ts';

/** The rows that progress reads of a debrief, besides what its lesson says. */
export interface FactRows {
  readonly facts: readonly Omit<KeptFacts, 'debrief_id'>[];
  readonly measures: readonly Omit<KeptMeasure, 'debrief_id'>[];
}

/** @param standard the standard's JSON, by which the debrief was made */
export function factRows(debrief: Debrief, standard: string): FactRows {
  const ofDebrief = { lessonId: '', date: '', standardKey: sha256Of(standard), debrief };
  const all = factsOf(ofDebrief).map((facts, i) => [debrief.approaches[i]!.index, facts] as const);
  return {
    facts: all.map(([number, facts]) => ({ number, ...factRow(facts) })),
    measures: all.flatMap(([number, facts]) => measureRows(facts).map((row) => ({ number, ...row }))),
  };
}

function factRow(facts: ApproachFacts): Omit<KeptFacts, 'debrief_id' | 'number'> {
  const verdictAt = (gate: string) => facts.gates.find((one) => one.gate === gate)?.verdict ?? null;
  return {
    log_sha256: facts.logSha256,
    end_utc: facts.endUtc,
    standard_sha256: facts.standardKey,
    engine_version: facts.engineVersion,
    flown: facts.flown,
    conditions: facts.conditions,
    turbulence: facts.turbulence,
    localizer_full_scale_deg: facts.localizerFullScaleDeg,
    gate_1000: verdictAt('gate-1000'),
    gate_500: verdictAt('gate-500'),
    went_on: facts.wentOn,
  };
}

function measureRows({ criteria }: ApproachFacts): Omit<KeptMeasure, 'debrief_id' | 'number'>[] {
  return criteria.map(({ id, title, verdict, insideShare, rms, whyNoRms }, place) => ({
    criterion: id,
    place,
    title,
    verdict,
    inside_share: insideShare,
    rms,
    why_no_rms: whyNoRms,
  }));
}

/** Within a `write`, after the approaches that they belong to. */
export function keepFacts(library: Library, debrief_id: string, { facts, measures }: FactRows): void {
  for (const row of facts) library.run(from.insertInto('approach_facts').values({ debrief_id, ...row }));
  if (measures.length > 0)
    library.run(from.insertInto('measures').values(measures.map((row) => ({ debrief_id, ...row }))));
}

/** One of which the document is damaged: the file of its log, and whose it is. */
export interface UnreadDebrief {
  readonly fileName: string;
  readonly studentId: string | null;
}

/** Debriefs in one commit: a stop loses at most so many. */
const AT_A_TIME = 50;

/**
 * Copies out of the documents what progress reads and is not there yet: after a library of an earlier version was
 * opened, or another was taken in. What was stopped goes on the next time. Gives the debriefs that cannot be read any
 * more.
 */
export async function keepMissingFacts(library: Library, watch: Watch): Promise<UnreadDebrief[]> {
  const missing = withoutFacts(library);
  const unreadable: UnreadDebrief[] = [];
  for (let at = 0; at < missing.length; at += AT_A_TIME) {
    await watch(at / missing.length);
    library.write(() => {
      for (const debrief of missing.slice(at, at + AT_A_TIME))
        if (!keepFactsAnew(library, debrief)) unreadable.push(debrief);
    });
  }
  return unreadable;
}

type WithoutFacts = ReturnType<typeof withoutFacts>[number];

function withoutFacts(library: Library) {
  const count = (table: 'approaches' | 'approach_facts') =>
    library.first(from.selectFrom(table).select(sql<number>`count(*)`.as('count')))!.count;
  // All but always, and told at once.
  if (count('approaches') === count('approach_facts')) return [];
  return library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .where(({ exists, selectFrom }) =>
        exists(
          selectFrom('approaches')
            .leftJoin('approach_facts', (join) =>
              join
                .onRef('approach_facts.debrief_id', '=', 'approaches.debrief_id')
                .onRef('approach_facts.number', '=', 'approaches.number'),
            )
            .select('approaches.number')
            .whereRef('approaches.debrief_id', '=', 'debriefs.id')
            .where('approach_facts.number', 'is', null),
        ),
      )
      .select([
        'debriefs.id',
        'debriefs.standard',
        'logs.file_name as fileName',
        'lessons.student_id as studentId',
      ]),
  );
}

/** False where the document cannot be read. */
function keepFactsAnew(library: Library, { id, standard }: WithoutFacts): boolean {
  let debrief: Debrief;
  try {
    debrief = readDocument(library, id);
  } catch (error) {
    if (error instanceof LibraryRefusal) return false;
    throw error;
  }
  library.run(from.deleteFrom('approach_facts').where('debrief_id', '=', id));
  keepFacts(library, id, factRows(debrief, standard));
  return true;
}
