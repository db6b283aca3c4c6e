import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { flushFolder } from '../files/flushed.ts';
import { backUp, type NamedLog } from './backup.ts';
import { versionInFile } from './file-header.ts';
import type { Library } from './library.ts';
import { LogFiles } from './log-files.ts';
import { migrate } from './migrate.ts';
import { LIBRARY_FILE, openLibrary } from './open-library.ts';
import { announceLogs, sweepLogs, writeWithLogs } from './pending-logs.ts';
import { damaged, LibraryRefusal, refuseLibrary } from './refusal.ts';
import { loadSqlite } from './sqlite.ts';
import { RECORD_TABLES } from './tables.ts';
import type { Watch } from './watch.ts';

interface Restored {
  readonly logs: number;
  /** Names of logs that neither the backup nor the library before it has whole. */
  readonly missing: readonly string[];
  /** Where what was there before is kept; null where nothing was. */
  readonly before: string | null;
}

/**
 * Makes the library what a backup holds. The backup is copied, checked and brought to the present version first, and
 * what is there now is kept beside; then all rows change in one commit, so that a crash leaves the one or the other.
 */
export async function restore(folder: string, backup: string, watch: Watch): Promise<Restored> {
  const source = join(backup, LIBRARY_FILE);
  if (!existsSync(source))
    refuseLibrary('library-no-backup', `${backup} is no backup of a library: it holds no ${LIBRARY_FILE}.`);
  refuseLive(folder, backup);
  const isNew = !existsSync(folder);
  mkdirSync(folder, { recursive: true });
  const staged = join(folder, `restoring.${process.pid}.part`);
  try {
    const logs = await stage(source, staged);
    const logFiles = new LogFiles(join(backup, 'logs'));
    const lacking = await notWhole(logFiles, logs, watch);
    const { library, before } = await openOver(folder, watch);
    try {
      const sources = before === null ? [logFiles] : [logFiles, new LogFiles(join(before, 'logs'))];
      replaceAll(library, staged, sources, logs);
      const missing = lacking.filter(({ sha256 }) => library.logFiles.state(sha256) !== 'whole');
      return {
        logs: logs.length - missing.length,
        missing: missing.map(({ file_name }) => file_name),
        before,
      };
    } finally {
      library.close();
    }
  } finally {
    for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(`${staged}${ending}`, { force: true });
    if (isNew && !existsSync(join(folder, LIBRARY_FILE))) rmSync(folder, { recursive: true });
  }
}

/** A library in use may hold its latest commits in its write-ahead log, which a copy of its file would leave behind. */
function refuseLive(folder: string, backup: string): void {
  if (resolve(folder) === resolve(backup))
    refuseLibrary('library-no-backup', `${backup} is the library itself, and no backup of it.`);
  const log = join(backup, `${LIBRARY_FILE}-wal`);
  if (existsSync(log) && statSync(log).size > 0)
    refuseLibrary(
      'library-no-backup',
      `${backup} is a library in use, or one that was not closed.`,
      `Close it, or run \`halfdot check --library ${backup}\`; then try again.`,
    );
}

/** A copy of the backup's file, found whole and of the present version; gives its logs. */
async function stage(source: string, staged: string): Promise<NamedLog[]> {
  if (versionInFile(source) === 0)
    refuseLibrary('library-no-backup', `${source} is empty: it is no backup of a library.`);
  copyFileSync(source, staged);
  const open = await loadSqlite();
  const sqlite = open(staged);
  try {
    const answer = sqlite.prepare('PRAGMA integrity_check(1)').get() as { integrity_check: string };
    if (answer.integrity_check !== 'ok') refuseDamagedBackup(source);
    migrate(sqlite);
    return sqlite.prepare('SELECT sha256, file_name FROM logs').all() as NamedLog[];
  } catch (error) {
    if ([11, 26].includes((error as { errcode?: number }).errcode ?? 0)) refuseDamagedBackup(source);
    throw error;
  } finally {
    sqlite.close();
  }
}

function refuseDamagedBackup(source: string): never {
  return refuseLibrary(
    'library-damaged-backup',
    `The backup ${source} is damaged.`,
    'The library stays as it is.',
  );
}

/** The logs that the backup cannot give: one that is lost costs its own bytes, and not all the others. */
async function notWhole(logFiles: LogFiles, logs: readonly NamedLog[], watch: Watch): Promise<NamedLog[]> {
  const lacking: NamedLog[] = [];
  for (const [i, log] of logs.entries()) {
    await watch(i / logs.length);
    if (logFiles.state(log.sha256) !== 'whole') lacking.push(log);
  }
  return lacking;
}

/** The library that is to be replaced, with a copy of it kept beside; one that is damaged is moved aside whole. */
async function openOver(folder: string, watch: Watch): Promise<{ library: Library; before: string | null }> {
  let library: Library;
  let before: string | null = null;
  const path = join(folder, LIBRARY_FILE);
  const wasThere = existsSync(path) && statSync(path).size > 0;
  try {
    library = await openWhole(folder);
  } catch (error) {
    if (!isDamage(error)) throw error;
    before = moveAside(folder);
    return { library: await openLibrary(folder, 'restoring'), before };
  }
  if (wasThere) {
    before = freeName(join(folder, 'before-restore'));
    try {
      await backUp(library, before, watch, { link: true });
    } catch (error) {
      library.close();
      throw error;
    }
  }
  return { library, before };
}

/** Damage may lie where opening does not look; it would be met in the middle of the restore. */
async function openWhole(folder: string): Promise<Library> {
  const library = await openLibrary(folder, 'restoring');
  try {
    refuseUnlessWhole(library);
    return library;
  } catch (error) {
    library.close();
    throw error;
  }
}

function refuseUnlessWhole(library: Library): void {
  const [answer] = library.answers<{ integrity_check: string }>('PRAGMA integrity_check(1)');
  if (answer?.integrity_check !== 'ok') throw new LibraryRefusal(damaged(library.path));
}

function isDamage(error: unknown): boolean {
  if (error instanceof LibraryRefusal) return error.issue.code === 'library-damaged';
  return [11, 26].includes(((error as { errcode?: number }).errcode ?? 0) & 0xff);
}

function moveAside(folder: string): string {
  const aside = freeName(join(folder, 'damaged'));
  mkdirSync(aside);
  for (const name of [`${LIBRARY_FILE}-wal`, `${LIBRARY_FILE}-shm`, 'logs', LIBRARY_FILE])
    if (existsSync(join(folder, name))) renameSync(join(folder, name), join(aside, name));
  flushFolder(aside);
  flushFolder(folder);
  return aside;
}

/** The name with the first number behind it that is not taken. */
function freeName(name: string): string {
  for (let count = 1; ; count++) if (!existsSync(`${name}-${count}`)) return `${name}-${count}`;
}

function replaceAll(
  library: Library,
  staged: string,
  sources: readonly LogFiles[],
  logs: readonly NamedLog[],
): void {
  library.execute('ATTACH ? AS backup', staged);
  const sha256s = logs.map(({ sha256 }) => sha256);
  writeWithLogs(library, sha256s, () => {
    for (const sha256 of sha256s) {
      if (library.logFiles.state(sha256) === 'whole') continue;
      const source = sources.find((one) => one.state(sha256) === 'whole');
      source?.copyTo(library.logFiles, sha256, { link: false });
    }
    const now = library.answers<{ sha256: string }>('SELECT sha256 FROM logs');
    announceLogs(
      library,
      now.map(({ sha256 }) => sha256),
    );
    for (const table of RECORD_TABLES.toReversed()) library.execute(`DELETE FROM main.${table}`);
    // Both are of the present version, and a column added by a migration stands at the end of its table in both.
    for (const table of RECORD_TABLES)
      library.execute(`INSERT INTO main.${table} SELECT * FROM backup.${table}`);
  });
  library.execute('DETACH backup');
  sweepLogs(library);
}
