import { sql } from 'kysely';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { readDocument } from './documents.ts';
import { factRows } from './fact-rows.ts';
import { keepFacts } from './keep-facts.ts';
import { from, type Library } from './library.ts';
import { LibraryRefusal } from './refusal.ts';
import type { Watch } from './watch.ts';

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
export async function makeMissingFacts(library: Library, watch: Watch): Promise<UnreadDebrief[]> {
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

/** How many there are; nearly always none, which is told at once. */
export function approachesWithoutFacts(library: Library): number {
  const count = (table: 'approaches' | 'approach_facts') =>
    library.first(from.selectFrom(table).select(sql<number>`count(*)`.as('count')))!.count;
  return count('approaches') - count('approach_facts');
}

/** Debriefs without; after they were made, those that cannot be read. */
export function withoutFacts(library: Library) {
  if (approachesWithoutFacts(library) === 0) return [];
  return library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .where(({ exists, selectFrom }) =>
        exists(
          selectFrom('approaches')
            .leftJoin('approach_facts', 'approach_facts.approach_id', 'approaches.id')
            .select('approaches.number')
            .whereRef('approaches.debrief_id', '=', 'debriefs.id')
            .where('approach_facts.approach_id', 'is', null),
        ),
      )
      .select([
        'debriefs.id',
        'debriefs.standard',
        'logs.file_name as fileName',
        'logs.sha256 as logSha256',
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
  const approaches = from.selectFrom('approaches').select('id').where('debrief_id', '=', id);
  library.run(from.deleteFrom('approach_facts').where('approach_id', 'in', approaches));
  keepFacts(library, id, factRows(debrief, standard));
  return true;
}
