import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { keepDocument, readDocument } from '../../../electron/library/documents.ts';
import { from } from '../../../electron/library/library.ts';
import { MIGRATIONS } from '../../../electron/library/migrations.ts';
import { keepPerson, personNamed } from '../../../electron/library/people.ts';
import { addEstimate, addNote, agreeGoal, sign, signaturesOf } from '../../../electron/library/record.ts';
import { RECORD_TABLES } from '../../../electron/library/tables.ts';
import { ROOT } from '../../house/source-files.ts';
import { runCommand } from '../cli/run-command.ts';
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
} from './some-library.ts';

const SAMPLES = join(ROOT, 'samples');
const ALL_FACILITIES = ['petrelholm-ils-07', 'whimbrelness-ils-13', 'choughfell-ils-32'].flatMap((name) => [
  '--facility',
  join(SAMPLES, `${name}.json`),
]);

/** Every row of the record, by table. */
function everything(folder: string): Promise<Record<string, unknown[]>> {
  return opened(folder, (library) =>
    Object.fromEntries(
      RECORD_TABLES.map((table) => [table, library.answers(`SELECT * FROM ${table} ORDER BY 1, 2`)]),
    ),
  );
}

let library = '';
beforeAll(async () => {
  library = join(newFolder(), 'library');
  const said = await command(library, 'import', SAMPLES, ...ALL_FACILITIES, '--student', 'Rowan Teal');
  expect(said.status).toBe(0);
});

describe('halfdot import', () => {
  it('keeps every log of a folder with its debrief, each at the facility that it was flown to', async () => {
    const logs = readdirSync(SAMPLES).filter((name) => /\.(csv|gpx)$/.test(name));
    // One counts from its own start, and has no day.
    const kept = logs.filter((name) => name !== 'low-approach.csv');
    await opened(library, (open) => {
      const rows = open.all(
        from
          .selectFrom('logs')
          .leftJoin('debriefs', 'debriefs.log_sha256', 'logs.sha256')
          .leftJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
          .select(['file_name', 'facilities.name'])
          .orderBy('file_name'),
      );
      expect(rows.map(({ file_name }) => file_name)).toEqual(kept.sort());
      const at = Object.fromEntries(rows.map(({ file_name, name }) => [file_name, name]));
      expect(at).toMatchObject({ 'steep-and-high.csv': 'Choughfell ILS 32', 'overflight.csv': null });
    });
  });

  it('keeps the debrief that the debrief command gives', async () => {
    const said = await runCommand(
      'debrief',
      SAMPLE,
      '--facility',
      FACILITY,
      '--format',
      'json',
      '--vref',
      '70',
    );
    const own = join(newFolder(), 'library');
    await command(own, 'import', SAMPLE, '--facility', FACILITY, '--vref', '70');
    await opened(own, (open) => {
      const { id } = open.first(from.selectFrom('debriefs').select('id'))!;
      expect(readDocument(open, id)).toEqual(JSON.parse(said.answer));
    });
  });

  it('says and skips what is there, whatever its name, and needs no facility the second time', async () => {
    const before = await everything(library);
    const copy = join(newFolder(), 'renamed.csv');
    writeFileSync(copy, readFileSync(SAMPLE));
    const said = await command(library, 'import', copy, SAMPLES, '--student', 'Hazel Wren');
    expect(said).toMatchObject({
      status: 0,
      answer: expect.stringContaining('0 logs kept, 18 known already'),
    });
    expect(said.messages).toContain('renamed.csv is in the library already as first-approach.csv: skipped.');
    expect(await everything(library)).toEqual(before);
  });

  it('refuses what it cannot use with a sentence each, and keeps the rest', async () => {
    const own = join(newFolder(), 'library');
    const folder = join(newFolder(), 'logs');
    mkdirSync(folder);
    writeFileSync(join(folder, 'empty.csv'), '');
    cpSync(SAMPLE, join(folder, 'good.csv'));
    cpSync(join(SAMPLES, 'low-approach.csv'), join(folder, 'no-day.csv'));
    const said = await command(own, 'import', folder, ...ALL_FACILITIES);
    expect(said).toMatchObject({
      status: 0,
      answer: expect.stringContaining('1 log kept, 0 known already, 2 refused'),
    });
    expect(said.messages.filter((line) => line.startsWith('halfdot:'))).toEqual([
      expect.stringContaining('empty.csv'),
      expect.stringContaining('no-day.csv counts from its own start'),
    ]);
    const dated = await command(own, 'import', folder, ...ALL_FACILITIES, '--date', '2026-08-01');
    expect(dated.answer).toContain('1 log kept, 1 known already, 1 refused');
    expect((await command(own, 'import', SAMPLE, '--date', '2026-02-30')).messages[0]).toContain('is no day');
    expect((await command(own, 'import', join(folder, 'none.csv'))).status).toBe(2);
    expect((await command(own, 'import')).status).toBe(2);
    const fresh = join(newFolder(), 'library');
    expect((await command(fresh, 'import', SAMPLE)).messages[0]).toContain('holds no facility yet');
  });

  it('stops at a Ctrl-C between two logs, and goes on when it is run again', async () => {
    const own = join(newFolder(), 'library');
    const logs = manyLogs(6);
    const running = command(own, 'import', logs, '--facility', FACILITY);
    while (!existsSync(join(own, 'logs'))) await new Promise((resolve) => setTimeout(resolve, 1));
    process.emit('SIGINT');
    const said = await running;
    expect(said.status).toBe(2);
    expect(said.messages.at(-1)).toContain('Stopped; run the same again to go on');
    const { logs: kept } = await expectWhole(own);
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.length).toBeLessThan(6);
    await command(own, 'import', logs, '--facility', FACILITY);
    expect((await expectWhole(own)).logs).toHaveLength(6);
  });
});

describe('halfdot list', () => {
  it('lists students, lessons and approaches, of one student where asked', async () => {
    expect((await command(library, 'list')).answer).toMatch(/Rowan Teal\s+15\s+17\s+2026-07-18/);
    const lessons = JSON.parse(
      (await command(library, 'list', 'lessons', '--format', 'json')).answer,
    ) as unknown[];
    expect(lessons).toHaveLength(15);
    const csv = await command(library, 'list', 'approaches', '--format', 'csv', '--student', 'rowan teal');
    expect(csv.answer.trimEnd().split('\n')).toHaveLength(18);
    expect(csv.answer.split('\n')[0]).toMatch(/^date,startUtc,student,facility,/);
    const text = (await command(library, 'list', 'approaches')).answer;
    expect(text).toContain('Petrelholm ILS 07');
    expect(
      text
        .split('\n')
        .filter((line) => line.startsWith('    '))
        .every((line) => line.length <= 100),
    ).toBe(true);
  });

  it('says that there is no such list, student or library', async () => {
    expect((await command(library, 'list', 'planes')).messages[0]).toContain('no list of "planes"');
    expect((await command(library, 'list', '--student', 'Nobody')).messages[0]).toContain(
      'no student "Nobody"',
    );
    const none = join(newFolder(), 'none');
    expect((await command(none, 'list')).messages[0]).toContain('There is no library');
    expect(existsSync(none)).toBe(false);
  });
});

describe('backup, restore and export', () => {
  it('bring everything back, and keep what was there', async () => {
    const backup = join(newFolder(), 'backup');
    expect(await command(library, 'backup', backup)).toMatchObject({ status: 0 });
    const other = await libraryOf(manyLogs(1), 'Hazel Wren');
    const before = await everything(other);
    const said = await command(other, 'restore', backup);
    expect(said.answer).toContain('17 logs were restored');
    expect(await everything(other)).toEqual(await everything(library));
    expect(await command(other, 'check')).toMatchObject({ status: 0, messages: [] });
    expect(await everything(join(other, 'before-restore-1'))).toEqual(before);
    expect(await command(join(other, 'before-restore-1'), 'check')).toMatchObject({
      status: 0,
      messages: [],
    });
    const fresh = join(newFolder(), 'fresh');
    expect((await command(fresh, 'restore', backup)).answer).not.toContain('before');
    expect(await everything(fresh)).toEqual(await everything(library));
    expect((await command(library, 'backup', backup)).messages[0]).toContain('is there already');
  });

  it('an export holds the debriefs in the open, and another library takes it in once', async () => {
    const out = join(newFolder(), 'out');
    expect(await command(library, 'export', out)).toMatchObject({ status: 0 });
    const lines = readFileSync(join(out, 'library.jsonl'), 'utf8').trimEnd().split('\n');
    expect(JSON.parse(lines[0]!)).toEqual({ format: 'halfdot-library/1', version: MIGRATIONS.length });
    const documents = lines
      .slice(1)
      .map((line) => JSON.parse(line) as { table: string; row: { json: Debrief } });
    expect(documents.find(({ table }) => table === 'documents')!.row.json.format).toBe('halfdot-debrief/1');
    const other = join(newFolder(), 'other');
    expect(await command(other, 'import', '--from', out)).toMatchObject({ status: 0 });
    // Packed anew, a document may be other bytes of the same text.
    const unpacked = ({ documents, ...rest }: Record<string, unknown[]>) => ({
      ...rest,
      documents: (documents as { json_gz: Uint8Array }[]).map((row) => ({
        ...row,
        json_gz: gunzipSync(row.json_gz).toString(),
      })),
    });
    expect(unpacked(await everything(other))).toEqual(unpacked(await everything(library)));
    expect((await command(other, 'import', '--from', out)).answer).toContain('0 entries taken in');
    expect(await command(other, 'check')).toMatchObject({ status: 0, messages: [] });
  });

  it('taking in puts people of one name together, and leaves what is here as it is', async () => {
    const out = join(newFolder(), 'out');
    await command(library, 'export', out);
    const own = await libraryOf(SAMPLE);
    const [student] = (await everything(own))['people'] as { id: string }[];
    await command(own, 'import', '--from', out);
    const after = await everything(own);
    expect(after['people']).toHaveLength(1);
    expect(after['logs']).toHaveLength(17);
    expect(
      (after['approaches'] as { student_id: string }[]).every((row) => row.student_id === student!.id),
    ).toBe(true);
    expect(after['approaches']).toHaveLength(17);
    expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
  });

  it('an export that is spoilt is refused whole', async () => {
    const out = join(newFolder(), 'out');
    await command(library, 'export', out);
    const path = join(out, 'library.jsonl');
    const good = readFileSync(path, 'utf8');
    const spoils: [string, string, string][] = [
      ['halfdot-library/1', 'other/1', 'no exported library'],
      [`"version":${MIGRATIONS.length}`, `"version":${MIGRATIONS.length + 1}`, 'newer version'],
      ['"engineVersion":"0.1.0"', '"engineVersion":"0.1.1"', 'is no row of a library'],
      ['"role":"student"', '"role":"cook"', 'do not fit together'],
      ['"table":"people"', '"table":"sqlite_master"', 'is no row of a library'],
    ];
    for (const [what, instead, words] of spoils) {
      writeFileSync(path, good.replace(what, instead));
      const own = join(newFolder(), 'own');
      const said = await command(own, 'import', '--from', out);
      expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining(words)] });
      expect(Object.values(await everything(own)).flat()).toEqual([]);
      await expectWhole(own);
    }
  });
});

describe('halfdot recompute', () => {
  it('makes what another engine made anew, lists what changed, and does so once', async () => {
    const own = await libraryOf(SAMPLE);
    await opened(own, (open) => {
      const { id } = open.first(from.selectFrom('debriefs').select('id'))!;
      const now = readDocument(open, id);
      const [approach] = now.approaches;
      const older = {
        ...now,
        engineVersion: '0.0.9',
        approaches: [
          { ...approach!, grade: { ...approach!.grade!, level: 2 }, outcome: 'low-approach' as const },
        ],
      };
      open.write(() => keepDocument(open, id, older));
      const person_id = open.write(() => keepPerson(open, 'instructor', 'Juniper Crane'));
      sign(open, { debrief_id: id, person_id, act: 'countersigned' });
    });
    const said = await command(own, 'recompute');
    expect(said.answer.split('\n')).toEqual([
      'first-approach.csv at Petrelholm ILS 07: approach 1, outcome: low-approach before, landed now',
      'first-approach.csv at Petrelholm ILS 07: approach 1, level: 2 before, 4 now',
      '1 debrief made anew, 0 left as they were.',
      '',
    ]);
    expect((await command(own, 'recompute')).answer).toContain('0 debriefs made anew');
    await opened(own, (open) => {
      const { id } = open.first(from.selectFrom('debriefs').select('id'))!;
      expect(signaturesOf(open, id)).toMatchObject([{ isCurrent: false }]);
      expect(open.all(from.selectFrom('approaches').select('outcome'))).toEqual([{ outcome: 'landed' }]);
    });
  });
});

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
    // A copy that the program puts beside: it would hold the student too.
    const backup = join(newFolder(), 'backup');
    await command(own, 'backup', backup);
    await command(own, 'restore', backup);
    const words = ['Zzyzxwren', 'Xylograph', 'log-01.csv'];
    expect(words.every((word) => filesWith(own, word).length > 0)).toBe(true);
    const would = await command(own, 'delete', '--student', 'zzyzxwren quillfeather');
    expect(would.answer).toContain(
      'Would delete Zzyzxwren Quillfeather with 1 lesson, 2 logs and 2 approaches',
    );
    expect(words.every((word) => filesWith(own, word).length > 0)).toBe(true);
    const said = await command(own, 'delete', '--student', 'zzyzxwren quillfeather', '--confirm', 'yes');
    expect(said).toMatchObject({ status: 0, answer: expect.stringContaining('Deleted') });
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
        status: 0,
        stderr: expect.stringContaining('Another program is reading'),
      });
      reader.exec('COMMIT');
    });
    await command(own, 'check');
    expect(filesWith(own, 'Zzyzxwren')).toEqual([]);
  });
});

/** The files below a folder that hold these bytes, unpacked or packed. */
function filesWith(folder: string, word: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .filter((name) => {
      const bytes = readFileSync(join(folder, name));
      return bytes.includes(word) || (name.endsWith('.gz') && gunzipSync(bytes).includes(word));
    });
}
