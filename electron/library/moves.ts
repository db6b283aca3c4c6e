import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { isDay } from './day.ts';
import { keepLesson, lessonOn, type LessonFacts } from './lessons.ts';
import { from, type Library } from './library.ts';
import { refuseLibrary } from './refusal.ts';
import type { Lesson } from './tables.ts';

/** Where logs are to belong. `studentId` null: nobody's. `date` null: each keeps the date of the lesson it is in. */
export interface MoveTo {
  readonly studentId: string | null;
  readonly date: string | null;
}

/** A move as it is told: when, how many logs, to whom and which day. */
export interface Move {
  readonly id: string;
  readonly movedUtc: string;
  readonly logs: number;
  /** Null: to nobody. */
  readonly student: string | null;
  /** Null where the logs went to several days. */
  readonly date: string | null;
}

/**
 * Moves logs to a student's lessons, which are added if need be, with their approaches and what was noted of their
 * debriefs. Null when all of them were there already. Refused for a log, student or day that there is not.
 */
export function moveLogs(library: Library, sha256s: readonly string[], to: MoveTo): Move | null {
  return library.write(() => {
    refuseUnknown(library, to);
    const moving = toBeMoved(library, [...new Set(sha256s)], to);
    if (moving.length === 0) return null;
    const id = randomUUID();
    const moved_utc = new Date().toISOString();
    library.run(from.insertInto('moves').values({ id, moved_utc, undone_utc: null }));
    library.execute(
      `INSERT INTO moved_logs (move_id, log_sha256, from_lesson_id, to_lesson_id)
       SELECT ?, value ->> 0, value ->> 1, value ->> 2 FROM json_each(?)`,
      id,
      JSON.stringify(moving.map(({ sha256, fromId, toId }) => [sha256, fromId, toId])),
    );
    putInto(library, moving);
    return moveOf(library, id);
  });
}

/** The newest move that was not undone; null where there is none. */
export function lastMove(library: Library): Move | null {
  const last = library.first(
    from
      .selectFrom('moves')
      .select('id')
      .where('undone_utc', 'is', null)
      // In the order in which they were made, whatever the clock said.
      .orderBy(sql`rowid`, 'desc'),
  );
  return last && moveOf(library, last.id);
}

/**
 * Undoes the newest move that was not undone: puts back each log that is still where it put it. Gives the move with the
 * number of logs that came back; null where there is none to undo.
 */
export function undoMove(library: Library): Move | null {
  return library.write(() => {
    const move = lastMove(library);
    if (!move) return null;
    const still = library.all(
      from
        .selectFrom('moved_logs')
        .innerJoin('logs', (join) =>
          join
            .onRef('logs.sha256', '=', 'moved_logs.log_sha256')
            .onRef('logs.lesson_id', '=', 'moved_logs.to_lesson_id'),
        )
        .select(['log_sha256 as sha256', 'from_lesson_id as toId'])
        .where('move_id', '=', move.id),
    );
    putInto(library, still);
    const undone_utc = new Date().toISOString();
    library.run(from.updateTable('moves').set({ undone_utc }).where('id', '=', move.id));
    return { ...move, logs: still.length };
  });
}

function refuseUnknown(library: Library, { studentId, date }: MoveTo): void {
  if (date !== null && !isDay(date))
    refuseLibrary('library-no-day', `${date} is no day.`, 'Write it as 2026-05-01.');
  if (studentId === null) return;
  const student = from.selectFrom('people').select('id').where('id', '=', studentId);
  if (!library.first(student.where('role', '=', 'student')))
    refuseLibrary('library-person', 'The student is no longer in the library.');
}

/** A log and the lesson into which it goes. */
interface Put {
  readonly sha256: string;
  readonly toId: string;
}

/** Logs that are elsewhere now, each with its lesson and the one to which it goes, added if need be. Within a `write`. */
function toBeMoved(
  library: Library,
  sha256s: readonly string[],
  { studentId, date }: MoveTo,
): (Put & { readonly fromId: string })[] {
  const lessons = lessonsOf(library, sha256s);
  if (lessons.length < sha256s.length)
    refuseLibrary('library-log', 'A log that was to be moved is no longer in the library.');
  const byDay = new Map<string, string>();
  return lessons.flatMap(({ sha256, ...lesson }) => {
    const day = date ?? lesson.date;
    if (lesson.student_id === studentId && lesson.date === day) return [];
    const toId = byDay.get(day) ?? keepLesson(library, flownFacts(lesson, studentId, day));
    byDay.set(day, toId);
    return [{ sha256, fromId: lesson.id, toId }];
  });
}

/** The lesson of each log, in their order, without those that the library has not. */
function lessonsOf(library: Library, sha256s: readonly string[]): (Lesson & { readonly sha256: string })[] {
  return library.answers(
    `SELECT logs.sha256, lessons.* FROM json_each(?) AS asked
     JOIN logs ON logs.sha256 = asked.value JOIN lessons ON lessons.id = logs.lesson_id
     ORDER BY asked.key`,
    JSON.stringify(sha256s),
  );
}

/** What a new lesson takes over: the facts of the flight, and not what was agreed with whoever it was taken for. */
function flownFacts(flown: Lesson, student_id: string | null, date: string): LessonFacts {
  const { aircraft, target_airspeed_kt, intercept_airspeed_kt, vref_kt, conditions } = flown;
  const facts = { aircraft, target_airspeed_kt, intercept_airspeed_kt, vref_kt, conditions };
  return { ...lessonOn(date), ...facts, student_id };
}

/**
 * Puts logs into lessons, with their approaches and the notes of their debriefs: by a statement for each table, since a
 * school's are thousands. Within a `write`.
 */
function putInto(library: Library, puts: readonly Put[]): void {
  library.execute('CREATE TEMP TABLE puts (sha256 TEXT PRIMARY KEY, lesson_id TEXT NOT NULL) WITHOUT ROWID');
  library.execute(
    'INSERT INTO puts SELECT value ->> 0, value ->> 1 FROM json_each(?)',
    JSON.stringify(puts.map(({ sha256, toId }) => [sha256, toId])),
  );
  const ofDebriefs = 'FROM puts JOIN debriefs ON debriefs.log_sha256 = puts.sha256';
  library.execute('UPDATE logs SET lesson_id = puts.lesson_id FROM puts WHERE logs.sha256 = puts.sha256');
  library.execute(
    `UPDATE notes SET lesson_id = puts.lesson_id ${ofDebriefs} WHERE notes.debrief_id = debriefs.id`,
  );
  library.execute(
    `UPDATE approaches SET lesson_id = lessons.id, student_id = lessons.student_id, date = lessons.date
     ${ofDebriefs} JOIN lessons ON lessons.id = puts.lesson_id WHERE approaches.debrief_id = debriefs.id`,
  );
  library.execute('DROP TABLE puts');
}

function moveOf(library: Library, id: string): Move {
  const { movedUtc, logs, student, first, last } = library.first(
    from
      .selectFrom('moves')
      .innerJoin('moved_logs', 'moved_logs.move_id', 'moves.id')
      .innerJoin('lessons', 'lessons.id', 'moved_logs.to_lesson_id')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .select([
        'moves.moved_utc as movedUtc',
        'people.name as student',
        sql<number>`count(*)`.as('logs'),
        sql<string>`min(lessons.date)`.as('first'),
        sql<string>`max(lessons.date)`.as('last'),
      ])
      .where('moves.id', '=', id),
  )!;
  return { id, movedUtc, logs, student, date: first === last ? first : null };
}
