import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDocument } from '../../../electron/library/documents.ts';
import { from } from '../../../electron/library/library.ts';
import { keepPerson } from '../../../electron/library/people.ts';
import { sign, signaturesOf } from '../../../electron/library/record.ts';
import { runCommand } from '../cli/run-command.ts';
import {
  ALL_FACILITIES,
  command,
  everything,
  expectWhole,
  keepInstead,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  SAMPLE,
  SAMPLES,
} from './some-library.ts';

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

  it('puts a log that is here without a debrief into the lesson that is asked for', async () => {
    const own = join(newFolder(), 'library');
    const elsewhere = ['--facility', join(SAMPLES, 'choughfell-ils-32.json')];
    await command(own, 'import', SAMPLE, ...elsewhere);
    const lessons = () =>
      opened(own, (open) =>
        open.all(
          from
            .selectFrom('lessons')
            .leftJoin('people', 'people.id', 'lessons.student_id')
            .select(['people.name', 'lessons.date']),
        ),
      );
    expect(await lessons()).toEqual([{ name: null, date: '2026-03-14' }]);
    const asked = ['--facility', FACILITY, '--student', 'Rowan Teal', '--date', '2026-05-01'];
    const said = await command(own, 'import', SAMPLE, ...asked);
    expect(said).toMatchObject({ status: 0, answer: expect.stringContaining('1 log kept'), messages: [] });
    expect(await lessons()).toEqual([{ name: 'Rowan Teal', date: '2026-05-01' }]);
    await expectWhole(own);
    const listed = (await command(own, 'list', 'approaches', '--student', 'Rowan Teal')).answer;
    expect(listed).toContain('2026-05-01');
  });

  it('leaves a log with the student who has it, and says so', async () => {
    const own = join(newFolder(), 'library');
    const elsewhere = ['--facility', join(SAMPLES, 'choughfell-ils-32.json')];
    await command(own, 'import', SAMPLE, ...elsewhere, '--student', 'Rowan Teal');
    const said = await command(own, 'import', SAMPLE, '--facility', FACILITY, '--student', 'Hazel Wren');
    expect(said.messages).toEqual([
      'first-approach.csv was in the library already, and stays in the lesson of Rowan Teal on 2026-03-14.',
    ]);
    expect((await command(own, 'list')).answer).not.toContain('Hazel');
    expect((await command(own, 'list')).answer).toMatch(/Rowan Teal\s+1\s+1\s+2026-03-14/);
  });

  it('stops at a Ctrl-C between two parts that are kept together, and goes on when it is run again', async () => {
    const own = join(newFolder(), 'library');
    const logs = manyLogs(20);
    const running = command(own, 'import', logs, '--facility', FACILITY);
    while (!existsSync(join(own, 'logs'))) await new Promise((resolve) => setTimeout(resolve, 1));
    process.emit('SIGINT');
    const said = await running;
    expect(said.status).toBe(2);
    expect(said.messages.at(-1)).toContain('Stopped; run the same again to go on');
    const { logs: kept } = await expectWhole(own);
    // What it has told of, and nothing that it has not.
    expect([...said.answer.matchAll(/^(log-\d+\.csv): kept/gm)].map(([, name]) => name)).toEqual(kept);
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.length).toBeLessThan(20);
    await command(own, 'import', logs, '--facility', FACILITY);
    expect((await expectWhole(own)).logs).toHaveLength(20);
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

describe('backup and restore', () => {
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
      keepInstead(open, id, older);
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
