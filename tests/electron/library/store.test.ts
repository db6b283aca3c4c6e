import { existsSync, readFileSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ENGINE_VERSION } from '../../../core/debrief/engine-version.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { readDocument } from '../../../electron/library/documents.ts';
import { addLesson, changeLesson, lessonOn } from '../../../electron/library/lessons.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { listApproaches, listLessons, listStudents } from '../../../electron/library/lists.ts';
import { sha256Of } from '../../../electron/library/log-files.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { writeWithLogs } from '../../../electron/library/pending-logs.ts';
import { keepPerson, personNamed, renamePerson } from '../../../electron/library/people.ts';
import {
  addEstimate,
  addNote,
  agreeGoal,
  estimatesOf,
  goalsOf,
  notesOf,
  reachGoal,
  sign,
  signaturesOf,
} from '../../../electron/library/record.ts';
import { command, FACILITY, keepInstead, libraryOf, newFolder, opened, SAMPLE } from './some-library.ts';

let folder = '';
beforeAll(async () => {
  folder = await libraryOf(SAMPLE);
});

const only = (library: Library) => ({
  debrief: library.first(from.selectFrom('debriefs').selectAll())!,
  lesson: library.first(from.selectFrom('lessons').selectAll().orderBy('date'))!,
  student: personNamed(library, 'student', 'Rowan Teal'),
});

describe('what is kept of a flight', () => {
  it('is the log, the facility, what was stated, the standard and the debrief, byte for byte', () =>
    opened(folder, (library) => {
      const { debrief, lesson } = only(library);
      const log = library.first(from.selectFrom('logs').selectAll())!;
      expect(Buffer.from(library.logFiles.read(log.sha256, log.file_name))).toEqual(readFileSync(SAMPLE));
      expect(log.sha256).toBe(sha256Of(readFileSync(SAMPLE)));
      expect(log.lesson_id).toBe(lesson.id);
      const facility = library.first(from.selectFrom('facilities').selectAll())!;
      expect(JSON.parse(facility.content)).toEqual(JSON.parse(readFileSync(FACILITY, 'utf8')));
      expect(debrief).toMatchObject({ standard_id: 'instrument-rating', engine_version: ENGINE_VERSION });
      expect(JSON.parse(debrief.stated)).toMatchObject({ conditions: 'not-stated' });
      const document = readDocument(library, debrief.id);
      expect(document.format).toBe('halfdot-debrief/1');
      expect(sha256Of(JSON.stringify(document))).toBe(debrief.document_sha256);
    }));

  it('is in the lists as the debrief has it', () =>
    opened(folder, (library) => {
      const { approaches, facility } = readDocument(library, only(library).debrief.id);
      const rows = listApproaches(library, null);
      expect(rows).toHaveLength(approaches.length);
      expect(rows[0]).toMatchObject({
        facility: facility.name,
        outcome: approaches[0]!.outcome,
        level: approaches[0]!.grade!.level,
        score: approaches[0]!.grade!.score,
        summary: approaches[0]!.summary,
        startUtc: approaches[0]!.startUtc,
      });
    }));
});

describe('people and lessons', () => {
  it('are found by name in any case, and renamed but not to a name that is taken', () =>
    opened(folder, (library) => {
      const { student } = only(library);
      expect(personNamed(library, 'student', ' rowan teal ')).toEqual(student);
      library.write(() => keepPerson(library, 'student', 'Hazel Wren'));
      expect(() => renamePerson(library, student, 'hazel wren')).toThrow('already a student "Hazel Wren"');
      renamePerson(library, student, 'Rowan  Teal-Wren');
      renamePerson(library, student, 'Rowan Teal');
      expect(() => personNamed(library, 'instructor', 'Rowan Teal')).toThrow('no instructor');
      expect(listStudents(library)).toEqual([
        { student: 'Hazel Wren', lessons: 0, approaches: 0, last: null },
        { student: 'Rowan Teal', lessons: 1, approaches: 1, last: '2026-03-14' },
      ]);
    }));

  it('are found in any spelling of their name, and added once', () =>
    opened(folder, (library) => {
      const kept = (name: string) => library.write(() => keepPerson(library, 'student', name));
      const id = kept('Özgür Ångström');
      for (const name of ['özgür ångström', 'Ångström, Özgür', 'OEZGUER AANGSTROEM', ' ozgur  angstrom '])
        expect([kept(name), personNamed(library, 'student', name).id]).toEqual([id, id]);
      expect(kept('Student 2 (3)')).not.toBe(kept('Student 3 (2)'));
      expect(() =>
        renamePerson(library, personNamed(library, 'student', 'Student 2 (3)'), 'angstrom ozgur'),
      ).toThrow('already a student "Özgür Ångström"');
    }));

  it('whose names are alike are found as they are written, and refused as neither is', () =>
    opened(folder, (library) => {
      const person = { role: 'student' as const, added_utc: '2026-05-01T10:00:00Z' };
      for (const name of ['José Lark', 'Jose Lark'])
        library.write(() => library.run(from.insertInto('people').values({ ...person, id: name, name })));
      expect(personNamed(library, 'student', 'josé lark').id).toBe('José Lark');
      expect(personNamed(library, 'student', 'JOSE LARK').id).toBe('Jose Lark');
      expect(() => library.write(() => keepPerson(library, 'student', 'Lark, José'))).toThrow(
        'can be Jose Lark or José Lark',
      );
    }));

  it('a lesson that is given to another student takes its approaches along', () =>
    opened(folder, (library) => {
      const { lesson, student } = only(library);
      const hazel = library.write(() => keepPerson(library, 'student', 'Hazel Wren'));
      const instructor_id = library.write(() => keepPerson(library, 'instructor', 'Juniper Crane'));
      changeLesson(library, lesson.id, {
        student_id: hazel,
        date: '2026-03-15',
        instructor_id,
        aircraft: 'trainer',
        vref_kt: 65,
        syllabus_number: '12',
        objective: 'glidepath from below',
      });
      expect(listApproaches(library, hazel)).toMatchObject([{ date: '2026-03-15', student: 'Hazel Wren' }]);
      expect(listApproaches(library, student.id)).toEqual([]);
      expect(listLessons(library, hazel)).toMatchObject([
        { date: '2026-03-15', student: 'Hazel Wren', instructor: 'Juniper Crane', vrefKt: 65, logs: 1 },
      ]);
      changeLesson(library, lesson.id, { student_id: student.id, date: lesson.date });
      expect(only(library).lesson).toMatchObject({ objective: 'glidepath from below', vref_kt: 65 });
    }));

  it('of impossible days or unknown people are refused, and nothing of the work stays', () =>
    opened(folder, (library) => {
      const before = library.all(from.selectFrom('lessons').selectAll());
      for (const wrong of [{ date: '14.3.2026' }, { student_id: 'nobody' }, { conditions: 'dark' as 'imc' }])
        expect(() =>
          library.write(() => {
            addLesson(library, lessonOn('2026-08-01'));
            addLesson(library, { ...lessonOn('2026-08-01'), ...wrong });
          }),
        ).toThrow('constraint');
      expect(library.all(from.selectFrom('lessons').selectAll())).toEqual(before);
    }));
});

describe('what people say', () => {
  it('notes, estimates and goals are kept with their moment', () =>
    opened(folder, (library) => {
      const { debrief, lesson, student } = only(library);
      const about_utc = '2026-03-14T15:05:00Z';
      addNote(library, {
        lesson_id: lesson.id,
        debrief_id: debrief.id,
        about_utc,
        author_id: null,
        text: 'calm',
      });
      expect(notesOf(library, lesson.id)).toMatchObject([{ text: 'calm', about_utc }]);
      addEstimate(library, { debrief_id: debrief.id, about_utc, level: 3, words: null });
      expect(estimatesOf(library, debrief.id)).toMatchObject([{ level: 3 }]);
      expect(() =>
        addEstimate(library, { debrief_id: debrief.id, about_utc, level: 6, words: null }),
      ).toThrow('constraint');
      const goal = agreeGoal(library, {
        student_id: student.id,
        lesson_id: lesson.id,
        text: 'be down by the fix',
      });
      expect(goalsOf(library, student.id)).toMatchObject([{ reached_utc: null }]);
      reachGoal(library, goal);
      expect(goalsOf(library, student.id)[0]!.reached_utc).toMatch(/^\d{4}-/);
    }));

  it('a signature holds the document that was signed, also when a newer one takes its place', () =>
    opened(folder, (library) => {
      const { debrief } = only(library);
      const person_id = library.write(() => keepPerson(library, 'instructor', 'Juniper Crane'));
      const signed = readDocument(library, debrief.id);
      sign(library, { debrief_id: debrief.id, person_id, act: 'graded' });
      sign(library, { debrief_id: debrief.id, person_id, act: 'graded' });
      expect(signaturesOf(library, debrief.id)).toMatchObject([{ act: 'graded', isCurrent: true }]);
      for (const engineVersion of ['9.0.0', '9.1.0'])
        keepInstead(library, debrief.id, { ...signed, engineVersion } as Debrief);
      expect(signaturesOf(library, debrief.id)).toMatchObject([{ isCurrent: false }]);
      const documents = library.all(
        from.selectFrom('documents').select('engine_version').orderBy('engine_version'),
      );
      // The one in between was signed by nobody.
      expect(documents.map(({ engine_version }) => engine_version)).toEqual([ENGINE_VERSION, '9.1.0']);
    }));
});

describe('how it is written', () => {
  let own = '';
  beforeEach(() => void (own = join(newFolder(), 'library')));

  it('by commits that reach the disk, with references held and what is deleted overwritten', async () => {
    const library = await openLibrary(own, 'create');
    const setting = (name: string) => Object.values(library.answers(`PRAGMA ${name}`)[0] as object)[0];
    expect(['journal_mode', 'synchronous', 'foreign_keys', 'secure_delete'].map(setting)).toEqual([
      'wal',
      2,
      1,
      1,
    ]);
    library.close();
  });

  it("a log's file that came before a commit that never was goes when the library is opened next", async () => {
    const bytes = Buffer.from('a log');
    const sha256 = sha256Of(bytes);
    const library = await openLibrary(own, 'create');
    expect(() =>
      writeWithLogs(library, [sha256], () => {
        library.logFiles.put(sha256, bytes);
        writeFileSync(join(own, 'logs', `${sha256}.gz.77.part`), 'cut off');
        throw new Error('the power fails');
      }),
    ).toThrow('power');
    library.close();
    writeFileSync(join(own, 'logs', `${'0'.repeat(64)}.gz`), 'not announced');
    expect(readdirSync(join(own, 'logs'))).toHaveLength(3);
    await opened(own, () => {});
    expect(readdirSync(join(own, 'logs'))).toEqual([`${'0'.repeat(64)}.gz`]);
  });

  it('a library whose file has gone is not begun anew beside its logs', async () => {
    const gone = await libraryOf(SAMPLE);
    renameSync(join(gone, 'library.sqlite'), join(gone, 'elsewhere.sqlite'));
    const said = await command(gone, 'import', SAMPLE, '--facility', FACILITY);
    expect(said).toMatchObject({
      status: 2,
      messages: [expect.stringContaining('file library.sqlite is not there')],
    });
    expect(existsSync(join(gone, 'library.sqlite'))).toBe(false);
  });

  it('is checked when it was not closed, and not used when it is found damaged', async () => {
    const damaged = newFolder();
    const bytes = readFileSync(join(folder, 'library.sqlite'));
    const pages = bytes.length / 4096;
    for (let page = 2; page < pages; page++) bytes.fill(0xee, page * 4096, page * 4096 + 200);
    writeFileSync(join(damaged, 'library.sqlite'), bytes);
    writeFileSync(join(damaged, 'library.sqlite-wal'), 'left over');
    const said = await command(damaged, 'list');
    expect(said).toMatchObject({ status: 2, messages: [expect.stringContaining('is damaged')] });
    expect(readFileSync(join(damaged, 'library.sqlite'))).toEqual(bytes);
  });
});
