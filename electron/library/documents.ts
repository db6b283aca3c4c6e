import { gunzipSync } from 'node:zlib';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { keepFacts } from './keep-facts.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import type { PackedDocument } from './packed-document.ts';
import { refuseLibrary } from './refusal.ts';

/** Makes a document the one that its debrief stands by, and puts its approaches into the lists. Within a `write`. */
export function keepDocument(library: Library, debrief_id: string, document: PackedDocument): void {
  const { sha256, json_gz, engine_version, approaches, facts } = document;
  library.run(
    from
      .insertInto('documents')
      .values({ debrief_id, sha256, engine_version, json_gz })
      .onConflict((there) => there.doNothing()),
  );
  library.run(
    from
      .updateTable('debriefs')
      .set({ document_sha256: sha256, engine_version, made_utc: new Date().toISOString() })
      .where('id', '=', debrief_id),
  );
  dropUnsigned(library, debrief_id, sha256);
  listApproaches(library, debrief_id, approaches);
  keepFacts(library, debrief_id, facts);
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

function listApproaches(
  library: Library,
  debrief_id: string,
  approaches: PackedDocument['approaches'],
): void {
  const {
    id: lesson_id,
    student_id,
    date,
  } = library.first(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .select(['lessons.id', 'lessons.student_id', 'lessons.date'])
      .where('debriefs.id', '=', debrief_id),
  )!;
  library.run(from.deleteFrom('approaches').where('debrief_id', '=', debrief_id));
  for (const approach of approaches) {
    const row = { debrief_id, lesson_id, student_id, date, ...approach };
    library.run(from.insertInto('approaches').values(row));
  }
}
