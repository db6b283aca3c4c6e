import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import { folded } from '../bridge/names.ts';
import { refuseLibrary } from './refusal.ts';

/** An open SQLite file, as `node:sqlite` has it. */
export type SqliteFile = DatabaseSyncInstance;

type Sqlite = Pick<typeof import('@photostructure/sqlite'), 'DatabaseSync'>;

/**
 * The one place that knows where SQLite comes from: the runtime's own where it has one, else the package that has the
 * same interface and a file ready for this machine. Neither is loaded before a library is opened. SQLite itself knows no
 * case beyond A to Z: every file is opened with `folded` of `names.ts` (see `folded-column.ts`).
 */
export async function loadSqlite(): Promise<(path: string) => SqliteFile> {
  const { DatabaseSync } = builtIn() ?? (await packaged());
  return (path) => {
    const sqlite = new DatabaseSync(path) as SqliteFile;
    sqlite.function('folded', { deterministic: true }, folded);
    return sqlite;
  };
}

/** The runtime's; without its remark that SQLite is new to it, which would stand among a command's messages. */
function builtIn(): Sqlite | undefined {
  const { emitWarning } = process;
  process.emitWarning = () => {};
  try {
    return process.getBuiltinModule('node:sqlite' as never) as Sqlite | undefined;
  } finally {
    process.emitWarning = emitWarning;
  }
}

async function packaged(): Promise<Sqlite> {
  try {
    return await import('@photostructure/sqlite');
  } catch {
    return refuseLibrary(
      'library-without-sqlite',
      `The library needs SQLite, which Node.js ${process.version} does not have.`,
      'Use Node.js 22.13 or later, or run `npm ci` in the folder above dist/.',
    );
  }
}
