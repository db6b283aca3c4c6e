import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { checkLibrary } from '../../../electron/library/check-library.ts';
import { keepDocument } from '../../../electron/library/documents.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { packDocument } from '../../../electron/library/packed-document.ts';
import { loadSqlite, type SqliteFile } from '../../../electron/library/sqlite.ts';
import { RECORD_TABLES } from '../../../electron/library/tables.ts';
import { ROOT } from '../../house/source-files.ts';
import { runCommand, type Said } from '../cli/run-command.ts';

export const SAMPLES = join(ROOT, 'samples');
export const FACILITY = join(SAMPLES, 'petrelholm-ils-07.json');
export const SAMPLE = join(SAMPLES, 'first-approach.csv');
export const ALL_FACILITIES = ['petrelholm-ils-07', 'whimbrelness-ils-13', 'choughfell-ils-32'].flatMap(
  (name) => ['--facility', join(SAMPLES, `${name}.json`)],
);
const NO_WATCH = async () => {};

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** A new folder that goes when the file's tests have ended. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfdot-library-'));
  folders.push(folder);
  return folder;
}

/** Logs of one flight that differ by an empty line more at their end, and so by their hash. */
export function manyLogs(count: number): string {
  const folder = join(newFolder(), 'recorder');
  mkdirSync(folder);
  const text = readFileSync(SAMPLE, 'utf8');
  for (let i = 1; i <= count; i++)
    writeFileSync(join(folder, `log-${String(i).padStart(2, '0')}.csv`), text + '\n'.repeat(i));
  return folder;
}

/** A library that holds these logs, as one student's. */
export async function libraryOf(logs: string, student = 'Rowan Teal'): Promise<string> {
  const library = join(newFolder(), 'library');
  const said = await command(library, 'import', logs, '--facility', FACILITY, '--student', student);
  expect(said).toMatchObject({ status: 0 });
  return library;
}

export function command(library: string, name: string, ...words: string[]): Promise<Said> {
  return runCommand(name, ...words, '--library', library);
}

export async function opened<T>(folder: string, work: (library: Library) => T | Promise<T>): Promise<T> {
  const library = await openLibrary(folder, 'existing');
  try {
    return await work(library);
  } finally {
    library.close();
  }
}

/** The file itself, without anything that opening a library does. */
export async function rawFile<T>(path: string, work: (sqlite: SqliteFile) => T): Promise<T> {
  const sqlite = (await loadSqlite())(path);
  try {
    return work(sqlite);
  } finally {
    sqlite.close();
  }
}

/** Opens the library and finds it whole: checked, nothing doubled, and its files those that it names and no others. */
export async function expectWhole(folder: string): Promise<{ logs: string[]; notes: string[] }> {
  return opened(folder, async (library) => {
    expect(await checkLibrary(library, NO_WATCH)).toMatchObject({ faults: [], remarks: [] });
    const logs = library.all(from.selectFrom('logs').select(['sha256', 'file_name']).orderBy('file_name'));
    const files = logs.length === 0 ? [] : readdirSync(library.logFiles.folder);
    expect(files.sort()).toEqual(logs.map(({ sha256 }) => `${sha256}.gz`).sort());
    expect(readdirSync(folder).filter((name) => name.includes('.part'))).toEqual([]);
    const names = logs.map(({ file_name }) => file_name);
    expect(new Set(names).size).toBe(names.length);
    const debriefs = library.all(from.selectFrom('debriefs').select('log_sha256'));
    expect(debriefs.map(({ log_sha256 }) => log_sha256).sort()).toEqual(
      logs.map(({ sha256 }) => sha256).sort(),
    );
    expect(library.all(from.selectFrom('approaches').select('number'))).toHaveLength(logs.length);
    const notes = library.all(from.selectFrom('notes').select('text')).map(({ text }) => text);
    expect(new Set(notes).size).toBe(notes.length);
    return { logs: names, notes };
  });
}

/** Keeps another debrief in the place of one that is there. */
export function keepInstead(library: Library, id: string, debrief: Debrief): void {
  const { standard } = library.first(from.selectFrom('debriefs').select('standard').where('id', '=', id))!;
  const document = packDocument(debrief, JSON.parse(standard) as Standard);
  library.write(() => keepDocument(library, id, document));
}

/** Takes away what progress reads of a debrief. */
export function dropFacts(library: Library, debriefId: string): void {
  const approaches = from.selectFrom('approaches').select('id').where('debrief_id', '=', debriefId);
  library.run(from.deleteFrom('approach_facts').where('approach_id', 'in', approaches));
}

/** Every row of the record, by table, without what an approach goes by in this file alone. */
export function everything(folder: string): Promise<Record<string, unknown[]>> {
  return opened(folder, (library) =>
    Object.fromEntries(
      RECORD_TABLES.map((table) => {
        const order = table === 'approaches' ? 'debrief_id, number' : '1, 2';
        const rows = library.answers<object>(`SELECT * FROM ${table} ORDER BY ${order}`);
        return [table, table === 'approaches' ? rows.map((row) => ({ ...row, id: null })) : rows];
      }),
    ),
  );
}

const mounted: string[] = [];
afterEach(() => {
  // Lazily: a closed file is let go of only when its memory is cleared away.
  for (const folder of mounted.splice(0)) spawnSync('umount', ['-l', folder]);
});

/** A disk of its own of so many kilobytes; null where this machine lets nobody mount one. */
export function smallDisk(kB: number): string | null {
  const folder = join(newFolder(), 'disk');
  mkdirSync(folder);
  const { status } = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kB}k`, 'tmpfs', folder]);
  if (status !== 0) return null;
  mounted.push(folder);
  return folder;
}
