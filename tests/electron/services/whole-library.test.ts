import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../electron/library/documents.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { asked, call, documentOf, kept, library, list, sample } from './library-over-gate.ts';
import { keepInstead } from '../library/some-library.ts';

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
    await kept('tidy-landing.csv');
    const [backup] = await call('backups', {});
    const [restored, during, second] = await Promise.all([
      asked('restoreLibrary', { name: backup!.name }),
      list(),
      asked('backUpLibrary', {}),
    ]);
    expect(restored).toMatchObject({ ok: true });
    // Not the two that were there when it asked.
    expect(during.total).toBe(1);
    expect(second).toMatchObject({
      ok: false,
      code: 'unusable',
      message: expect.stringContaining('try again'),
    });
    expect(await call('libraryWork', {})).toBeNull();
  });

  it('offers no backup that was cut off, and sweeps it away with the next', async () => {
    await kept();
    const parts = join(`${library.folder}-backups`, '2026-11-26T101112.4711.part');
    mkdirSync(parts, { recursive: true });
    writeFileSync(join(parts, 'library.sqlite'), '');
    expect(await call('backups', {})).toEqual([]);
    await call('backUpLibrary', {});
    expect(existsSync(parts)).toBe(false);
    expect(await call('backups', {})).toHaveLength(1);
  });

  it('ends a backup that is under way when the app ends, and leaves nothing of it', async () => {
    await kept();
    const making = asked('backUpLibrary', {});
    await new Promise((resolve) => setTimeout(resolve, 1));
    await library.end();
    const made = await making;
    const left = existsSync(`${library.folder}-backups`) ? readdirSync(`${library.folder}-backups`) : [];
    expect(left.filter((name) => name.includes('.part'))).toEqual([]);
    expect(left).toHaveLength(made.ok ? 1 : 0);
    expect((await list()).total).toBe(1);
  });

  it('makes the debriefs of another version anew, says what reads otherwise, and keeps what was signed', async () => {
    const { debriefId, lessonId } = await kept('tidy-landing.csv');
    await call('signDebrief', {
      debriefId: debriefId!,
      document: await documentOf(),
      name: 'Juniper Crane',
      act: 'graded',
    });
    expect(await call('library', {})).toMatchObject({ ofOtherVersions: 0 });
    await library.close();
    const own = await openLibrary(library.folder, 'existing');
    // As an older engine may have had it: another ending.
    const document = readDocument(own, debriefId!);
    const [approach] = document.approaches;
    keepInstead(own, debriefId!, {
      ...document,
      engineVersion: '0.0.1',
      approaches: [{ ...approach!, outcome: 'low-approach' }],
    });
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

  it('holds nothing back after an export: a student is deleted to the last byte at once', async () => {
    await kept();
    await call('exportLibrary', { isPseudonymous: false });
    await call('exportLibrary', { isPseudonymous: true });
    const { students } = await call('library', {});
    expect(await call('deleteStudent', { studentId: students[0]!.id })).toMatchObject({ left: [] });
  });

  it('deletes a student, and no other', async () => {
    await kept('first-approach.csv');
    await kept('tidy-landing.csv', { student: { by: 'name', name: 'Hazel Wren' } });
    const { students } = await call('library', {});
    const { id } = students.find(({ name }) => name === 'Rowan Teal')!;
    expect(await call('holdings', { studentId: id })).toMatchObject({ lessons: 1, logs: 1, approaches: 1 });
    expect(await call('deleteStudent', { studentId: id })).toMatchObject({
      left: [],
      logs: [expect.stringMatching(/^[0-9a-f]{64}$/)],
    });
    expect((await list()).rows.map(({ student }) => student)).toEqual(['Hazel Wren']);
    expect(readdirSync(join(library.folder, 'logs'))).toHaveLength(1);
    expect(await asked('deleteStudent', { studentId: id })).toMatchObject({ ok: false, code: 'gone' });
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
