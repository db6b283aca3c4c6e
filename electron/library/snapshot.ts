import { Library } from './library.ts';
import { loadSqlite } from './sqlite.ts';
import type { RecordTable } from './tables.ts';

/** How long another program's recovering of the file is waited for. */
const WAIT_MS = 5000;

/**
 * Long reading of the library as it is at one moment, while it is read and written meanwhile: by a connection of its
 * own, through which nothing can be written. SQLite itself sees to the locks that two connections of a process share.
 */
export async function atOneMoment<T>(library: Library, work: (moment: Library) => Promise<T>): Promise<T> {
  const sqlite = (await loadSqlite())(library.path);
  try {
    sqlite.exec(`PRAGMA busy_timeout = ${WAIT_MS}; PRAGMA query_only = ON; BEGIN`);
    // The moment is that of the first reading.
    sqlite.prepare('SELECT count(*) FROM sqlite_schema').get();
    return await work(new Library(library.path, sqlite));
  } finally {
    // Closing alone does not end it: the package holds a closed file open until its statements are cleared from memory,
    // and a moment that is still being read keeps what is deleted from being erased.
    if (sqlite.isTransaction) sqlite.exec('ROLLBACK');
    sqlite.close();
  }
}

/** A table's rows one by one, by where they stand: SQLite's own reading row by row outlives no pause in between. */
export function* rowsOf<Row>(
  moment: Library,
  table: RecordTable,
  inOrder: <T>(places: readonly T[]) => readonly T[] = (places) => places,
): Generator<Row, void, undefined> {
  const places = moment.answers<{ place: number }>(`SELECT rowid AS place FROM ${table} ORDER BY rowid`);
  for (const { place } of inOrder(places))
    yield moment.answers<Row>(`SELECT * FROM ${table} WHERE rowid = ?`, place)[0]!;
}
