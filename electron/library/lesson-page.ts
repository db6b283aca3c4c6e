import { EVERY_FLIGHT } from '../bridge/every-flight.ts';
import { from, type Library } from './library.ts';
import { flightRows } from './flight-rows.ts';
import { goalsOf, notesOf } from './record.ts';

/** More approaches than anybody flies in a day. */
const MOST_APPROACHES = 500;

/** Everything that is kept of one lesson; null where it is not there any more. */
export function lessonPage(library: Library, id: string) {
  const lesson = library.first(
    from
      .selectFrom('lessons')
      .leftJoin('people as student', 'student.id', 'lessons.student_id')
      .leftJoin('people as instructor', 'instructor.id', 'lessons.instructor_id')
      .selectAll('lessons')
      .select(['student.name as student', 'instructor.name as instructor'])
      .where('lessons.id', '=', id),
  );
  if (lesson === null) return null;
  const newestLast = { by: 'flown', isDown: false } as const;
  const part = { from: 0, count: MOST_APPROACHES };
  const logs = from.selectFrom('logs').where('lesson_id', '=', id);
  const logIds = logs.select('sha256');
  const debriefIds = from.selectFrom('debriefs').select('id').where('log_sha256', 'in', logIds);
  return {
    lesson,
    approaches: flightRows(library, { ...EVERY_FLIGHT, lessonId: id }, newestLast, part).rows,
    logs: library.all(
      logs.select(['sha256', 'file_name as fileName', 'fixes', 'start_utc as startUtc']).orderBy('start_utc'),
    ),
    notes: namedNotes(library, id),
    goals: lesson.student_id === null ? [] : goalsOf(library, lesson.student_id),
    estimates: library.all(
      from.selectFrom('estimates').selectAll().where('debrief_id', 'in', debriefIds).orderBy('given_utc'),
    ),
    signatures: library.all(
      from
        .selectFrom('signatures')
        .innerJoin('debriefs', 'debriefs.id', 'signatures.debrief_id')
        .innerJoin('people', 'people.id', 'signatures.person_id')
        .select([
          'signatures.debrief_id as debriefId',
          'signatures.act',
          'signatures.signed_utc as signedUtc',
          'people.name',
          'signatures.document_sha256 as signed',
          'debriefs.document_sha256 as current',
        ])
        .where('signatures.debrief_id', 'in', debriefIds)
        .orderBy('signatures.signed_utc'),
    ),
  };
}

function namedNotes(library: Library, lessonId: string) {
  const names = new Map(
    library.all(from.selectFrom('people').select(['id', 'name'])).map(({ id, name }) => [id, name]),
  );
  return notesOf(library, lessonId).map((note) => ({
    ...note,
    author: note.author_id === null ? null : (names.get(note.author_id) ?? null),
  }));
}
