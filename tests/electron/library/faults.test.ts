import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { from } from '../../../electron/library/library.ts';
import { LIBRARY_FILE } from '../../../electron/library/open-library.ts';
import { addNote } from '../../../electron/library/record.ts';
import { refusalOf } from '../../../electron/library/refusal.ts';
import { ROOT } from '../../house/source-files.ts';
import {
  command,
  expectWhole,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  rawFile,
  smallDisk,
} from './some-library.ts';

const PROGRAM = join(ROOT, 'dist/halfdot.js');

let recorder = '';
let library = '';
beforeAll(async () => {
  recorder = manyLogs(12);
  library = await libraryOf(manyLogs(2));
});

describe('a disk that is full', () => {
  it('stops an import with one sentence, and keeps what was told of', async ({ skip }) => {
    const disk = smallDisk(700);
    if (disk === null) return skip('nothing can be mounted here');
    const folder = join(disk, 'library');
    const said = await command(folder, 'import', recorder, '--facility', FACILITY);
    expect(said.status).toBe(2);
    expect(said.messages.filter((line) => line.startsWith('halfdot:'))).toEqual([
      expect.stringMatching(/disk (is full|reports an error or is full)/),
    ]);
    // What frees room lets it be opened again.
    spawnSync('mount', ['-o', 'remount,size=20m', disk]);
    const told = [...said.answer.matchAll(/^(log-\d+\.csv): kept/gm)].map(([, name]) => name);
    expect(told.length).toBeGreaterThan(0);
    expect((await expectWhole(folder)).logs).toEqual(told);
    await command(folder, 'import', recorder, '--facility', FACILITY);
    expect((await expectWhole(folder)).logs).toHaveLength(12);
  });

  it('undoes the whole of what was being written', () =>
    opened(library, (open) => {
      const [{ page_count: pages }] = open.answers<{ page_count: number }>('PRAGMA page_count') as [
        { page_count: number },
      ];
      open.answers(`PRAGMA max_page_count = ${pages}`);
      const lesson = open.first(from.selectFrom('lessons').select('id'))!;
      const note = { lesson_id: lesson.id, debrief_id: null, about_utc: null, author_id: null };
      let error: unknown;
      try {
        addNote(open, { ...note, text: 'long '.repeat(100_000) });
      } catch (thrown) {
        error = thrown;
      }
      expect(refusalOf(error, library)?.message).toContain('the disk is full');
      expect(open.all(from.selectFrom('notes').select('id'))).toEqual([]);
      // The library can go on being used.
      addNote(open, { ...note, text: 'short' });
      open.write(() => open.run(from.deleteFrom('notes')));
    }));
});

it('a read-only folder is said to be so, and nothing is changed', async ({ skip }) => {
  const isRoot = process.getuid?.() === 0;
  const folder = isRoot ? smallDisk(4000) : newFolder();
  if (folder === null) return skip('nothing can be mounted here');
  copyFileSync(join(library, LIBRARY_FILE), join(folder, LIBRARY_FILE));
  const before = readFileSync(join(folder, LIBRARY_FILE));
  if (isRoot) spawnSync('mount', ['-o', 'remount,ro', folder]);
  else {
    chmodSync(join(folder, LIBRARY_FILE), 0o444);
    chmodSync(folder, 0o555);
  }
  for (const words of [['list'], ['import', recorder, '--facility', FACILITY], ['check']]) {
    const said = await command(folder, ...(words as [string]));
    expect(said).toMatchObject({ status: 2, answer: '' });
    expect(said.messages).toEqual([expect.stringMatching(/read-only|not permitted/)]);
  }
  expect(readFileSync(join(folder, LIBRARY_FILE))).toEqual(before);
  if (!isRoot) chmodSync(folder, 0o755);
});

describe('a file that is damaged', () => {
  /** The pages of the debriefs spoilt, all others whole. */
  function damagedCopy(): string {
    const folder = newFolder();
    const bytes = readFileSync(join(library, LIBRARY_FILE));
    for (let page = 5; page < bytes.length / 4096; page++) bytes.fill(0xee, page * 4096, page * 4096 + 100);
    writeFileSync(join(folder, LIBRARY_FILE), bytes);
    return folder;
  }

  it('is said to be so by what meets the damage, and left as it is', async () => {
    for (const words of [
      ['list', 'approaches'],
      ['recompute'],
      ['delete', '--student', 'Rowan Teal', '--confirm', 'yes'],
    ]) {
      const folder = damagedCopy();
      const before = readFileSync(join(folder, LIBRARY_FILE));
      const said = await command(folder, ...(words as [string, string]));
      expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining('is damaged')] });
      expect(readFileSync(join(folder, LIBRARY_FILE)).equals(before)).toBe(true);
    }
  });

  it('is found by check', async () => {
    const said = await command(damagedCopy(), 'check');
    expect(said.status).toBe(2);
    expect(said.messages.join('\n')).toMatch(/damaged/);
  });

  it('is moved aside by a restore, logs and all, and kept', async () => {
    const backup = join(newFolder(), 'backup');
    await command(library, 'backup', backup);
    const folder = newFolder();
    const damage = 'no library any more\n'.repeat(400);
    writeFileSync(join(folder, LIBRARY_FILE), damage);
    mkdirSync(join(folder, 'logs'));
    writeFileSync(join(folder, 'logs', `${'1'.repeat(64)}.gz`), 'a log');
    const said = await command(folder, 'restore', backup);
    expect(said.answer).toContain(join(folder, 'damaged-1'));
    expect((await expectWhole(folder)).logs).toHaveLength(2);
    expect(readFileSync(join(folder, 'damaged-1', LIBRARY_FILE), 'utf8')).toBe(damage);
    expect(readdirSync(join(folder, 'damaged-1', 'logs'))).toHaveLength(1);
  });

  it('anywhere makes no restore fail: the library is moved aside, or a copy of it kept', async () => {
    const backup = join(newFolder(), 'backup');
    await command(library, 'backup', backup);
    const good = readFileSync(join(library, LIBRARY_FILE));
    const refused: string[] = [];
    for (let page = 1; page < good.length / 4096; page++) {
      const folder = newFolder();
      const bytes = Buffer.from(good).fill(0xee, page * 4096, page * 4096 + 100);
      writeFileSync(join(folder, LIBRARY_FILE), bytes);
      const said = await command(folder, 'restore', backup);
      if (said.status !== 0) refused.push(`page ${page + 1}: ${said.messages.join(' ')}`);
      else {
        expect((await expectWhole(folder)).logs).toHaveLength(2);
        const kept = ['damaged-1', 'before-restore-1'].filter((name) => existsSync(join(folder, name)));
        expect(kept).toHaveLength(1);
        if (kept[0] === 'damaged-1')
          expect(readFileSync(join(folder, 'damaged-1', LIBRARY_FILE)).equals(bytes)).toBe(true);
      }
    }
    expect(refused).toEqual([]);
  });

  it('in a backup leaves the library as it is', async () => {
    const backup = join(newFolder(), 'backup');
    await command(library, 'backup', backup);
    const before = await rawFile(join(library, LIBRARY_FILE), (sqlite) =>
      sqlite.prepare('SELECT * FROM logs').all(),
    );
    writeFileSync(join(backup, LIBRARY_FILE), readFileSync(join(damagedCopy(), LIBRARY_FILE)));
    expect((await command(library, 'restore', backup)).messages[0]).toContain('is damaged');
    expect((await command(library, 'restore', newFolder())).messages[0]).toContain('is no backup');
    expect(await opened(library, (open) => open.answers('SELECT * FROM logs'))).toEqual(before);
    await expectWhole(library);
  });
});

it('a library in use is no backup: its file alone may lack the latest', async () => {
  const live = await libraryOf(manyLogs(1));
  const said = await command(live, 'restore', live);
  expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining('is the library itself')] });
  await opened(live, async (open) => {
    open.write(() => open.run(from.updateTable('lessons').set({ objective: 'in the write-ahead log' })));
    const other = await command(library, 'restore', live);
    expect(other).toMatchObject({ status: 2, messages: [expect.stringContaining('a library in use')] });
  });
  expect((await expectWhole(library)).logs).toHaveLength(2);
  // Closed, it is as good as a backup.
  const fresh = join(newFolder(), 'library');
  expect(await command(fresh, 'restore', live)).toMatchObject({ status: 0 });
  const lessons = await opened(fresh, (open) => open.all(from.selectFrom('lessons').select('objective')));
  expect(lessons).toEqual([{ objective: 'in the write-ahead log' }]);
});

describe('two processes at once', () => {
  it('that import the same logs keep each once', async () => {
    const folder = join(newFolder(), 'library');
    const words = [PROGRAM, 'import', recorder, '--facility', FACILITY, '--library', folder];
    const ended = [1, 2, 3].map(
      () =>
        new Promise<number | null>((resolve) =>
          spawn(process.execPath, words, { stdio: 'ignore' }).on('close', resolve),
        ),
    );
    expect(await Promise.all(ended)).toEqual([0, 0, 0]);
    expect((await expectWhole(folder)).logs).toHaveLength(12);
  });

  it('of which one writes and does not end: the other says so after a while, and reads meanwhile', async () => {
    await rawFile(join(library, LIBRARY_FILE), async (sqlite) => {
      sqlite.exec('BEGIN IMMEDIATE');
      const run = (...words: string[]) =>
        spawnSync(process.execPath, [PROGRAM, ...words, '--library', library], { encoding: 'utf8' });
      expect(run('list').stdout).toContain('Rowan Teal');
      const { status, stderr } = run('import', recorder, '--facility', FACILITY);
      expect(status).toBe(2);
      expect(stderr).toContain('is being written by another program');
      sqlite.exec('ROLLBACK');
    });
    expect((await expectWhole(library)).logs).toHaveLength(2);
  });
});
