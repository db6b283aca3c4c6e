import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { issue, type Issue } from '../../core/issue/issue.ts';
import { flushFolder, writeFlushed } from '../files/flushed.ts';
import { from, type Library } from './library.ts';
import { sweepLogs } from './pending-logs.ts';
import { refusalOf } from './refusal.ts';

/**
 * What is left to do once the rows of a student are gone stands in a mark beside the library's file, `erasing-ID.json`
 * with the names of the copies that go too. It goes when all of it is done; a crash or a full disk leaves it, and
 * `halfdot check` or the next deletion does the rest.
 */
const MARK = /^erasing-(.+)\.json$/;

/** Copies that the program itself put beside the library, and which hold everybody: before a restore or an update. */
export function copiesBeside(library: Library): string[] {
  return namesIn(library, /^before-/).filter((name) => !name.endsWith('.part'));
}

/** At the end of the `write` that deletes the student: where that is undone after all, the mark counts for nothing. */
export function markErasing(library: Library, studentId: string): void {
  const text = JSON.stringify({ copies: copiesBeside(library) });
  writeFlushed(join(library.folder, `erasing-${studentId}.json`), Buffer.from(text));
}

/** Whether a deletion was begun and not done to its end. */
export function isErasing(library: Library): boolean {
  return namesIn(library, MARK).length > 0;
}

/**
 * Does what is left of the deletions that were begun: removes copies and logs, writes the file anew, and empties the
 * write-ahead log. Null where all of it is done, else why not; each step is tried, whatever became of the others.
 */
export function finishErasing(library: Library): Issue | null {
  let left: LeftToDo = { marks: [], copies: [] };
  // Nobody else writes here: a deletion that another process has under way is at its end, or was undone.
  const look = () => void (left = library.write(() => leftToDo(library)));
  const steps: (() => Issue | null | void)[] = [
    () => {
      for (const name of left.copies) rmSync(join(library.folder, name), { recursive: true });
    },
    () => void sweepLogs(library),
    () => void library.execute('VACUUM'),
    () => (library.settle() ? null : READ_BY_ANOTHER),
  ];
  const unseen = failureOf(look, library);
  if (unseen) return unseen;
  const [failure] = steps.flatMap((step) => failureOf(step, library) ?? []);
  return failure ?? failureOf(() => removeMarks(library, left.marks), library);
}

function removeMarks({ folder }: Library, marks: readonly string[]): void {
  for (const name of marks) rmSync(join(folder, name), { force: true });
  flushFolder(folder);
}

const READ_BY_ANOTHER = issue('refusal', 'library-busy', 'Another program is reading the library.');

function failureOf(step: () => Issue | null | void, library: Library): Issue | null {
  try {
    return step() ?? null;
  } catch (error) {
    const refusal = refusalOf(error, library.path);
    if (refusal === null) throw error;
    return refusal;
  }
}

interface LeftToDo {
  readonly marks: readonly string[];
  readonly copies: readonly string[];
}

function leftToDo(library: Library): LeftToDo {
  const marks = namesIn(library, MARK);
  const done = marks.filter((name) => !isThere(library, MARK.exec(name)![1]!));
  const named = new Set(done.flatMap((name) => copiesIn(join(library.folder, name))));
  return { marks, copies: copiesBeside(library).filter((name) => named.has(name)) };
}

function isThere(library: Library, id: string): boolean {
  return library.first(from.selectFrom('people').select('id').where('id', '=', id)) !== null;
}

/** A mark that cannot be read names no copy. */
function copiesIn(path: string): unknown[] {
  try {
    const { copies } = JSON.parse(readFileSync(path, 'utf8')) as { copies?: unknown };
    return Array.isArray(copies) ? copies : [];
  } catch {
    return [];
  }
}

function namesIn({ folder }: Library, pattern: RegExp): string[] {
  return readdirSync(folder).filter((name) => pattern.test(name));
}
