import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { flushFolder } from '../files/flushed.ts';
import { refuseForeign, versionInFile } from './file-header.ts';
import { Library } from './library.ts';
import { LogFiles } from './log-files.ts';
import { copyBeforeMigration, migrate, versionOf } from './migrate.ts';
import { MIGRATIONS } from './migrations.ts';
import { sweepLogs } from './pending-logs.ts';
import { damaged, LibraryRefusal, refuseLibrary } from './refusal.ts';
import { loadSqlite, type SqliteFile } from './sqlite.ts';
import { sweepParts } from './sweep-parts.ts';

export const LIBRARY_FILE = 'library.sqlite';

/** Whether there is something to be opened in a folder, or to be brought back. */
export function isLibraryThere(folder: string): boolean {
  return existsSync(join(folder, LIBRARY_FILE)) || existsSync(join(folder, 'logs'));
}

/** How long another program's writing is waited for. */
const WAIT_MS = 5000;

/** `create`: begins a library where there is none. `restoring`: also where one has been moved aside for it. */
export type Opening = 'existing' | 'create' | 'restoring';

/**
 * Opens the library in a folder: checked where it was not closed cleanly, brought to the present version, and rid of
 * what a crash may have left. Throws a `LibraryRefusal` with the reason why not; nothing is changed then.
 */
export async function openLibrary(folder: string, opening: Opening): Promise<Library> {
  const path = join(folder, LIBRARY_FILE);
  const isThere = existsSync(path);
  if (!isThere) refuseToBegin(folder, opening);
  // Read from the file, before SQLite may write beside it.
  else versionInFile(path);
  const wasCutOff = isThere && sizeOf(`${path}-wal`) > 0;
  const open = await loadSqlite();
  if (!isThere) mkdirSync(folder, { recursive: true });
  const sqlite = open(path);
  try {
    prepare(sqlite, path, wasCutOff);
    if (!isThere) flushFolder(folder);
    const library = new Library(path, sqlite);
    sweepParts(folder, (name) => /^(?:before|restoring)/.test(name));
    sweepLogs(library);
    return library;
  } catch (error) {
    sqlite.close();
    throw error;
  }
}

function prepare(sqlite: SqliteFile, path: string, wasCutOff: boolean): void {
  sqlite.exec(`PRAGMA busy_timeout = ${WAIT_MS}`);
  const version = versionAtOneMoment(sqlite, path);
  if (wasCutOff) refuseDamaged(sqlite, path);
  // Every commit reaches the disk before it returns, and readers never wait for a writer.
  sqlite.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON');
  // What is deleted is overwritten, and no page of it stays in the file.
  sqlite.exec('PRAGMA secure_delete = ON');
  if (version === MIGRATIONS.length) return;
  if (version > 0) copyBeforeMigration(sqlite, join(path, '..'));
  migrate(sqlite);
}

/** What the file is, asked in one transaction: another process may be about to make a library of it. */
function versionAtOneMoment(sqlite: SqliteFile, path: string): number {
  sqlite.exec('BEGIN');
  try {
    const { application_id } = sqlite.prepare('PRAGMA application_id').get() as { application_id: number };
    const version = refuseForeign(path, application_id, versionOf(sqlite));
    if (version === 0 && hasTables(sqlite))
      refuseLibrary('library-foreign', `${path} is a SQLite file of another program.`);
    return version;
  } finally {
    sqlite.exec('ROLLBACK');
  }
}

function refuseDamaged(sqlite: SqliteFile, path: string): void {
  const answer = sqlite.prepare('PRAGMA quick_check(1)').get() as { quick_check: string };
  if (answer.quick_check !== 'ok') throw new LibraryRefusal(damaged(path));
}

function hasTables(sqlite: SqliteFile): boolean {
  return sqlite.prepare('SELECT 1 FROM sqlite_master LIMIT 1').get() !== undefined;
}

/** A library whose file has gone is not silently begun anew beside its logs. */
function refuseToBegin(folder: string, opening: Opening): void {
  if (opening === 'existing')
    refuseLibrary('library-none', `There is no library in ${folder}.`, '`halfdot import` begins one.');
  if (opening === 'restoring' || !existsSync(folder)) return;
  if (!statSync(folder).isDirectory())
    refuseLibrary('library-no-folder', `${folder} is a file; a library is a folder.`);
  const wasMovedAside = readdirSync(folder).some((name) => /^damaged-\d+$/.test(name));
  if (wasMovedAside)
    refuseLibrary('library-restoring', `A restore in ${folder} was not finished.`, 'Run it again.');
  if (new LogFiles(join(folder, 'logs')).list().length > 0)
    refuseLibrary(
      'library-gone',
      `${folder} holds logs of a library, but the library's file ${LIBRARY_FILE} is not there.`,
      '`halfdot restore BACKUP` brings a copy back; or name another folder.',
    );
}

function sizeOf(path: string): number {
  return existsSync(path) ? statSync(path).size : 0;
}
