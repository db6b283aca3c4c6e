import { join } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { deleteStudent, holdingsOf } from '../../../electron/library/delete-student.ts';
import { readDocument } from '../../../electron/library/documents.ts';
import { changeLesson } from '../../../electron/library/lessons.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { listApproaches, listLessons, listStudents } from '../../../electron/library/lists.ts';
import { lastMove, moveLogs, undoMove } from '../../../electron/library/moves.ts';
import { keepPerson, personNamed } from '../../../electron/library/people.ts';
import { addNote } from '../../../electron/library/record.ts';
import { toFirstVersion } from './first-version.ts';
import { command, expectWhole, keepInstead, libraryOf, manyLogs, newFolder, opened } from './some-library.ts';

const DAY = '2026-03-14';
const NEXT = '2026-03-15';

let folder = '';
beforeEach(async () => {
  folder = await libraryOf(manyLogs(3));
});

const hashes = (library: Library) =>
  library.all(from.selectFrom('logs').select('sha256').orderBy('file_name')).map(({ sha256 }) => sha256) as [
    string,
    string,
    string,
  ];
const added = (library: Library, name: string) => library.write(() => keepPerson(library, 'student', name));
const whole = (library: Library) => ({
  lessons: listLessons(library, null),
  approaches: listApproaches(library, null),
  students: listStudents(library),
});
const debriefOf = (library: Library, sha256: string) =>
  library.first(from.selectFrom('debriefs').select('id').where('log_sha256', '=', sha256))!.id;

describe('a move of logs', () => {
  it('takes approaches and the notes of their debriefs along, and says what it moved', () =>
    opened(folder, (library) => {
      const [a, b, c] = hashes(library);
      const hazel = added(library, 'Hazel Wren');
      const lesson_id = library.first(from.selectFrom('lessons').select('id'))!.id;
      const note = { lesson_id, about_utc: null, author_id: null };
      addNote(library, { ...note, debrief_id: debriefOf(library, a), text: 'of the log' });
      addNote(library, { ...note, debrief_id: null, text: 'of the lesson' });
      const move = moveLogs(library, [a, b, a], { studentId: hazel, date: NEXT });
      expect(move).toMatchObject({ logs: 2, student: 'Hazel Wren', date: NEXT });
      expect(lastMove(library)).toEqual(move);
      expect(listApproaches(library, hazel).map(({ date, student }) => [date, student])).toEqual([
        [NEXT, 'Hazel Wren'],
        [NEXT, 'Hazel Wren'],
      ]);
      expect(listLessons(library, null)).toMatchObject([
        { student: 'Rowan Teal', date: DAY, logs: 1, approaches: 1 },
        { student: 'Hazel Wren', date: NEXT, logs: 2, approaches: 2 },
      ]);
      const notes = library.all(
        from
          .selectFrom('notes')
          .innerJoin('lessons', 'lessons.id', 'notes.lesson_id')
          .select(['text', 'date'])
          .orderBy('text'),
      );
      expect(notes).toEqual([
        { text: 'of the lesson', date: DAY },
        { text: 'of the log', date: NEXT },
      ]);
      // A newer document of a log that was moved is listed where the log is.
      const id = debriefOf(library, a);
      keepInstead(library, id, readDocument(library, id));
      expect(listApproaches(library, hazel)).toHaveLength(2);
      expect(c).toBeDefined();
    }));

  it('asks the library as often for one log as for many', () =>
    opened(folder, (library) => {
      const [a, b, c] = hashes(library);
      const ways = (['all', 'first', 'run', 'execute', 'answers'] as const).map((way) =>
        vi.spyOn(library, way),
      );
      const asked = (work: () => unknown) => {
        for (const way of ways) way.mockClear();
        work();
        return ways.reduce((sum, way) => sum + way.mock.calls.length, 0);
      };
      const moving = (logs: string[], date: string) => () =>
        moveLogs(library, logs, { studentId: null, date });
      const one = [asked(moving([a], NEXT)), asked(() => undoMove(library))];
      const many = [asked(moving([a, b, c], '2026-03-16')), asked(() => undoMove(library))];
      expect(many).toEqual(one);
      expect(one[0]).toBeGreaterThan(5);
    }));

  it('to where a log is already counts nothing, and none is made where all are there', () =>
    opened(folder, (library) => {
      const [a, b] = hashes(library);
      const rowan = personNamed(library, 'student', 'Rowan Teal').id;
      expect(moveLogs(library, [a, b], { studentId: rowan, date: null })).toBeNull();
      expect(moveLogs(library, [], { studentId: null, date: null })).toBeNull();
      expect(lastMove(library)).toBeNull();
      moveLogs(library, [a], { studentId: rowan, date: NEXT });
      expect(moveLogs(library, [a, b], { studentId: rowan, date: NEXT })).toMatchObject({ logs: 1 });
    }));

  it('keeps each on its own day where no day is said, and gives it to nobody', () =>
    opened(folder, (library) => {
      const [a, b] = hashes(library);
      const rowan = personNamed(library, 'student', 'Rowan Teal').id;
      moveLogs(library, [a], { studentId: rowan, date: NEXT });
      expect(moveLogs(library, [a, b], { studentId: null, date: null })).toMatchObject({
        logs: 2,
        student: null,
        date: null,
      });
      expect(listLessons(library, null)).toMatchObject([
        { student: null, date: DAY, logs: 1 },
        { student: 'Rowan Teal', date: DAY, logs: 1 },
        { student: null, date: NEXT, logs: 1 },
      ]);
    }));

  it('gives the new lesson what is known of the flight, and not what was agreed with another', () =>
    opened(folder, (library) => {
      const [a] = hashes(library);
      const { id } = library.first(from.selectFrom('lessons').select('id'))!;
      const flown = { aircraft: 'trainer', vref_kt: 65, conditions: 'imc' as const };
      changeLesson(library, id, { ...flown, objective: 'from below', syllabus_number: '7' });
      moveLogs(library, [a], { studentId: added(library, 'Hazel Wren'), date: null });
      const lesson = library.first(
        from
          .selectFrom('logs')
          .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
          .selectAll('lessons')
          .where('sha256', '=', a),
      );
      expect(lesson).toMatchObject({ ...flown, date: DAY, objective: null, syllabus_number: null });
    }));

  it('to somebody, of something or on a day that there is not is refused whole', () =>
    opened(folder, (library) => {
      const [a] = hashes(library);
      const before = whole(library);
      const instructor = library.write(() => keepPerson(library, 'instructor', 'Juniper Crane'));
      for (const studentId of ['nobody', instructor])
        expect(() => moveLogs(library, [a], { studentId, date: null })).toThrow('no longer in the library');
      expect(() => moveLogs(library, [a], { studentId: null, date: '2026-02-30' })).toThrow('is no day');
      expect(() => moveLogs(library, [a, 'f'.repeat(64)], { studentId: null, date: null })).toThrow(
        'no longer in the library',
      );
      expect(whole(library)).toEqual(before);
      expect(lastMove(library)).toBeNull();
    }));
});

describe('undoing', () => {
  it('brings everything back as it was, move by move, and then says that there is none', () =>
    opened(folder, (library) => {
      const [a, b, c] = hashes(library);
      const hazel = added(library, 'Hazel Wren');
      const before = whole(library);
      const first = moveLogs(library, [a, b, c], { studentId: hazel, date: null })!;
      const between = whole(library);
      moveLogs(library, [b], { studentId: null, date: NEXT });
      expect(undoMove(library)).toMatchObject({ logs: 1, student: null, date: NEXT });
      expect(whole(library)).toEqual(between);
      expect(lastMove(library)).toEqual(first);
      expect(undoMove(library)).toEqual(first);
      expect(whole(library)).toEqual(before);
      expect(undoMove(library)).toBeNull();
    }));

  it('puts back only what is still where the move put it, and says how many', () =>
    opened(folder, (library) => {
      const [a, b] = hashes(library);
      moveLogs(library, [a, b], { studentId: added(library, 'Hazel Wren'), date: null });
      const rowans = library.first(
        from
          .selectFrom('lessons')
          .innerJoin('people', 'people.id', 'student_id')
          .select('lessons.id')
          .where('name', '=', 'Rowan Teal'),
      )!;
      library.write(() =>
        library.run(from.updateTable('logs').set({ lesson_id: rowans.id }).where('sha256', '=', b)),
      );
      expect(undoMove(library)).toMatchObject({ logs: 1, student: 'Hazel Wren' });
    }));
});

describe('a lesson that a move has emptied', () => {
  it('is listed nowhere unless somebody said something of it, and is filled again by undoing', () =>
    opened(folder, (library) => {
      const rowan = personNamed(library, 'student', 'Rowan Teal');
      const { id } = library.first(from.selectFrom('lessons').select('id'))!;
      moveLogs(library, hashes(library), { studentId: added(library, 'Hazel Wren'), date: null });
      expect(listLessons(library, rowan.id)).toEqual([]);
      expect(listStudents(library)).toContainEqual({
        student: 'Rowan Teal',
        lessons: 0,
        approaches: 0,
        last: null,
      });
      expect(holdingsOf(library, rowan)).toMatchObject({ lessons: 0, logs: [] });
      for (const [fact, none] of [
        [{ objective: 'needles' }, { objective: null }],
        [{ syllabus_number: '7' }, { syllabus_number: null }],
      ]) {
        changeLesson(library, id, fact!);
        expect(listLessons(library, rowan.id)).toHaveLength(1);
        changeLesson(library, id, none!);
      }
      addNote(library, { lesson_id: id, debrief_id: null, about_utc: null, author_id: null, text: 'calm' });
      expect(listLessons(library, rowan.id)).toMatchObject([{ date: DAY, logs: 0 }]);
      undoMove(library);
      expect(listLessons(library, rowan.id)).toMatchObject([{ date: DAY, logs: 3 }]);
    }));
});

describe('moves in what is done with a library', () => {
  it('come back with a backup, and can then be undone', async () => {
    const move = await opened(folder, (library) =>
      moveLogs(library, hashes(library), { studentId: added(library, 'Hazel Wren'), date: null }),
    );
    const backup = join(newFolder(), 'backup');
    await command(folder, 'backup', backup);
    await opened(folder, (library) => undoMove(library));
    expect(await command(folder, 'restore', backup)).toMatchObject({ status: 0 });
    await opened(folder, (library) => {
      expect(lastMove(library)).toEqual(move);
      expect(undoMove(library)).toMatchObject({ logs: 3 });
    });
    await expectWhole(folder);
  });

  it('are not exported: who takes the record in has moved nothing', async () => {
    await opened(folder, (library) => moveLogs(library, hashes(library), { studentId: null, date: null }));
    const out = join(newFolder(), 'out');
    await command(folder, 'export', out);
    const other = join(newFolder(), 'other');
    expect(await command(other, 'import', '--from', out)).toMatchObject({ status: 0 });
    await opened(other, (library) => {
      expect(lastMove(library)).toBeNull();
      expect(listLessons(library, null)).toMatchObject([{ student: null, logs: 3 }]);
    });
  });

  it('go with a student who is deleted, also where the logs had come from them', () =>
    opened(folder, (library) => {
      const [a, b] = hashes(library);
      const hazel = added(library, 'Hazel Wren');
      moveLogs(library, [a], { studentId: hazel, date: null });
      moveLogs(library, [b], { studentId: null, date: null });
      deleteStudent(library, personNamed(library, 'student', 'Hazel Wren'));
      expect(lastMove(library)).toMatchObject({ logs: 1, student: null });
      deleteStudent(library, personNamed(library, 'student', 'Rowan Teal'));
      expect(lastMove(library)).toBeNull();
      for (const table of ['moves', 'moved_logs'] as const)
        expect(library.all(from.selectFrom(table).selectAll())).toEqual([]);
      expect(hashes(library)).toEqual([b]);
    }));

  it('can be made in a library that began as version 1', async () => {
    await toFirstVersion(folder);
    await opened(folder, (library) => {
      const before = whole(library);
      expect(before.lessons).toMatchObject([{ student: 'Rowan Teal', logs: 3, approaches: 3 }]);
      moveLogs(library, hashes(library), { studentId: null, date: NEXT });
      expect(undoMove(library)).toMatchObject({ logs: 3 });
      expect(whole(library)).toEqual(before);
    });
    await expectWhole(folder);
  });
});
