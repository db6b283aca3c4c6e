import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CallName, Input, Output } from '../../../electron/bridge/calls.ts';
import { gateTo, type Answer } from '../../../electron/bridge/gate.ts';
import { keepDocument, readDocument } from '../../../electron/library/documents.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { GivenFiles } from '../../../electron/services/given-files.ts';
import { LibraryHost } from '../../../electron/services/library-host.ts';
import { Samples } from '../../../electron/services/samples.ts';
import { servicesOf } from '../../../electron/services/services.ts';
import { SAMPLES } from '../library/some-library.ts';

let folder: string;
let library: LibraryHost;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-host-'));
  library = new LibraryHost(join(folder, 'library'));
});
afterEach(async () => {
  await library.close();
  rmSync(folder, { recursive: true, force: true });
});

/** As the page asks, through the gate that both hosts have. */
function asked<N extends CallName>(name: N, input: Input<N>): Promise<Answer> {
  const services = servicesOf('browser', {
    samples: new Samples(SAMPLES),
    given: new GivenFiles(),
    userFolder: folder,
    library,
  });
  return gateTo(services)(name, input);
}

async function call<N extends CallName>(name: N, input: Input<N>): Promise<Output<N>> {
  const answer = await asked(name, input);
  expect(answer).toMatchObject({ ok: true });
  return (answer as { value: Output<N> }).value;
}

const sample = (name: string) => readFileSync(join(SAMPLES, name));

function toKeep(name: string, change: Partial<Input<'keepInLibrary'>> = {}): Input<'keepInLibrary'> {
  return {
    name,
    folders: [],
    base64: sample(name).toString('base64'),
    facilities: [sample('petrelholm-ils-07.json').toString()],
    asked: {
      standard: { kind: 'shipped', id: 'instrument-rating' },
      stated: {},
      settings: {},
      heights: null,
      antennaHeightFt: null,
    },
    student: { by: 'name', name: 'Rowan Teal' },
    date: null,
    isStatedAnew: false,
    ...change,
  };
}

async function kept(name = 'first-approach.csv', change: Partial<Input<'keepInLibrary'>> = {}) {
  const answer = await call('keepInLibrary', toKeep(name, change));
  if (answer.became === 'refused') throw new Error(answer.why);
  return answer;
}

const EVERY = {
  student: null,
  lessonId: null,
  facility: null,
  fromDate: null,
  toDate: null,
  levelAtMost: null,
  words: null,
};
const list = async (filter: Partial<typeof EVERY> = {}) =>
  call('libraryFlights', {
    filter: { ...EVERY, ...filter },
    order: { by: 'flown', isDown: true },
    from: 0,
    count: 100,
  });

describe('a library that was not begun', () => {
  it('is empty, and nothing is made by looking at it', async () => {
    expect(await call('library', {})).toMatchObject({ isBegun: false, students: [], approaches: 0 });
    expect(await list()).toEqual({ total: 0, rows: [] });
    expect(await call('undoMove', {})).toEqual({ move: null });
    expect(existsSync(library.folder)).toBe(false);
  });

  it('refuses in a sentence what needs something in it', async () => {
    expect(await asked('lesson', { id: 'x' })).toMatchObject({ code: 'gone' });
    expect(await call('lessons', { studentId: 'x' })).toEqual([]);
    expect(await asked('agreeGoal', { studentId: 'x', lessonId: null, text: 'Calm' })).toEqual({
      ok: false,
      code: 'unusable',
      message: 'Nothing was kept in the library yet.',
    });
    expect(existsSync(library.folder)).toBe(false);
  });
});

describe('keeping a log', () => {
  it('debriefs it, and lists it as that student’s on the day of the log', async () => {
    const answer = await kept();
    expect(answer).toMatchObject({
      became: 'kept',
      approaches: 1,
      student: 'Rowan Teal',
      date: '2026-03-14',
    });
    expect((await list()).rows).toMatchObject([
      { student: 'Rowan Teal', facility: 'Petrelholm ILS 07', fileName: 'first-approach.csv' },
    ]);
    expect(await call('library', {})).toMatchObject({
      isBegun: true,
      students: [{ name: 'Rowan Teal', lessons: 1, approaches: 1 }],
    });
  });

  it('passes over what is there already', async () => {
    await kept();
    expect(await kept()).toMatchObject({ became: 'known', student: 'Rowan Teal' });
    expect((await list()).total).toBe(1);
  });

  it('gives it to whom its folder names, also to one who has to be added', async () => {
    const folders = ['Hazel Wren', '2026-05-10'];
    const by = { by: 'folder', addsStudents: true } as const;
    expect(await kept('first-approach.csv', { folders, student: by })).toMatchObject({
      student: 'Hazel Wren',
      date: '2026-05-10',
    });
    const strict = { by: 'folder', addsStudents: false } as const;
    const second = { folders: ['Linden Siskin'], student: strict };
    expect(await kept('tidy-landing.csv', second)).toMatchObject({ student: null });
    const third = { folders: ['wren, hazel'], student: strict };
    expect(await kept('went-around.csv', third)).toMatchObject({ student: 'Hazel Wren' });
  });

  it('answers of a file that is no log with the sentence, and keeps nothing', async () => {
    const base64 = Buffer.from('no log at all').toString('base64');
    const answer = await call('keepInLibrary', toKeep('first-approach.csv', { base64 }));
    expect(answer).toMatchObject({ became: 'refused' });
    expect((await list()).total).toBe(0);
  });

  it('makes a debrief anew by what is stated later; what was signed stays beside it', async () => {
    const { debriefIds, lessonId } = await kept();
    await call('signDebrief', { debriefId: debriefIds[0]!, name: 'Juniper Crane', act: 'graded' });
    const { asked: before } = toKeep('first-approach.csv');
    const stated = { targetAirspeedKt: 90, visualReferenceAtMinimums: 'seen' as const };
    await kept('first-approach.csv', { asked: { ...before, stated }, isStatedAnew: true });
    const read = await call('readDebrief', { debriefId: debriefIds[0]! });
    expect(read.stated).toMatchObject(stated);
    expect(Buffer.from(read.base64, 'base64')).toEqual(sample('first-approach.csv'));
    const { signatures } = await call('lesson', { id: lessonId });
    expect(signatures).toHaveLength(1);
    expect(signatures[0]!.signed).not.toBe(signatures[0]!.current);
    expect((await list()).rows[0]!.level).not.toBeNull();
  });
});

describe('a lesson', () => {
  it('holds what is said of it, and says who said it', async () => {
    const { lessonId, debriefIds } = await kept();
    const { lesson } = await call('lesson', { id: lessonId });
    const { student_id: studentId } = lesson;
    // Each says one thing, and undoes no other.
    await call('changeLesson', { id: lessonId, change: { instructor: 'Juniper Crane' } });
    await call('changeLesson', { id: lessonId, change: { aircraft: 'QQ-XYZ' } });
    await call('changeLesson', { id: lessonId, change: { objective: 'Glidepath' } });
    await call('addNote', {
      lessonId,
      debriefId: null,
      aboutUtc: null,
      author: 'Juniper Crane',
      text: ' Ahead of it. ',
    });
    await call('giveEstimate', { debriefId: debriefIds[0]!, aboutUtc: null, level: 4, words: '' });
    await call('agreeGoal', { studentId: studentId!, lessonId, text: 'Speed' });
    const page = await call('lesson', { id: lessonId });
    expect(page.lesson).toMatchObject({
      instructor: 'Juniper Crane',
      aircraft: 'QQ-XYZ',
      objective: 'Glidepath',
    });
    expect(page.notes).toMatchObject([{ text: 'Ahead of it.', author: 'Juniper Crane' }]);
    expect(page.estimates).toMatchObject([{ level: 4, words: null }]);
    expect(page.goals).toMatchObject([{ text: 'Speed', reached_utc: null }]);
    const goal = page.goals[0]!.id;
    await call('reachGoal', { id: goal, isReached: true });
    expect((await call('lesson', { id: lessonId })).goals[0]!.reached_utc).not.toBeNull();
    await call('reachGoal', { id: goal, isReached: false });
    expect((await call('lesson', { id: lessonId })).goals[0]!.reached_utc).toBeNull();
    expect((await call('library', {})).instructors).toEqual(['Juniper Crane']);
  });

  it('is refused where it says nothing', async () => {
    const { lessonId, debriefIds } = await kept();
    const note = { lessonId, debriefId: null, aboutUtc: null, author: null };
    expect(await asked('addNote', { ...note, text: '   ' })).toMatchObject({ ok: false, code: 'bad-value' });
    expect(
      await asked('giveEstimate', { debriefId: debriefIds[0]!, aboutUtc: null, level: null, words: '' }),
    ).toMatchObject({ ok: false, code: 'unusable' });
  });
});

describe('who flew', () => {
  it('is corrected for many logs at once, and undone', async () => {
    await kept('first-approach.csv');
    await kept('tidy-landing.csv');
    const sha256s = await call('libraryLogs', { filter: EVERY });
    const { move } = await call('moveLogs', { sha256s, student: 'Hazel Wren', date: null });
    expect(move).toMatchObject({ logs: 2, student: 'Hazel Wren' });
    expect((await list()).rows.map(({ student }) => student)).toEqual(['Hazel Wren', 'Hazel Wren']);
    expect((await call('library', {})).lastMove).toEqual(move);
    expect((await call('undoMove', {})).move).toMatchObject({ logs: 2 });
    expect((await list()).rows.map(({ student }) => student)).toEqual(['Rowan Teal', 'Rowan Teal']);
    expect((await call('library', {})).lastMove).toBeNull();
  });

  it('is said by a roster, of which bad lines are told', async () => {
    const text = 'name,role\nRowan Teal,student\nJuniper Crane,instructor\nAsh Heron,cook\n';
    const read = await call('readRoster', { text });
    expect(read).toMatchObject({ added: ['Rowan Teal', 'Juniper Crane'], known: 0 });
    expect(read.refused.join(' ')).toContain('"cook" on line 4');
    expect(await call('readRoster', { text })).toMatchObject({ added: [], known: 2 });
  });
});

describe('the whole library', () => {
  it('is backed up beside itself, and restored by that name alone', async () => {
    await kept();
    const { folder: made } = await call('backUpLibrary', {});
    await kept('tidy-landing.csv');
    const [backup] = await call('backups', {});
    expect(made.endsWith(backup!.name)).toBe(true);
    const { words } = await call('restoreLibrary', { name: backup!.name });
    expect(words).toContain('1 log brought back');
    expect((await list()).total).toBe(1);
    for (const name of ['../library', '..', '', '/etc', `${backup!.name}/../${backup!.name}`])
      expect(await asked('restoreLibrary', { name })).toMatchObject({ ok: false, code: 'unusable' });
    expect((await list()).total).toBe(1);
  });

  it('makes what asks for it wait while a backup is restored, and does one long work at a time', async () => {
    await kept();
    await call('backUpLibrary', {});
    const [backup] = await call('backups', {});
    const [restored, during, second] = await Promise.all([
      asked('restoreLibrary', { name: backup!.name }),
      list(),
      asked('backUpLibrary', {}),
    ]);
    expect(restored).toMatchObject({ ok: true });
    expect(during.total).toBe(1);
    expect(second).toMatchObject({
      ok: false,
      code: 'unusable',
      message: expect.stringContaining('try again'),
    });
    expect(await call('libraryWork', {})).toBeNull();
  });

  it('makes the debriefs of another version anew, says what reads otherwise, and keeps what was signed', async () => {
    const { debriefIds, lessonId } = await kept('tidy-landing.csv');
    await call('signDebrief', { debriefId: debriefIds[0]!, name: 'Juniper Crane', act: 'graded' });
    expect(await call('library', {})).toMatchObject({ ofOtherVersions: 0 });
    await library.close();
    const own = await openLibrary(library.folder, 'existing');
    // As an older engine may have had it: another ending.
    const document = readDocument(own, debriefIds[0]!);
    const [approach] = document.approaches;
    own.write(() =>
      keepDocument(own, debriefIds[0]!, {
        ...document,
        engineVersion: '0.0.1',
        approaches: [{ ...approach!, outcome: 'low-approach' }],
      }),
    );
    own.close();
    expect(await call('library', {})).toMatchObject({ ofOtherVersions: 1 });
    const made = await call('recomputeLibrary', {});
    expect(made).toMatchObject({ madeAnew: 1, left: [], isStopped: false });
    expect(made.changed).toEqual([
      {
        name: 'tidy-landing.csv at Petrelholm ILS 07',
        lines: ['approach 1, outcome: low-approach before, landed now'],
      },
    ]);
    expect(await call('library', {})).toMatchObject({ ofOtherVersions: 0 });
    expect((await call('lesson', { id: lessonId })).signatures).toHaveLength(1);
    expect((await list()).rows[0]!.outcome).toBe('landed');
  });

  it('lists apart the logs in which no approach was found', async () => {
    await kept('first-approach.csv', {
      facilities: [sample('choughfell-ils-32.json').toString()],
    });
    expect((await list()).total).toBe(0);
    expect(await call('logsWithoutApproach', {})).toMatchObject([
      { fileName: 'first-approach.csv', student: 'Rowan Teal' },
    ]);
  });

  it('deletes a student, and no other', async () => {
    await kept('first-approach.csv');
    await kept('tidy-landing.csv', { student: { by: 'name', name: 'Hazel Wren' } });
    const { students } = await call('library', {});
    const { id } = students.find(({ name }) => name === 'Rowan Teal')!;
    expect(await call('holdings', { studentId: id })).toMatchObject({ lessons: 1, logs: 1, approaches: 1 });
    expect(await call('deleteStudent', { studentId: id })).toEqual({ left: [] });
    expect((await list()).rows.map(({ student }) => student)).toEqual(['Hazel Wren']);
    expect(readdirSync(join(library.folder, 'logs'))).toHaveLength(1);
    expect(await asked('deleteStudent', { studentId: id })).toMatchObject({ ok: false, code: 'unusable' });
  });

  it('that is damaged is told in a sentence, and opened once it was brought back', async () => {
    await kept();
    await library.close();
    const file = join(library.folder, 'library.sqlite');
    const whole = readFileSync(file);
    writeFileSync(file, 'spoilt');
    expect(await asked('library', {})).toMatchObject({
      ok: false,
      code: 'unusable',
      message: expect.stringContaining('is damaged'),
    });
    writeFileSync(file, whole);
    expect((await list()).total).toBe(1);
  });

  it('of a newer version is left alone, and told', async () => {
    mkdirSync(library.folder, { recursive: true });
    const own = await openLibrary(library.folder, 'create');
    own.execute('PRAGMA user_version = 99');
    own.close();
    expect(await asked('library', {})).toMatchObject({
      code: 'unusable',
      message: expect.stringContaining('newer version'),
    });
  });
});
