import { spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it, vi } from 'vitest';
import { holdingsOf } from '../../../electron/library/delete-student.ts';
import { finishErasing, markErasing } from '../../../electron/library/erasing.ts';
import { from, Library } from '../../../electron/library/library.ts';
import { personNamed } from '../../../electron/library/people.ts';
import { addEstimate, addNote, agreeGoal, sign } from '../../../electron/library/record.ts';
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
  SAMPLE,
  SAMPLES,
  smallDisk,
} from './some-library.ts';

describe('halfdot delete', () => {
  it('says first what would go, then leaves no byte of it in file, log or folder', async () => {
    const own = await libraryOf(manyLogs(2), 'Zzyzxwren Quillfeather');
    await command(
      own,
      'import',
      join(SAMPLES, 'went-around.csv'),
      '--student',
      'Hazel Wren',
      '--facility',
      FACILITY,
    );
    await opened(own, (open) => {
      const { id } = open.first(
        from
          .selectFrom('debriefs')
          .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
          .select('debriefs.id')
          .where('logs.file_name', '=', 'log-01.csv'),
      )!;
      const student = personNamed(open, 'student', 'Zzyzxwren Quillfeather');
      const lesson = open.first(
        from.selectFrom('lessons').select('id').where('student_id', '=', student.id),
      )!;
      const note = { debrief_id: null, about_utc: null, author_id: student.id, text: 'Xylograph remark' };
      addNote(open, { ...note, lesson_id: lesson.id });
      agreeGoal(open, { student_id: student.id, lesson_id: null, text: 'Xylograph goal' });
      addEstimate(open, { debrief_id: id, about_utc: null, level: null, words: 'Xylograph words' });
      sign(open, { debrief_id: id, person_id: student.id, act: 'graded' });
    });
    await opened(own, (open) => {
      const { id } = personNamed(open, 'student', 'Hazel Wren');
      const theirs = open.first(from.selectFrom('lessons').select('id').where('student_id', '=', id))!;
      const text = 'ask quillfeather to fly along, as Zzyzxwren Quillfeather once did';
      addNote(open, { debrief_id: null, about_utc: null, author_id: null, text, lesson_id: theirs.id });
      expect(holdingsOf(open, personNamed(open, 'student', 'Zzyzxwren Quillfeather')).namedElsewhere).toBe(1);
      open.run(from.deleteFrom('notes').where('text', '=', text));
      expect(holdingsOf(open, personNamed(open, 'student', 'Zzyzxwren Quillfeather')).namedElsewhere).toBe(0);
    });
    // A copy that the program puts beside: it would hold the student too.
    const backup = join(newFolder(), 'backup');
    await command(own, 'backup', backup);
    await command(own, 'restore', backup);
    const words = ['Zzyzxwren', 'Xylograph', 'log-01.csv'];
    expect(words.every((word) => filesWith(own, word).length > 0)).toBe(true);
    const would = await command(own, 'delete', '--student', 'zzyzxwren quillfeather');
    const copies = `with everybody in them: ${join(own, 'before-restore-1')}.`;
    expect(would.answer).toContain(
      'Would delete Zzyzxwren Quillfeather with 1 lesson, 2 logs and 2 approaches',
    );
    expect(would.answer).toContain(`go too, ${copies}`);
    expect(words.every((word) => filesWith(own, word).length > 0)).toBe(true);
    const said = await command(own, 'delete', '--student', 'zzyzxwren quillfeather', '--confirm', 'yes');
    expect(said).toMatchObject({ status: 0, messages: [], answer: expect.stringContaining('Deleted') });
    expect(said.answer).toContain(`went too, ${copies}`);
    expect(readdirSync(own).filter((name) => name.startsWith('before-'))).toEqual([]);
    for (const word of words) expect(filesWith(own, word)).toEqual([]);
    expect(readdirSync(join(own, 'logs'))).toHaveLength(1);
    expect((await expectWhole(own)).logs).toEqual(['went-around.csv']);
  });

  it('says where bytes may stay while another process reads, and a later command clears them away', async () => {
    const own = await libraryOf(manyLogs(1), 'Zzyzxwren Quillfeather');
    await rawFile(join(own, 'library.sqlite'), async (reader) => {
      reader.exec('BEGIN; SELECT * FROM people');
      const words = ['delete', '--student', 'Zzyzxwren Quillfeather', '--confirm', 'yes', '--library', own];
      const said = spawnSync(process.execPath, [join(ROOT, 'dist/halfdot.js'), ...words], {
        encoding: 'utf8',
      });
      expect(said).toMatchObject({
        status: 2,
        stderr: expect.stringContaining('Another program is reading'),
      });
      reader.exec('COMMIT');
    });
    expect(await command(own, 'check')).toMatchObject({
      status: 0,
      messages: [expect.stringContaining('is finished now')],
    });
    expect(filesWith(own, 'Zzyzxwren')).toEqual([]);
    expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
  });

  it.each([
    [10, 'the disk reports an error'],
    [11, 'is damaged'],
    [13, 'the disk is full'],
  ])(
    'says what is left where the file cannot be written anew (%i), and check does it',
    async (errcode, why) => {
      const own = await restoredOver(manyLogs(1), 'Zzyzxwren Quillfeather');
      const execute = Library.prototype.execute;
      const failing = vi.spyOn(Library.prototype, 'execute').mockImplementation(function (
        this: Library,
        sql,
        ...values
      ) {
        if (sql === 'VACUUM') throw Object.assign(new Error('as SQLite fails'), { errcode });
        return execute.call(this, sql, ...values);
      });
      const said = await command(own, 'delete', '--student', 'Zzyzxwren Quillfeather', '--confirm', 'yes');
      expect(said).toMatchObject({ status: 2, answer: expect.stringContaining('Deleted Zzyzxwren') });
      expect(said.answer).toContain('before-restore-1');
      expect(said.messages).toEqual([expect.stringContaining(why)]);
      expect(said.messages[0]).toContain('`halfdot check` clears them away');
      expect(said.messages[0]).not.toMatch(/nothing was changed|undone/i);
      expect(readdirSync(own)).not.toContain('before-restore-1');
      const still = await command(own, 'check');
      expect(still).toMatchObject({ status: 2, answer: expect.stringContaining('1 fault found') });
      expect(still.messages[0]).toContain('A deletion is not finished');
      failing.mockRestore();
      expect((await command(own, 'check')).messages).toEqual([expect.stringContaining('is finished now')]);
      expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
      expect(filesWith(own, 'Zzyzxwren')).toEqual([]);
      expect(await expectWhole(own)).toEqual({ logs: [], notes: [] });
    },
  );

  it('on a disk with no room to write the file anew is finished when there is some', async ({ skip }) => {
    const disk = smallDisk(20_000);
    if (disk === null) return skip('nothing can be mounted here');
    const own = join(disk, 'library');
    for (const [logs, student] of [
      [manyLogs(12), 'Hazel Wren'],
      [SAMPLE, 'Zzyzxwren Quillfeather'],
    ] as const)
      await command(own, 'import', logs, '--facility', FACILITY, '--student', student);
    const { bavail, bsize } = statfsSync(disk);
    writeFileSync(join(disk, 'other'), Buffer.alloc(bavail * bsize - ROOM_BYTES));
    const said = await command(own, 'delete', '--student', 'Zzyzxwren Quillfeather', '--confirm', 'yes');
    expect(said).toMatchObject({ status: 2, answer: expect.stringContaining('Deleted Zzyzxwren') });
    expect(said.messages[0]).toMatch(/disk (is full|reports an error or is full)/);
    rmSync(join(disk, 'other'));
    expect((await command(own, 'check')).messages).toEqual([expect.stringContaining('is finished now')]);
    expect(filesWith(own, 'Zzyzxwren')).toEqual([]);
    expect((await expectWhole(own)).logs).toHaveLength(12);
  });

  it('that another process has under way is waited for, and not taken for one that was undone', async () => {
    const own = await restoredOver(manyLogs(1), 'Rowan Teal');
    await opened(own, async (open) => {
      const student = personNamed(open, 'student', 'Rowan Teal');
      let said: SpawnSyncReturns<string> | null = null;
      open.write(() => {
        open.run(from.deleteFrom('lessons'));
        open.run(from.deleteFrom('people').where('id', '=', student.id));
        markErasing(open, student.id);
        said = spawnSync(process.execPath, [join(ROOT, 'dist/halfdot.js'), 'check', '--library', own], {
          encoding: 'utf8',
        });
      });
      expect(said).toMatchObject({
        status: 2,
        stderr: expect.stringContaining('A deletion is not finished'),
      });
      expect(finishErasing(open)).toBe(null);
    });
    expect(readdirSync(own)).not.toContain('before-restore-1');
    expect(filesWith(own, 'Rowan')).toEqual([]);
  });

  it('that is undone after all takes nothing away when check comes by', async () => {
    const own = await restoredOver(manyLogs(1), 'Rowan Teal');
    await opened(own, (open) => {
      const student = personNamed(open, 'student', 'Rowan Teal');
      open.write(() => markErasing(open, student.id));
    });
    expect(await command(own, 'check')).toMatchObject({ status: 0 });
    expect(readdirSync(own)).toContain('before-restore-1');
    expect((await expectWhole(own)).logs).toHaveLength(1);
    expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
  });
});

/** What a deletion needs for itself; the file of a dozen logs written anew is more. */
const ROOM_BYTES = 300_000;

/** A library that was restored from its own backup, and so has a copy of itself beside it. */
async function restoredOver(logs: string, student: string): Promise<string> {
  const own = await libraryOf(logs, student);
  const backup = join(newFolder(), 'backup');
  await command(own, 'backup', backup);
  await command(own, 'restore', backup);
  return own;
}

/** The files below a folder that hold these bytes, unpacked or packed. */
function filesWith(folder: string, word: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .filter((name) => {
      const bytes = readFileSync(join(folder, name));
      return bytes.includes(word) || (name.endsWith('.gz') && gunzipSync(bytes).includes(word));
    });
}
