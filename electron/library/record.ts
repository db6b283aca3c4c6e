import { randomUUID } from 'node:crypto';
import { from, type Library } from './library.ts';
import type { Estimate, Goal, Note, Signature } from './tables.ts';

/** What people say of a lesson, a debrief or, by the moment at which it began, an approach of it. */
export function addNote(library: Library, note: Omit<Note, 'id' | 'written_utc'>): string {
  const row = { id: randomUUID(), written_utc: new Date().toISOString(), ...note };
  library.write(() => library.run(from.insertInto('notes').values(row)));
  return row.id;
}

export function notesOf(library: Library, lessonId: string): Note[] {
  return library.all(
    from.selectFrom('notes').selectAll().where('lesson_id', '=', lessonId).orderBy('written_utc'),
  );
}

/** What the student thought of it before the debrief was seen: a level, words, or both. */
export function addEstimate(library: Library, estimate: Omit<Estimate, 'id' | 'given_utc'>): string {
  const row = { id: randomUUID(), given_utc: new Date().toISOString(), ...estimate };
  library.write(() => library.run(from.insertInto('estimates').values(row)));
  return row.id;
}

export function estimatesOf(library: Library, debriefId: string): Estimate[] {
  return library.all(
    from.selectFrom('estimates').selectAll().where('debrief_id', '=', debriefId).orderBy('given_utc'),
  );
}

/** A goal that was agreed with a student, at a lesson or apart from any. */
export function agreeGoal(library: Library, goal: Pick<Goal, 'student_id' | 'lesson_id' | 'text'>): string {
  const row = { id: randomUUID(), agreed_utc: new Date().toISOString(), reached_utc: null, ...goal };
  library.write(() => library.run(from.insertInto('goals').values(row)));
  return row.id;
}

/** A goal is reached, or is not after all; false where it is not there. */
export function reachGoal(library: Library, id: string, isReached = true): boolean {
  const reached_utc = isReached ? new Date().toISOString() : null;
  return library.write(() => {
    const isThere = library.first(from.selectFrom('goals').select('id').where('id', '=', id)) !== null;
    library.run(from.updateTable('goals').set({ reached_utc }).where('id', '=', id));
    return isThere;
  });
}

export function goalsOf(library: Library, studentId: string): Goal[] {
  return library.all(
    from.selectFrom('goals').selectAll().where('student_id', '=', studentId).orderBy('agreed_utc'),
  );
}

/** The hash of the document that a debrief stands by; null where it is not there. */
export function documentOf(library: Library, debriefId: string): string | null {
  const debrief = from.selectFrom('debriefs').select('document_sha256').where('id', '=', debriefId);
  return library.first(debrief)?.document_sha256 ?? null;
}

/** Signs the document that the debrief stands by now; it is kept when a newer engine makes another. */
export function sign(
  library: Library,
  { debrief_id, person_id, act }: Pick<Signature, 'debrief_id' | 'person_id' | 'act'>,
): string {
  const id = randomUUID();
  library.write(() => {
    const { document_sha256 } = library.first(
      from.selectFrom('debriefs').select('document_sha256').where('id', '=', debrief_id),
    )!;
    const signed_utc = new Date().toISOString();
    library.run(
      from
        .insertInto('signatures')
        .values({ id, debrief_id, document_sha256, person_id, act, signed_utc })
        .onConflict((there) => there.doNothing()),
    );
  });
  return id;
}

/** Who signed, and whether it was what the debrief stands by now. */
export function signaturesOf(library: Library, debriefId: string): (Signature & { isCurrent: boolean })[] {
  const current = library.first(
    from.selectFrom('debriefs').select('document_sha256').where('id', '=', debriefId),
  )?.document_sha256;
  return library
    .all(from.selectFrom('signatures').selectAll().where('debrief_id', '=', debriefId).orderBy('signed_utc'))
    .map((signature) => ({ ...signature, isCurrent: signature.document_sha256 === current }));
}
