import { readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { backUp } from '../../../electron/library/backup.ts';
import { from } from '../../../electron/library/library.ts';
import {
  command,
  everything,
  expectWhole,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  rawFile,
} from './some-library.ts';

/** The names of the logs' files, in the order of the logs' own names. */
function logFilesOf(folder: string): Promise<string[]> {
  return opened(folder, (open) =>
    open
      .all(from.selectFrom('logs').select('sha256').orderBy('file_name'))
      .map(({ sha256 }) => `${sha256}.gz`),
  );
}

/** Loses the first of the logs in a folder and alters the second. */
async function spoilLogs(library: string, logs: string): Promise<void> {
  const [first, second] = await logFilesOf(library);
  rmSync(join(logs, first!));
  rmSync(join(logs, second!));
  writeFileSync(join(logs, second!), gzipSync('another flight'));
}

const NAMES = 'log-01.csv, log-02.csv.';

describe('logs of the library that are missing or altered', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await libraryOf(manyLogs(3));
    await spoilLogs(folder, join(folder, 'logs'));
  });

  it('are said by name, and all else can be used', async () => {
    await opened(folder, (open) => {
      open.write(() => open.run(from.updateTable('debriefs').set({ engine_version: '0.0.1' })));
    });
    const checked = await command(folder, 'check');
    expect(checked).toMatchObject({ status: 2, answer: expect.stringContaining('2 faults') });
    expect(checked.messages).toEqual([
      expect.stringContaining('log-01.csv is missing'),
      expect.stringContaining('log-02.csv is altered'),
    ]);
    const anew = await command(folder, 'recompute');
    expect(anew).toMatchObject({ status: 2, answer: expect.stringContaining('1 debrief made anew, 2 left') });
    expect(anew.messages[0]).toContain('log-01.csv of the library is missing');
    expect(anew.messages[1]).toContain('log-02.csv of the library was altered');
    expect((await command(folder, 'list')).answer).toContain('Rowan Teal');
  });

  it('are named by a backup, which can be restored with all the rest', async () => {
    const backup = join(newFolder(), 'backup');
    const made = await command(folder, 'backup', backup);
    expect(made).toMatchObject({ status: 2, messages: [expect.stringContaining(NAMES)] });
    expect(made.answer).toContain('1 log of it');
    const fresh = join(newFolder(), 'library');
    const said = await command(fresh, 'restore', backup);
    expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining(NAMES)] });
    expect(said.answer).toContain('The library and 1 log were restored');
    expect(await everything(fresh)).toEqual(await everything(folder));
    expect((await command(fresh, 'check')).answer).toContain('2 faults');
  });

  it('are named by an export, and by the library that takes it in with all the rest', async () => {
    const out = join(newFolder(), 'out');
    const made = await command(folder, 'export', out);
    expect(made).toMatchObject({ status: 2, messages: [expect.stringContaining(NAMES)] });
    expect(readdirSync(join(out, 'logs'))).toHaveLength(1);
    const fresh = join(newFolder(), 'library');
    const said = await command(fresh, 'import', '--from', out);
    expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining(NAMES)] });
    expect((await everything(fresh))['debriefs']).toHaveLength(3);
    expect((await command(fresh, 'check')).messages).toEqual([
      expect.stringContaining('log-01.csv is missing'),
      expect.stringContaining('log-02.csv is missing'),
    ]);
  });
});

describe('logs of a backup that are missing or altered', () => {
  it('stay where the library has them, and are named where it has not', async () => {
    const library = await libraryOf(manyLogs(3));
    const backup = join(newFolder(), 'backup');
    await command(library, 'backup', backup);
    await spoilLogs(library, join(backup, 'logs'));
    expect(await command(library, 'restore', backup)).toMatchObject({ status: 0, messages: [] });
    expect((await expectWhole(library)).logs).toHaveLength(3);
    const other = await libraryOf(manyLogs(1), 'Hazel Wren');
    const said = await command(other, 'restore', backup);
    // The one log of the other is the first of these.
    expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining(': log-02.csv.')] });
    expect(said.answer).toContain('2 logs were restored');
  });

  it('come from a library that is moved aside because its file is damaged', async () => {
    const library = await libraryOf(manyLogs(3));
    const backup = join(newFolder(), 'backup');
    await command(library, 'backup', backup);
    await spoilLogs(library, join(backup, 'logs'));
    const damaged = newFolder();
    renameSync(join(library, 'logs'), join(damaged, 'logs'));
    writeFileSync(join(damaged, 'library.sqlite'), 'no library any more\n'.repeat(400));
    const said = await command(damaged, 'restore', backup);
    expect(said).toMatchObject({ status: 0, messages: [] });
    expect((await expectWhole(damaged)).logs).toHaveLength(3);
  });
});

it('a backup holds the logs that its own tables name, whatever became of the library since', async () => {
  const library = await libraryOf(manyLogs(2));
  const backup = join(newFolder(), 'backup');
  await opened(library, async (open) => {
    const execute = open.execute.bind(open);
    vi.spyOn(open, 'execute').mockImplementation((sql, ...values) => {
      const changed = execute(sql, ...values);
      // Another process, at the worst moment.
      if (sql.startsWith('VACUUM INTO')) open.run(from.deleteFrom('lessons'));
      return changed;
    });
    expect(await backUp(open, backup, async () => {})).toEqual({ logs: 2, missing: [] });
  });
  expect(readdirSync(backup).sort()).toEqual(['library.sqlite', 'logs']);
  const fresh = join(newFolder(), 'library');
  expect(await command(fresh, 'restore', backup)).toMatchObject({ status: 0 });
  expect((await expectWhole(fresh)).logs).toEqual(['log-01.csv', 'log-02.csv']);
});

it('a backup that names a log by a path is refused, and nothing is changed', async () => {
  const library = await libraryOf(manyLogs(1));
  const backup = join(newFolder(), 'backup');
  await command(library, 'backup', backup);
  await rawFile(join(backup, 'library.sqlite'), (sqlite) =>
    sqlite.exec("PRAGMA foreign_keys = OFF; UPDATE logs SET sha256 = '../' || sha256"),
  );
  const said = await command(library, 'restore', backup);
  expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining('what is no hash')] });
  expect((await expectWhole(library)).logs).toHaveLength(1);
});
