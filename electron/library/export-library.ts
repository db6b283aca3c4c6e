import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { flushFolder, renameFlushed } from '../files/flushed.ts';
import { documentText } from './documents.ts';
import { from, type Library } from './library.ts';
import { LogFiles } from './log-files.ts';
import { refuseLibrary } from './refusal.ts';
import { RECORD_TABLES, type Document, type RecordTable } from './tables.ts';
import { sweepParts } from './sweep-parts.ts';
import type { Watch } from './watch.ts';

export const EXPORT_FORMAT = 'halfdot-library/1';
export const EXPORT_FILE = 'library.jsonl';

/**
 * Writes everything into a new folder in the open: `library.jsonl`, one JSON object a line (the format and the version
 * first, then every row with its table, the debriefs as themselves), and the logs as in the library. `missing`: names of
 * logs that the library has not whole, whose rows come without a file.
 */
export async function exportLibrary(
  library: Library,
  target: string,
  watch: Watch,
): Promise<{ rows: number; missing: readonly string[] }> {
  if (existsSync(target))
    refuseLibrary('library-in-the-way', `${target} is there already.`, 'Name a folder that is not.');
  const folder = `${resolve(target)}.${process.pid}.part`;
  sweepParts(dirname(folder), (name) => name === basename(resolve(target)));
  try {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const rows = writeRows(library, join(folder, EXPORT_FILE));
    const logs = library.all(from.selectFrom('logs').select(['sha256', 'file_name']));
    const missing: string[] = [];
    for (const [i, { sha256, file_name }] of logs.entries()) {
      await watch(i / logs.length);
      if (library.logFiles.state(sha256) !== 'whole') missing.push(file_name);
      else library.logFiles.copyTo(new LogFiles(join(folder, 'logs')), sha256, { link: false });
    }
    flushFolder(folder);
    renameFlushed(folder, target);
    return { rows, missing };
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
}

/** All rows of one moment: nothing that another process writes meanwhile comes in between. */
function writeRows(library: Library, path: string): number {
  const file = openSync(path, 'w');
  const line = (value: unknown) => void writeSync(file, `${JSON.stringify(value)}\n`);
  let rows = 0;
  try {
    library.write(() => {
      line({ format: EXPORT_FORMAT, version: library.version() });
      for (const table of RECORD_TABLES)
        for (const row of library.rows<Record<string, unknown>>(`SELECT * FROM ${table}`)) {
          line({ table, row: opened(table, row) });
          rows++;
        }
    });
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  return rows;
}

function opened(table: RecordTable, row: Record<string, unknown>): unknown {
  if (table !== 'documents') return row;
  const { json_gz, ...rest } = row as unknown as Document;
  return { ...rest, json: JSON.parse(documentText(rest.sha256, json_gz)) as unknown };
}
