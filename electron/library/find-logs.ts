import { sql } from 'kysely';
import { flownCount } from './flown-count.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import { refuseLibrary } from './refusal.ts';

/** So many digits of a hash name a log. */
const HASH = /^[0-9a-f]{8,64}$/i;
/** As many choices as are read in one go. */
const CHOICES_MAX = 6;

/** Whose the log with these bytes is; null where it is nobody's, or not here. */
export function studentOfLog(library: Library, bytes: Uint8Array): string | null {
  return library.first(logs.where('logs.sha256', '=', sha256Of(bytes)))?.student ?? null;
}

/**
 * The hash of the one log that is meant by its file name as it was kept, or by the first 8 or more digits of its hash.
 * Refused with a sentence where there is none, and with the choices where there are several.
 */
export function logNamed(library: Library, named: string): string {
  const found = library.all(
    logs.where((is) =>
      is.or([
        is('logs.file_name', '=', named),
        ...(HASH.test(named) ? [is('logs.sha256', 'like', `${named.toLowerCase()}%`)] : []),
      ]),
    ),
  );
  const [log, ...others] = found;
  if (!log)
    return refuseLibrary(
      'library-log',
      `There is no log "${named}" in the library.`,
      'Use its file name as it was kept, or the first 8 digits of its hash.',
    );
  if (others.length === 0) return log.sha256;
  const choices = found.slice(0, CHOICES_MAX).map(inWords);
  const more = found.length > CHOICES_MAX ? `, and ${found.length - CHOICES_MAX} more` : '';
  return refuseLibrary(
    'library-log',
    `${found.length} logs are meant by "${named}": ${choices.join('; ')}${more}.`,
    'Name one by the digits of its hash.',
  );
}

/** The hashes of all logs of a student, or of nobody. */
export function logsOf(library: Library, studentId: string | null): string[] {
  return library
    .all(logs.where('lessons.student_id', studentId === null ? 'is' : '=', studentId))
    .map(({ sha256 }) => sha256);
}

/** Logs by day, of one student or of all, each with the digits of its hash by which `logNamed` finds it. */
export function listLogs(library: Library, studentId: string | null) {
  const approaches = flownCount(sql`debriefs.log_sha256 = logs.sha256`);
  const asked = studentId === null ? logs : logs.where('lessons.student_id', '=', studentId);
  return library
    .all(asked.select(approaches.as('approaches')))
    .map(({ date, student, file_name, sha256, approaches: count }) => ({
      date,
      student,
      log: file_name,
      hash: sha256.slice(0, HASH_SHOWN),
      approaches: count,
    }));
}

const logs = from
  .selectFrom('logs')
  .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
  .leftJoin('people', 'people.id', 'lessons.student_id')
  .select(['logs.sha256', 'logs.file_name', 'lessons.date', 'people.name as student'])
  .orderBy('lessons.date')
  .orderBy('logs.start_utc')
  .orderBy('logs.sha256');

function inWords({ sha256, file_name, date, student }: LogRow): string {
  return `${sha256.slice(0, HASH_SHOWN)} (${file_name}, ${date}, ${student ?? 'nobody'})`;
}

const HASH_SHOWN = 12;

interface LogRow {
  readonly sha256: string;
  readonly file_name: string;
  readonly date: string;
  readonly student: string | null;
}
