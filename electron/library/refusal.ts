import { issue, type Issue } from '../../core/issue/issue.ts';
import { systemReason } from '../files/file-problems.ts';

/**
 * Why the library cannot do what was asked, in one sentence. Thrown, so that a transaction that meets it is undone;
 * whoever runs the command turns it into its answer.
 */
export class LibraryRefusal extends Error {
  readonly issue: Issue;

  constructor(refusal: Issue) {
    super(refusal.message);
    this.issue = refusal;
  }
}

/** Throws a refusal; for use where a value is wanted. */
export function refuseLibrary(code: string, message: string, tip: string | null = null): never {
  throw new LibraryRefusal(issue('refusal', code, message, { tip }));
}

/** Of the one transaction: what the command did before it stays done. */
const UNDONE = 'What was being written was undone.';
const BRINGS_BACK = '`halfdot restore BACKUP` brings a copy back.';

/** The file is damaged, and was left as it is. */
export function damaged(path: string): Issue {
  return issue('refusal', 'library-damaged', `The library ${path} is damaged.`, {
    tip: BRINGS_BACK,
  });
}

/** Rows could not be read, for a reason that nobody told. */
export function unread(path: string): Issue {
  return issue(
    'refusal',
    'library-disk',
    `The library ${path} could not be read: the disk reports an error.`,
  );
}

/** SQLite's primary result codes (sqlite.org/rescode.html) that have their cause outside of the program. */
const CAUSES: Readonly<Record<number, readonly [code: string, what: string, tip: string | null]>> = {
  3: ['library-not-permitted', 'may not be used: it is not permitted', null],
  5: ['library-busy', 'is being written by another program', 'Try again when that has ended.'],
  6: ['library-busy', 'is being written by another program', 'Try again when that has ended.'],
  8: ['library-read-only', 'cannot be written: its file or folder is read-only', null],
  10: ['library-disk', 'could not be read or written: the disk reports an error or is full', UNDONE],
  11: ['library-damaged', 'is damaged', BRINGS_BACK],
  13: ['library-disk-full', 'cannot be written: the disk is full', UNDONE],
  14: ['library-cannot-open', 'cannot be opened: its folder is not there or not permitted', null],
  23: ['library-not-permitted', 'may not be used: it is not permitted', null],
  26: ['library-damaged', 'is damaged, or no library at all', BRINGS_BACK],
};

/** The refusal that an error stands for; null for a fault of our own. */
export function refusalOf(error: unknown, path: string): Issue | null {
  if (error instanceof LibraryRefusal) return error.issue;
  const { errcode, syscall } = error as { errcode?: unknown; syscall?: unknown };
  if (typeof errcode === 'number') {
    const cause = CAUSES[errcode & 0xff];
    return cause ? issue('refusal', cause[0], `The library ${path} ${cause[1]}.`, { tip: cause[2] }) : null;
  }
  if (typeof syscall !== 'string') return null;
  const named = (error as NodeJS.ErrnoException).path ?? path;
  return issue('refusal', 'library-files', `${named} cannot be used: ${systemReason(error)}.`);
}
