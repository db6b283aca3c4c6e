import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import type { Issue } from '../../core/issue/issue.ts';
import { copiesBeside, finishErasing, markErasing } from './erasing.ts';
import { IS_LISTED } from './emptied-lessons.ts';
import { flownCount } from './flown-count.ts';
import { from, type Library } from './library.ts';
import { announceLogs } from './pending-logs.ts';
import type { Person } from './tables.ts';

/** What there is of a student, and the copies beside the library that go too, with everybody in them. */
export function holdingsOf(library: Library, { id, name }: Person) {
  const lessons = library.all(
    from.selectFrom('lessons').select('id').where('student_id', '=', id).where(IS_LISTED),
  );
  const logs = library.all(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .select('logs.sha256')
      .where('lessons.student_id', '=', id),
  );
  const count = flownCount(sql`approaches.student_id = ${id}`);
  return {
    lessons: lessons.length,
    logs: logs.map(({ sha256 }) => sha256),
    approaches: library.first(from.selectNoFrom(count.as('approaches')))!.approaches,
    copies: copiesBeside(library).map((name) => join(library.folder, name)),
    namedElsewhere: namedElsewhere(library, { id, name }),
  };
}

/** Notes and objectives of others' lessons, and goals of others, that hold the name: they are not the student's. */
function namedElsewhere(library: Library, { id, name }: Pick<Person, 'id' | 'name'>): number {
  const count = sql<number>`count(*)`.as('count');
  const holds = (column: string) => sql<boolean>`instr(lower(${sql.ref(column)}), lower(${name})) > 0`;
  const ofOthers = sql<boolean>`student_id IS NOT ${id}`;
  const notes = from.selectFrom('notes').innerJoin('lessons', 'lessons.id', 'notes.lesson_id');
  const found = [
    notes.where(ofOthers).where(holds('notes.text')).select(count),
    from.selectFrom('lessons').where(ofOthers).where(holds('objective')).select(count),
    from.selectFrom('goals').where(ofOthers).where(holds('text')).select(count),
  ];
  return found.reduce((sum, query) => sum + library.first(query)!.count, 0);
}

interface Deleted {
  /** Null where no byte stays; else why some may, until `finishErasing` can do the rest. */
  readonly unfinished: Issue | null;
  /** Copies that went with it. */
  readonly copies: readonly string[];
  /** Folders that a restore moved aside, which may hold the student too. */
  readonly left: readonly string[];
}

/**
 * Deletes a student with every lesson, log, debrief, note, estimate, goal and signature. Freed pages are overwritten
 * and the file is written anew, so that no byte of it stays in the file, its write-ahead log or the folder; the copies
 * that the program itself put beside the library go too, with everybody in them.
 */
export function deleteStudent(library: Library, student: Person): Deleted {
  const { logs, copies } = holdingsOf(library, student);
  library.write(() => {
    announceLogs(library, logs);
    library.run(from.deleteFrom('signatures').where('person_id', '=', student.id));
    library.run(from.deleteFrom('notes').where('author_id', '=', student.id));
    library.run(from.deleteFrom('lessons').where('student_id', '=', student.id));
    library.run(from.deleteFrom('people').where('id', '=', student.id));
    markErasing(library, student.id);
  });
  const unfinished = finishErasing(library);
  const left = readdirSync(library.folder).filter((name) => /^damaged-\d+$/.test(name));
  return {
    unfinished,
    copies: copies.filter((path) => !existsSync(path)),
    left: left.map((name) => join(library.folder, name)),
  };
}
