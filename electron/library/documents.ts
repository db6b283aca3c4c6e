import { gunzipSync, gzipSync } from 'node:zlib';
import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { factRows, keepFacts } from './keep-facts.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import { refuseLibrary } from './refusal.ts';
import type { ApproachRow } from './tables.ts';

/** Makes a document the one that its debrief stands by, and puts its approaches into the lists. Within a `write`. */
export function keepDocument(library: Library, debrief_id: string, debrief: Debrief): void {
  const json = JSON.stringify(debrief);
  const sha256 = sha256Of(json);
  const engine_version = debrief.engineVersion;
  library.run(
    from
      .insertInto('documents')
      .values({ debrief_id, sha256, engine_version, json_gz: gzipSync(json) })
      .onConflict((there) => there.doNothing()),
  );
  library.run(
    from
      .updateTable('debriefs')
      .set({ document_sha256: sha256, engine_version, made_utc: new Date().toISOString() })
      .where('id', '=', debrief_id),
  );
  dropUnsigned(library, debrief_id, sha256);
  listApproaches(library, debrief_id, debrief);
}

/** The document that a debrief stands by. */
export function readDocument(library: Library, debriefId: string): Debrief {
  const { sha256, json_gz } = library.first(
    from
      .selectFrom('debriefs')
      .innerJoin('documents', (join) =>
        join
          .onRef('documents.debrief_id', '=', 'debriefs.id')
          .onRef('documents.sha256', '=', 'debriefs.document_sha256'),
      )
      .select(['documents.sha256', 'documents.json_gz'])
      .where('debriefs.id', '=', debriefId),
  )!;
  return JSON.parse(documentText(sha256, json_gz)) as Debrief;
}

/** The JSON of a document, if it is still what its hash says. */
export function documentText(sha256: string, json_gz: Uint8Array): string {
  const text = unpacked(json_gz);
  if (text === null || sha256Of(text) !== sha256)
    return refuseLibrary(
      'library-document',
      `A debrief in the library is not what was kept (${sha256.slice(0, 12)}…).`,
      '`halfdot restore BACKUP` brings a copy back.',
    );
  return text;
}

function unpacked(json_gz: Uint8Array): string | null {
  try {
    return gunzipSync(json_gz).toString('utf8');
  } catch {
    return null;
  }
}

/** What nobody signed and nothing stands by any more goes. */
function dropUnsigned(library: Library, debrief_id: string, keep: string): void {
  library.run(
    from
      .deleteFrom('documents')
      .where('debrief_id', '=', debrief_id)
      .where('sha256', '!=', keep)
      .where('sha256', 'not in', (signed) =>
        signed.selectFrom('signatures').select('document_sha256').where('debrief_id', '=', debrief_id),
      ),
  );
}

function listApproaches(library: Library, debrief_id: string, debrief: Debrief): void {
  const {
    id: lesson_id,
    student_id,
    date,
    standard,
  } = library.first(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .select(['lessons.id', 'lessons.student_id', 'lessons.date', 'debriefs.standard'])
      .where('debriefs.id', '=', debrief_id),
  )!;
  library.run(from.deleteFrom('approaches').where('debrief_id', '=', debrief_id));
  for (const approach of debrief.approaches) {
    const row = { debrief_id, lesson_id, student_id, date, ...thinRow(debrief, approach) };
    library.run(from.insertInto('approaches').values(row));
  }
  keepFacts(library, debrief_id, factRows(debrief, standard));
}

type ThinRow = Omit<ApproachRow, 'debrief_id' | 'lesson_id' | 'student_id' | 'date'>;

/** What a list shows of an approach. */
function thinRow({ facility, standard }: Debrief, approach: ApproachDebrief): ThinRow {
  const { index, startUtc, kind, outcome, grade, summary } = approach;
  return {
    number: index,
    start_utc: startUtc,
    facility: facility.name,
    standard_id: standard.id,
    kind,
    outcome,
    level: grade?.level ?? null,
    level_low: grade?.levelLow ?? null,
    level_high: grade?.levelHigh ?? null,
    score: grade?.score ?? null,
    score_low: grade?.scoreLow ?? null,
    score_high: grade?.scoreHigh ?? null,
    summary,
  };
}
