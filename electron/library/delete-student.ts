import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { IS_LISTED } from './emptied-lessons.ts';
import { from, type Library } from './library.ts';
import { announceLogs, sweepLogs } from './pending-logs.ts';
import { isBusy } from './refusal.ts';
import type { Person } from './tables.ts';

/** What there is of a student. */
export function holdingsOf(library: Library, { id }: Person) {
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
  const approaches = library.all(from.selectFrom('approaches').select('number').where('student_id', '=', id));
  return { lessons: lessons.length, logs: logs.map(({ sha256 }) => sha256), approaches: approaches.length };
}

interface Deleted {
  readonly isErased: boolean;
  /** Folders that a restore moved aside, which may hold the student too. */
  readonly left: readonly string[];
}

/**
 * Deletes a student with every lesson, log, debrief, note, estimate, goal and signature. Freed pages are overwritten
 * and the file is written anew, so that no byte of it stays in the file, its write-ahead log or the folder; the copies
 * that the program itself put beside the library go too.
 */
export function deleteStudent(library: Library, student: Person): Deleted {
  const { logs } = holdingsOf(library, student);
  library.write(() => {
    announceLogs(library, logs);
    library.run(from.deleteFrom('signatures').where('person_id', '=', student.id));
    library.run(from.deleteFrom('notes').where('author_id', '=', student.id));
    library.run(from.deleteFrom('lessons').where('student_id', '=', student.id));
    library.run(from.deleteFrom('people').where('id', '=', student.id));
    for (const name of namesIn(library.folder, /^before-/))
      rmSync(join(library.folder, name), { recursive: true });
  });
  sweepLogs(library);
  const isErased = erase(library);
  const left = namesIn(library.folder, /^damaged-\d+$/).map((name) => join(library.folder, name));
  return { isErased, left };
}

/** False where another process is reading: what it reads stays until it has ended and the library is closed again. */
function erase(library: Library): boolean {
  try {
    library.execute('VACUUM');
  } catch (error) {
    if (!isBusy(error)) throw error;
  }
  return library.settle();
}

function namesIn(folder: string, pattern: RegExp): string[] {
  return readdirSync(folder).filter((name) => pattern.test(name));
}
