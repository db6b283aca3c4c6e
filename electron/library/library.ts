import { dirname, join } from 'node:path';
import {
  DummyDriver,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type Compilable,
} from 'kysely';
import { LogFiles } from './log-files.ts';
import { versionOf } from './migrate.ts';
import { damaged, LibraryRefusal, unread } from './refusal.ts';
import type { SqliteFile } from './sqlite.ts';
import type { Tables } from './tables.ts';

/** Writes and types the queries, and runs none: SQLite answers at once, and needs no promise and no pool. */
export const from = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (kysely) => new SqliteIntrospector(kysely),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

type Values = (null | number | string | Uint8Array)[];

/**
 * An open library: a folder with `library.sqlite` and `logs/`. See `open-library.ts` for how it comes about. A process
 * opens a library once at a time, but for `atOneMoment`: closing a handle of the file that is not SQLite's gives up the
 * locks that SQLite holds on it.
 */
export class Library {
  readonly folder: string;
  readonly logFiles: LogFiles;
  readonly #sqlite: SqliteFile;
  #isWriting = false;

  constructor(
    readonly path: string,
    sqlite: SqliteFile,
  ) {
    this.folder = dirname(path);
    this.logFiles = new LogFiles(join(this.folder, 'logs'));
    this.#sqlite = sqlite;
  }

  /** The rows that a query answers with. */
  all<Row>(query: Compilable<Row>): Row[] {
    const { sql, parameters } = query.compile();
    return this.answers(sql, ...(parameters as Values));
  }

  /**
   * The same as bare values in the order of the query's columns: for long lists, since SQLite's side names every value
   * of every row anew and takes four times as long for it.
   */
  tuples<Tuple extends readonly unknown[]>(query: Compilable): Tuple[] {
    const { sql, parameters } = query.compile();
    const statement = this.#sqlite.prepare(sql);
    // A Node.js 22 before its 16th release knows no rows without names.
    const areBare = typeof statement.setReturnArrays === 'function';
    if (areBare) statement.setReturnArrays(true);
    try {
      const rows = statement.all(...(parameters as Values)) as object[];
      return (areBare ? rows : rows.map(Object.values)) as Tuple[];
    } catch (error) {
      throw this.#withCause(error);
    }
  }

  /**
   * The same for lists that are longer still, of columns without bytes: SQLite writes them as one text, since every value
   * that is handed over by itself costs more than to read it there. Numbers come with 15 digits.
   */
  packed<Row extends readonly unknown[]>(query: Compilable, columns: readonly string[]): Row[] {
    const { sql, parameters } = query.compile();
    const row = `json_array(${columns.map((column) => `"${column}"`).join(', ')})`;
    const packed = this.#sqlite
      .prepare(`SELECT group_concat(${row}) AS rows FROM (${sql})`)
      .get(...(parameters as Values)) as { rows: string | null };
    return JSON.parse(`[${packed.rows ?? ''}]`) as Row[];
  }

  /** Its first row; null where there is none. */
  first<Row>(query: Compilable<Row>): Row | null {
    const { sql, parameters } = query.compile();
    return (this.#sqlite.prepare(sql).get(...(parameters as Values)) as Row | undefined) ?? null;
  }

  /** Runs what answers with no rows. */
  run(query: Compilable): void {
    const { sql, parameters } = query.compile();
    this.execute(sql, ...(parameters as Values));
  }

  /** The few statements that no query builder has, as VACUUM and ATTACH; gives how many rows were changed. */
  execute(sql: string, ...parameters: Values): number {
    return this.#sqlite.prepare(sql).run(...parameters).changes;
  }

  /** The rows that such a statement answers with, as PRAGMA does. */
  answers<Row>(sql: string, ...parameters: Values): Row[] {
    try {
      return this.#sqlite.prepare(sql).all(...parameters) as Row[];
    } catch (error) {
      throw this.#withCause(error);
    }
  }

  /** The package tells no cause of what fails while rows are read: that the file is damaged is then looked for. */
  #withCause(error: unknown): unknown {
    const { code, errcode } = error as { code?: unknown; errcode?: unknown };
    if (code !== 'ERR_SQLITE_ERROR' || errcode !== undefined) return error;
    try {
      const check = this.#sqlite.prepare('PRAGMA quick_check(1)').get() as { quick_check: string };
      return new LibraryRefusal(check.quick_check === 'ok' ? unread(this.path) : damaged(this.path));
    } catch (cause) {
      return cause;
    }
  }

  /** The same for as long as nobody changes anything, here or in another process. */
  state(): string {
    const { data_version: theirs } = this.#sqlite.prepare('PRAGMA data_version').get() as {
      data_version: number;
    };
    const { ours } = this.#sqlite.prepare('SELECT total_changes() AS ours').get() as { ours: number };
    return `${theirs} ${ours}`;
  }

  version(): number {
    return versionOf(this.#sqlite);
  }

  /**
   * All of the work or nothing of it. Nobody else writes meanwhile, in no other process either; what returns from here
   * is on the disk.
   */
  write<T>(work: () => T): T {
    if (this.#isWriting) throw new Error('a library is written by one piece of work at a time');
    this.#sqlite.exec('BEGIN IMMEDIATE');
    this.#isWriting = true;
    try {
      const made = work();
      this.#sqlite.exec('COMMIT');
      return made;
    } catch (error) {
      // Where the disk is full SQLite may have rolled back by itself.
      if (this.#sqlite.isTransaction) this.#sqlite.exec('ROLLBACK');
      throw error;
    } finally {
      this.#isWriting = false;
    }
  }

  /**
   * Moves what was written from the write-ahead log to the file itself; an empty one is the mark of a clean close.
   * False where another process reads what it holds.
   */
  settle(): boolean {
    const settled = this.#sqlite.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get() as { busy: number };
    return settled.busy === 0;
  }

  close(): void {
    try {
      // Where another process writes, it is that one which settles.
      this.#sqlite.exec('PRAGMA busy_timeout = 0');
      this.settle();
    } catch (error) {
      // A full disk, say: everything is in the write-ahead log, and the next one that can will settle it.
      if ((error as { code?: unknown }).code !== 'ERR_SQLITE_ERROR') throw error;
    } finally {
      this.#sqlite.close();
    }
  }
}
