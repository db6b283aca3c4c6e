import { existsSync } from 'node:fs';
import { ownCopy } from '../../../core/standard/own-copy.ts';
import { standardById } from '../../../core/standard/standards.ts';
import { EVERY_FLIGHT } from '../../../electron/bridge/every-flight.ts';
import { describe, expect, it } from 'vitest';
import { asked, call, documentOf, kept, library, list, sample, toKeep } from './library-over-gate.ts';

describe('a library that was not begun', () => {
  it('is empty, and nothing is made by looking at it', async () => {
    expect(await call('library', {})).toMatchObject({ isBegun: false, students: [], approaches: 0 });
    expect(await list()).toEqual({ total: 0, rows: [] });
    expect(await asked('undoMove', { id: 'x' })).toMatchObject({ value: { move: null } });
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

  it('adds nobody by the folder that was chosen, and somebody once whom two logs bring together', async () => {
    const by = { by: 'folder', addsStudents: true } as const;
    const stray = { folders: [], chosenFolder: 'Spring Break', student: by };
    expect(await kept('first-approach.csv', stray)).toMatchObject({ student: null });
    const brought = [
      kept('tidy-landing.csv', { folders: ['Hazel Wren'], student: by }),
      kept('went-around.csv', { folders: ['Wren, Hazel'], student: by }),
    ];
    expect(await Promise.all(brought)).toMatchObject([{ student: 'Hazel Wren' }, { student: 'Hazel Wren' }]);
    expect((await call('library', {})).students).toMatchObject([{ name: 'Hazel Wren' }]);
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

  it('says who came onto the roster with it, and why it is nobody’s', async () => {
    const adding = { folders: ['Hazel Wren'], student: { by: 'folder' as const, addsStudents: true } };
    expect(await kept('first-approach.csv', adding)).toMatchObject({
      added: 'Hazel Wren',
      nobodyBecause: null,
    });
    expect(await kept('tidy-landing.csv', adding)).toMatchObject({ student: 'Hazel Wren', added: null });
    const strict = { folders: ['Linden Siskin'], student: { by: 'folder' as const, addsStudents: false } };
    expect(await kept('went-around.csv', strict)).toMatchObject({
      student: null,
      added: null,
      nobodyBecause: '"Linden Siskin" is not on the roster (a folder is named so)',
    });
  });

  it('says what was assumed that its verdict or its date stands on', async () => {
    const text = sample('first-approach.csv').toString();
    const base64 = Buffer.from(text.replaceAll(/ \((ft|ft MSL|kt|ft\/min)\)/g, '')).toString('base64');
    expect((await kept()).warnings).toEqual([]);
    const { warnings } = await kept('first-approach.csv', { base64 });
    expect(warnings.join('\n')).toMatch(/"GNSS Altitude" .* names no unit: taken as ft\. Name the unit/);
  });

  it('answers of a file that is no log with the sentence, and keeps nothing', async () => {
    const base64 = Buffer.from('no log at all').toString('base64');
    const answer = await call('keepInLibrary', toKeep('first-approach.csv', { base64 }));
    expect(answer).toMatchObject({ became: 'refused' });
    expect((await list()).total).toBe(0);
  });

  it('makes a debrief anew by what is stated later; what was signed stays beside it', async () => {
    const { debriefId, lessonId } = await kept();
    await call('signDebrief', {
      debriefId: debriefId!,
      document: await documentOf(),
      name: 'Juniper Crane',
      act: 'graded',
    });
    const { asked: before } = toKeep('first-approach.csv');
    const stated = { targetAirspeedKt: 90, visualReferenceAtMinimums: 'seen' as const };
    await kept('first-approach.csv', { asked: { ...before, stated }, how: 'anew' });
    const read = await call('readDebrief', { debriefId: debriefId! });
    expect(read.stated).toMatchObject(stated);
    expect(Buffer.from(read.base64, 'base64')).toEqual(sample('first-approach.csv'));
    const { signatures } = await call('lesson', { id: lessonId });
    expect(signatures).toHaveLength(1);
    expect(signatures[0]!.signed).not.toBe(signatures[0]!.current);
    expect((await list()).rows[0]!.level).not.toBeNull();
  });
});

describe('a debrief by a standard of the user’s own that was changed since', () => {
  const own = (limit: number) =>
    ownCopy(standardById('instrument-rating')!, []).replaceAll('0.75', `${limit}`);
  const { asked: before } = toKeep('first-approach.csv');
  const by = (standard: typeof before.standard, stated = {}) => ({
    asked: { ...before, standard, stated },
    how: 'anew' as const,
  });

  it('is made anew by the standard as it is kept', async () => {
    const { debriefId } = await kept('first-approach.csv', by({ kind: 'own', text: own(0.5) }));
    const { standard } = await call('readDebrief', { debriefId: debriefId! });
    const stated = { targetAirspeedKt: 90 };
    const again = await kept('first-approach.csv', by({ kind: 'kept', text: standard }, stated));
    expect(again.debriefId).toBe(debriefId);
    const read = await call('readDebrief', { debriefId: debriefId! });
    expect([read.standard, read.standardId]).toEqual([standard, 'own-instrument-rating']);
    expect(read.stated).toMatchObject(stated);
  });

  it('is made by no other that is only called kept, and this is said', async () => {
    const { debriefId } = await kept('first-approach.csv', by({ kind: 'own', text: own(0.5) }));
    const { standard } = await call('readDebrief', { debriefId: debriefId! });
    await kept('first-approach.csv', by({ kind: 'own', text: own(0.25) }));
    for (const text of [standard, '{}', 'no JSON']) {
      const input = toKeep('first-approach.csv', by({ kind: 'kept', text }));
      expect(await asked('keepInLibrary', input)).toEqual({
        ok: false,
        code: 'unusable',
        message:
          'The standard by which this was kept is not in the library any more: choose another for it first.',
      });
    }
  });
});

describe('a lesson', () => {
  it('holds what is said of it, and says who said it', async () => {
    const { lessonId, debriefId } = await kept();
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
    await call('giveEstimate', { debriefId: debriefId!, aboutUtc: null, level: 4, words: '' });
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
    const { lessonId, debriefId } = await kept();
    const note = { lessonId, debriefId: null, aboutUtc: null, author: null };
    expect(await asked('addNote', { ...note, text: '   ' })).toMatchObject({ ok: false, code: 'bad-value' });
    expect(
      await asked('giveEstimate', { debriefId: debriefId!, aboutUtc: null, level: null, words: '' }),
    ).toMatchObject({ ok: false, code: 'unusable' });
  });
});

describe('a log that is in the library already', () => {
  it('is left as it was stated, whoever is named for it, until it is to be made anew', async () => {
    const { asked: before } = toKeep('first-approach.csv');
    const stated = { targetAirspeedKt: 90, visualReferenceAtMinimums: 'seen' as const };
    const first = await kept('first-approach.csv', { asked: { ...before, stated }, how: 'keep' });
    const again = await kept('first-approach.csv', {
      how: 'keep',
      student: { by: 'name', name: 'Hazel Wren' },
    });
    expect(again).toMatchObject({ became: 'known', student: 'Rowan Teal', debriefId: first.debriefId });
    expect((await call('readDebrief', { debriefId: first.debriefId! })).stated).toMatchObject(stated);
    const standard = { kind: 'shipped', id: 'skill-test' } as const;
    const second = await kept('first-approach.csv', { asked: { ...before, standard }, how: 'keep' });
    expect(second).toMatchObject({ became: 'kept', student: 'Rowan Teal' });
    expect(second.debriefId).not.toBe(first.debriefId);
    const sha256 = (await list()).rows[0]!.sha256;
    expect(await call('whereKept', { sha256s: [sha256, 'a'.repeat(64)] })).toMatchObject([
      { sha256, student: 'Rowan Teal', date: '2026-03-14' },
    ]);
  });

  it('is not signed by who saw another debrief of it', async () => {
    const { debriefId } = await kept();
    const document = await documentOf();
    const { asked: before } = toKeep('first-approach.csv');
    await kept('first-approach.csv', { asked: { ...before, stated: { targetAirspeedKt: 60 } }, how: 'anew' });
    const signing = { debriefId: debriefId!, name: 'Juniper Crane', act: 'graded' as const };
    expect(await asked('signDebrief', { ...signing, document })).toMatchObject({
      code: 'unusable',
      message: expect.stringContaining('made anew meanwhile'),
    });
    expect(await asked('signDebrief', { ...signing, document: await documentOf() })).toMatchObject({
      ok: true,
    });
  });

  it('is listed by its student’s name, and with nobody where it is nobody’s', async () => {
    const { lessonId } = await kept();
    const [row] = (await list()).rows;
    const studentId = (await call('library', {})).students[0]!.id;
    const listed = { id: lessonId, date: row!.date, logs: 1, approaches: 1 };
    expect(await call('lessons', { studentId })).toEqual([listed]);
    expect(await call('lessons', { studentId: null })).toEqual([]);
    await call('moveLogs', { sha256s: [row!.sha256], student: null, date: null });
    expect(await call('lessons', { studentId })).toEqual([]);
    expect(await call('lessons', { studentId: null })).toMatchObject([{ logs: 1, approaches: 1 }]);
  });

  it('of which something has gone is told so in a sentence, and nobody is added for it', async () => {
    await kept();
    const answers = await Promise.all([
      asked('addNote', { lessonId: 'x', debriefId: null, aboutUtc: null, author: 'Ash Heron', text: 'Well' }),
      asked('changeLesson', { id: 'x', change: { instructor: 'Ash Heron' } }),
      asked('giveEstimate', { debriefId: 'x', aboutUtc: null, level: 3, words: null }),
      asked('agreeGoal', { studentId: 'x', lessonId: null, text: 'Calm' }),
      asked('reachGoal', { id: 'x', isReached: true }),
      asked('signDebrief', { debriefId: 'x', document: 'a'.repeat(64), name: 'Ash Heron', act: 'graded' }),
    ]);
    for (const answer of answers)
      expect(answer).toMatchObject({
        code: 'gone',
        message: expect.stringMatching(/^This .* is not in the library any more\.$/),
      });
    expect((await call('library', {})).instructors).toEqual([]);
  });
});

describe('who flew', () => {
  it('is corrected for many logs at once, and undone', async () => {
    await kept('first-approach.csv');
    await kept('tidy-landing.csv');
    const sha256s = await call('libraryLogs', { filter: EVERY_FLIGHT });
    const { move } = await call('moveLogs', { sha256s, student: 'Hazel Wren', date: null });
    expect(move).toMatchObject({ logs: 2, student: 'Hazel Wren' });
    expect((await list()).rows.map(({ student }) => student)).toEqual(['Hazel Wren', 'Hazel Wren']);
    expect((await call('library', {})).lastMove).toEqual(move);
    expect(await asked('undoMove', { id: 'another' })).toMatchObject({ ok: false, code: 'unusable' });
    expect((await call('undoMove', { id: move!.id })).move).toMatchObject({ logs: 2 });
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
