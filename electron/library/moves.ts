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
    const id = randomUUID();
    const moved = [...new Set(sha256s)].map((sha256) => moveOne(library, id, sha256, to));
    return moved.includes(true) ? moveOf(library, id) : null;
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
        .select(['log_sha256', 'from_lesson_id'])
        .where('move_id', '=', move.id),
    );
    for (const { log_sha256, from_lesson_id } of still) putInto(library, log_sha256, from_lesson_id);
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

/** Whether the log was elsewhere, and is moved now. Within a `write`. */
function moveOne(library: Library, move_id: string, log_sha256: string, to: MoveTo): boolean {
  const lesson = library.first(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .selectAll('lessons')
      .where('logs.sha256', '=', log_sha256),
  );
  if (!lesson) return refuseLibrary('library-log', 'A log that was to be moved is no longer in the library.');
  const date = to.date ?? lesson.date;
  if (lesson.student_id === to.studentId && lesson.date === date) return false;
  const to_lesson_id = keepLesson(library, flownFacts(lesson, to.studentId, date));
  library.run(
    from
      .insertInto('moves')
      .values({ id: move_id, moved_utc: new Date().toISOString(), undone_utc: null })
      .onConflict((there) => there.doNothing()),
  );
  const moved = { move_id, log_sha256, from_lesson_id: lesson.id, to_lesson_id };
  library.run(from.insertInto('moved_logs').values(moved));
  putInto(library, log_sha256, to_lesson_id);
  return true;
}

/** What a new lesson takes over: the facts of the flight, and not what was agreed with whoever it was taken for. */
function flownFacts(flown: Lesson, student_id: string | null, date: string): LessonFacts {
  const { aircraft, target_airspeed_kt, intercept_airspeed_kt, vref_kt, conditions } = flown;
  const facts = { aircraft, target_airspeed_kt, intercept_airspeed_kt, vref_kt, conditions };
  return { ...lessonOn(date), ...facts, student_id };
}

/** Puts a log into a lesson, with its approaches and the notes of its debriefs. Within a `write`. */
function putInto(library: Library, sha256: string, lesson_id: string): void {
  library.run(from.updateTable('logs').set({ lesson_id }).where('sha256', '=', sha256));
  const debriefs = from.selectFrom('debriefs').select('id').where('log_sha256', '=', sha256);
  library.run(from.updateTable('notes').set({ lesson_id }).where('debrief_id', 'in', debriefs));
  const { student_id, date } = library.first(
    from.selectFrom('lessons').select(['student_id', 'date']).where('id', '=', lesson_id),
  )!;
  library.run(
    from.updateTable('approaches').set({ lesson_id, student_id, date }).where('debrief_id', 'in', debriefs),
  );
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
