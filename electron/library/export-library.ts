import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { flushFolder, renameFlushed } from '../files/flushed.ts';
import { documentText } from './documents.ts';
import { from, type Library } from './library.ts';
import { LogFiles } from './log-files.ts';
import { refuseLibrary } from './refusal.ts';
import { Pace } from './pace.ts';
import { Pseudonyms, type OpenRow } from './pseudonyms.ts';
import { shuffled } from './shuffled.ts';
import { atOneMoment, rowsOf } from './snapshot.ts';
import { RECORD_TABLES, type Document, type RecordTable } from './tables.ts';
import { sweepParts } from './sweep-parts.ts';
import type { Watch } from './watch.ts';

export const EXPORT_FORMAT = 'halfdot-library/1';
export const EXPORT_FILE = 'library.jsonl';

/** What of the library goes out, and under which names. */
interface ExportAsked {
  readonly pseudonyms: boolean;
  readonly logs: boolean;
}

/** The first line of an export; what was not asked for is told by its absence. */
export interface ExportHead {
  readonly format: typeof EXPORT_FORMAT;
  readonly version: number;
  readonly pseudonyms?: true;
  readonly logs?: false;
}

/**
 * Writes everything into a new folder in the open: `library.jsonl`, one JSON object a line (the format and the version
 * first, then every row with its table, the debriefs as themselves), and the logs as in the library. `missing`: names of
 * logs that the library has not whole, whose rows come without a file.
 */
export async function exportLibrary(
  library: Library,
  target: string,
  asked: ExportAsked,
  watch: Watch,
): Promise<{ rows: number; missing: readonly string[] }> {
  if (existsSync(target))
    refuseLibrary('library-in-the-way', `${target} is there already.`, 'Name a folder that is not.');
  const folder = `${resolve(target)}.${process.pid}.part`;
  sweepParts(dirname(folder), (name) => name === basename(resolve(target)));
  try {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const { rows, logs, pace } = await atOneMoment(library, (moment) =>
      writeRows(moment, join(folder, EXPORT_FILE), asked, watch),
    );
    const missing: string[] = [];
    for (const { sha256, file_name } of logs) {
      await pace.step();
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

/** All rows, while others are let in; gives the logs among them that are to come along. */
async function writeRows(moment: Library, path: string, asked: ExportAsked, watch: Watch) {
  const file = openSync(path, 'w');
  const line = (value: unknown) => void writeSync(file, `${JSON.stringify(value)}\n`);
  const logs = asked.logs ? moment.all(from.selectFrom('logs').select(['sha256', 'file_name'])) : [];
  const pace = new Pace(watch, stepsOf(moment, asked) + logs.length);
  let rows = 0;
  try {
    line(headOf(moment.version(), asked));
    const names = asked.pseudonyms ? await Pseudonyms.of(moment, asked.logs, pace) : null;
    for (const table of RECORD_TABLES)
      // What was kept stands in the order in which it came, which would tell who is whom.
      for (const row of rowsOf<Record<string, unknown>>(moment, table, names ? shuffled : undefined)) {
        await pace.step();
        const open = opened(table, row);
        const written = names ? names.row(table, open) : open;
        if (written === null) continue;
        line({ table, row: written });
        rows++;
      }
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  return { rows, logs, pace };
}

/** A step for every row, and for every document that is read beforehand. */
function stepsOf(moment: Library, { pseudonyms }: ExportAsked): number {
  const count = (table: RecordTable) =>
    moment.first(from.selectFrom(table).select(({ fn }) => fn.countAll<number>().as('rows')))!.rows;
  const rows = RECORD_TABLES.reduce((sum, table) => sum + count(table), 0);
  return rows + (pseudonyms ? count('documents') : 0);
}

function headOf(version: number, { pseudonyms, logs }: ExportAsked): ExportHead {
  return {
    format: EXPORT_FORMAT,
    version,
    ...(pseudonyms && { pseudonyms }),
    ...(!logs && { logs }),
  };
}

function opened<Table extends RecordTable>(table: Table, row: Record<string, unknown>): OpenRow<Table> {
  if (table === 'approaches') {
    const { id: _, ...rest } = row;
    return rest as unknown as OpenRow<Table>;
  }
  if (table !== 'documents') return row as unknown as OpenRow<Table>;
  const { json_gz, ...rest } = row as unknown as Document;
  return { ...rest, json: JSON.parse(documentText(rest.sha256, json_gz)) } as OpenRow<Table>;
}
