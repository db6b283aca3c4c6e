import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { flushFile, renameFlushed } from '../files/flushed.ts';
import { APPLICATION_ID, versionInFile } from './file-header.ts';
import { MIGRATIONS } from './migrations.ts';
import type { SqliteFile } from './sqlite.ts';

/** Brings a file to the present version, or to an earlier one for a test; all of it or nothing. */
export function migrate(sqlite: SqliteFile, to = MIGRATIONS.length): void {
  sqlite.exec('BEGIN IMMEDIATE');
  try {
    // Asked within: another process may have done it meanwhile.
    for (let version = versionOf(sqlite); version < to; version++) {
      sqlite.exec(MIGRATIONS[version]!);
      sqlite.exec(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${version + 1}`);
    }
    sqlite.exec('COMMIT');
  } catch (error) {
    if (sqlite.isTransaction) sqlite.exec('ROLLBACK');
    throw error;
  }
}

export function versionOf(sqlite: SqliteFile): number {
  return (sqlite.prepare('PRAGMA user_version').get() as { user_version: number }).user_version;
}

/** A copy of the library's file as it is before it is migrated, beside it and on the disk when this returns. */
export function copyBeforeMigration(sqlite: SqliteFile, folder: string): void {
  const version = versionOf(sqlite);
  const path = join(folder, `before-version-${MIGRATIONS.length}.sqlite`);
  const beside = `${path}.${process.pid}.part`;
  rmSync(beside, { force: true });
  sqlite.prepare('VACUUM INTO ?').run(beside);
  flushFile(beside);
  // Another process may have migrated before the copy was made: it has made one of its own.
  if (versionInFile(beside) === version) renameFlushed(beside, path);
  else rmSync(beside);
}
