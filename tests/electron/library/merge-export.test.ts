import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { ENGINE_VERSION } from '../../../core/debrief/engine-version.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { from } from '../../../electron/library/library.ts';
import { MIGRATIONS } from '../../../electron/library/migrations.ts';
import { addNote } from '../../../electron/library/record.ts';
import {
  ALL_FACILITIES,
  command,
  everything,
  expectWhole,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  SAMPLE,
  SAMPLES,
} from './some-library.ts';

/** Every approach and note in the lesson of its log, with that one's student and day. */
function expectListedAsKept(folder: string): Promise<void> {
  return opened(folder, (library) => {
    const kept = from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id');
    const listed = library.all(
      kept
        .innerJoin('approaches', 'approaches.debrief_id', 'debriefs.id')
        .select(['approaches.lesson_id', 'approaches.student_id', 'approaches.date'])
        .select(['lessons.id', 'lessons.student_id as whose', 'lessons.date as day']),
    );
    expect(listed.length).toBeGreaterThan(0);
    for (const { lesson_id, student_id, date, id, whose, day } of listed)
      expect({ lesson_id, student_id, date }).toEqual({ lesson_id: id, student_id: whose, date: day });
    const notes = library.all(
      kept
        .innerJoin('notes', 'notes.debrief_id', 'debriefs.id')
        .select(['notes.lesson_id', 'logs.lesson_id as of']),
    );
    for (const note of notes) expect(note.lesson_id).toBe(note.of);
  });
}

let library = '';
beforeAll(async () => {
  library = join(newFolder(), 'library');
  const said = await command(library, 'import', SAMPLES, ...ALL_FACILITIES, '--student', 'Rowan Teal');
  expect(said.status).toBe(0);
});

describe('what one library exports and another takes in', () => {
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

  it('taking in finds people in any spelling, and puts no two of the other library together', async () => {
    const other = await libraryOf(manyLogs(1), 'Lark, Rowan');
    const theirs = await libraryOf(SAMPLE, 'rowan lark');
    await opened(theirs, (open) =>
      open.write(() => {
        for (const name of ['Núria Teal', 'Nuria Teal'])
          open.run(
            from
              .insertInto('people')
              .values({ id: `id of ${name}`, role: 'student', name, added_utc: '2026-05-01T10:00:00Z' }),
          );
      }),
    );
    const out = join(newFolder(), 'out');
    await command(theirs, 'export', out);
    for (const _ of ['once', 'again'])
      expect(await command(other, 'import', '--from', out)).toMatchObject({ status: 0 });
    const { people } = await everything(other);
    expect(people!.map((row) => (row as { name: string }).name).sort()).toEqual([
      'Lark, Rowan',
      'Nuria Teal',
      'Núria Teal',
    ]);
  });

  it('taking in gives no log to another student because one of the same lesson is here as theirs', async () => {
    const logs = manyLogs(2);
    const theirs = await libraryOf(logs, 'Hazel Wren');
    await opened(theirs, (open) => {
      const { id } = open.first(from.selectFrom('lessons').select('id'))!;
      addNote(open, { lesson_id: id, debrief_id: null, about_utc: null, author_id: null, text: 'of Hazel' });
    });
    const out = join(newFolder(), 'out');
    await command(theirs, 'export', out);
    const own = await libraryOf(join(logs, 'log-01.csv'), 'Rowan Teal');
    await command(own, 'import', '--from', out);
    const whose = (folder: string) =>
      opened(folder, (open) =>
        open.all(
          from
            .selectFrom('logs')
            .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
            .innerJoin('people', 'people.id', 'lessons.student_id')
            .select(['logs.file_name', 'people.name'])
            .orderBy('logs.file_name'),
        ),
      );
    expect(await whose(own)).toEqual([
      { file_name: 'log-01.csv', name: 'Rowan Teal' },
      { file_name: 'log-02.csv', name: 'Hazel Wren' },
    ]);
    await expectListedAsKept(own);
    expect((await command(own, 'list', 'lessons')).answer.match(/2026-03-14/g)).toHaveLength(2);
    expect((await command(own, 'import', '--from', out)).answer).toContain('0 entries taken in');
    expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
    await command(own, 'delete', '--student', 'Rowan Teal', '--confirm', 'yes');
    expect(await expectWhole(own)).toEqual({ logs: ['log-02.csv'], notes: ['of Hazel'] });
  });

  it("what comes for a log that is here follows the log's lesson, also from a lesson that comes as it is", async () => {
    const logs = manyLogs(2);
    const theirs = join(newFolder(), 'theirs');
    const words = ['--facility', FACILITY, '--student', 'Hazel Wren', '--standard', 'light-aircraft'];
    await command(theirs, 'import', logs, ...words);
    await opened(theirs, (open) => {
      const { id, lesson_id } = open.first(
        from
          .selectFrom('debriefs')
          .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
          .select(['debriefs.id', 'logs.lesson_id'])
          .where('logs.file_name', '=', 'log-01.csv'),
      )!;
      addNote(open, { lesson_id, debrief_id: id, about_utc: null, author_id: null, text: 'of log-01' });
    });
    const out = join(newFolder(), 'out');
    await command(theirs, 'export', out);
    const own = await libraryOf(join(logs, 'log-01.csv'), 'Rowan Teal');
    await command(own, 'import', '--from', out);
    await expectListedAsKept(own);
    await command(own, 'delete', '--student', 'Hazel Wren', '--confirm', 'yes');
    await opened(own, (open) => {
      expect(open.all(from.selectFrom('notes').select('text'))).toEqual([{ text: 'of log-01' }]);
      expect(open.all(from.selectFrom('approaches').select('standard_id').orderBy('standard_id'))).toEqual([
        { standard_id: 'instrument-rating' },
        { standard_id: 'light-aircraft' },
      ]);
    });
  });

  it('taking in puts one day of one student together, where a log of it is here', async () => {
    const logs = manyLogs(2);
    const out = join(newFolder(), 'out');
    await command(await libraryOf(logs, 'Hazel Wren'), 'export', out);
    const own = await libraryOf(join(logs, 'log-01.csv'), 'hazel wren');
    await command(own, 'import', '--from', out);
    await expectListedAsKept(own);
    await opened(own, (open) => {
      expect(open.all(from.selectFrom('lessons').select('id'))).toHaveLength(1);
      expect(open.all(from.selectFrom('logs').select('file_name'))).toHaveLength(2);
    });
  });

  it('nothing that is said of logs is taken beside it, for it would hold for none', async () => {
    const out = join(newFolder(), 'out');
    await command(library, 'export', out);
    const own = join(newFolder(), 'own');
    const options = ['--student', 'Hazel Wren', '--date', '2026-05-01'];
    expect(await command(own, 'import', '--from', out, ...options)).toMatchObject({
      status: 2,
      messages: [expect.stringContaining('no --student or --date beside it')],
    });
    expect(existsSync(own)).toBe(false);
  });

  it('an export that is spoilt is refused whole', async () => {
    const out = join(newFolder(), 'out');
    await command(library, 'export', out);
    const path = join(out, 'library.jsonl');
    const good = readFileSync(path, 'utf8');
    const spoils: [string, string, string][] = [
      ['halfdot-library/1', 'other/1', 'no exported library'],
      [`"version":${MIGRATIONS.length}`, `"version":${MIGRATIONS.length + 1}`, 'newer version'],
      [`"engineVersion":"${ENGINE_VERSION}"`, '"engineVersion":"0.0.1"', 'is no row of a library'],
      ['"role":"student"', '"role":"cook"', 'do not fit together'],
      ['"table":"logs","row":{"sha256":"', '"table":"logs","row":{"sha256":"../', 'what is no hash'],
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
