import type { Facility } from '../../../core/facility/facility-schema.ts';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { importLog, type ImportAsked } from '../../../electron/library/import-log.ts';
import { from } from '../../../electron/library/library.ts';
import { holdingsOf } from '../../../electron/library/delete-student.ts';
import { listLogs } from '../../../electron/library/find-logs.ts';
import { keptOf } from '../../../electron/library/kept-of.ts';
import { listApproaches, listLessons, listStudents } from '../../../electron/library/lists.ts';
import { sha256Of } from '../../../electron/library/log-files.ts';
import { overviewOf } from '../../../electron/library/overview.ts';
import { keepPerson, personNamed } from '../../../electron/library/people.ts';
import { addNote, notesOf, sign, signaturesOf } from '../../../electron/library/record.ts';
import { keepNow } from '../../../electron/library/to-keep.ts';
import {
  command,
  everything,
  FACILITY,
  libraryOf,
  newFolder,
  opened,
  SAMPLE,
  SAMPLES,
} from './some-library.ts';

/** The samples' runway under another name, as a second facility that the same log was flown to. */
const SECOND = changed('Petrelholm ILS 07 (north)', {});
const ELSEWHERE = join(SAMPLES, 'choughfell-ils-32.json');

/** The samples' facility under this name with other values, and with its places moved. */
function changed(name: string, keys: object, move: (place: { latDeg: number }) => void = () => {}): string {
  const facility = JSON.parse(readFileSync(FACILITY, 'utf8'), (_, value: unknown) => {
    if (value !== null && typeof value === 'object' && 'latDeg' in value) move(value as { latDeg: number });
    return value;
  }) as object;
  const path = join(newFolder(), 'facility.json');
  writeFileSync(path, JSON.stringify({ ...facility, name, ...keys }));
  return path;
}

const debriefsOf = (folder: string) =>
  opened(folder, (library) =>
    library.all(
      from
        .selectFrom('debriefs')
        .innerJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
        .selectAll('debriefs')
        .select(['facilities.name', 'facilities.content'])
        .orderBy('facilities.name')
        .orderBy('standard_id'),
    ),
  );

describe('a log that is brought in with drafts from landings among the facilities', () => {
  const draft = (name: string, logSha256: string) =>
    changed(name, { origin: { landing: { logSha256, unconfirmed: ['runway.lengthFt'] } } });

  it('is debriefed by them last, whatever the order that they are named in', async () => {
    const named = ['--facility', draft('A draft', 'ab'.repeat(32)), '--facility', FACILITY];
    const said = await command(newFolder(), 'import', SAMPLE, ...named);
    expect(said.answer + said.messages.join()).toContain('at Petrelholm ILS 07 and A draft');
  });

  it('is debriefed by the others where one of them was drafted from it', async () => {
    const own = draft('Its own draft', sha256Of(readFileSync(SAMPLE)));
    const said = await command(newFolder(), 'import', SAMPLE, '--facility', own, '--facility', FACILITY);
    expect(said.status).toBe(0);
    expect(said.answer + said.messages.join()).toMatch(/at Petrelholm ILS 07(?! and)/);
    const alone = await command(newFolder(), 'import', SAMPLE, '--facility', own);
    expect(alone.messages.join()).toContain('Its own draft was drafted from a landing in this log');
  });
});

describe('an approach that is debriefed by two standards', () => {
  it('was flown once, in every list and count', async () => {
    const own = await libraryOf(SAMPLE);
    const said = await command(own, 'import', SAMPLE, '--facility', FACILITY, '--standard', 'light-aircraft');
    expect(said.answer).toContain('first-approach.csv: kept for Rowan Teal, 1 approach');
    await opened(own, (library) => {
      const rowan = personNamed(library, 'student', 'Rowan Teal');
      expect(listApproaches(library, null)).toHaveLength(2);
      const once = { approaches: 1 };
      expect(overviewOf(library)).toMatchObject({ ...once, students: [once] });
      expect(listStudents(library)).toMatchObject([once]);
      expect(listLessons(library, null)).toMatchObject([once]);
      expect(listLogs(library, null)).toMatchObject([once]);
      expect(holdingsOf(library, rowan)).toMatchObject(once);
      const facility = JSON.parse(readFileSync(FACILITY, 'utf8')) as Facility;
      const made = keptOf(library, sha256Of(readFileSync(SAMPLE)), facility, 'light-aircraft');
      expect(made).toMatchObject(once);
    });
    // Two facilities may lie at one runway: what was flown there is theirs.
    await command(own, 'import', SAMPLE, '--facility', SECOND);
    await opened(own, (library) => expect(overviewOf(library).approaches).toBe(2));
  });
});

describe('a log that is in the library', () => {
  it('is debriefed at another facility that is named, and stays in its lesson', async () => {
    const own = await libraryOf(SAMPLE);
    const before = await everything(own);
    const said = await command(own, 'import', SAMPLE, '--facility', FACILITY, '--facility', SECOND);
    expect(said.answer).toContain(
      'first-approach.csv: kept for Rowan Teal, 1 approach at Petrelholm ILS 07 (north)\n',
    );
    expect(said.messages).toEqual([]);
    const after = await everything(own);
    expect(after['lessons']).toEqual(before['lessons']);
    expect(after['logs']).toEqual(before['logs']);
    expect(after['debriefs']).toEqual(expect.arrayContaining(before['debriefs']!));
    expect((await debriefsOf(own)).map(({ name }) => name)).toEqual([
      'Petrelholm ILS 07',
      'Petrelholm ILS 07 (north)',
    ]);
    expect(
      (await command(own, 'list', 'approaches', '--format', 'json')).answer.match(/"date"/g),
    ).toHaveLength(2);
  });

  it('is told of as tried in vain where nothing was flown there, and is not read for what the library has', async () => {
    const own = await libraryOf(SAMPLE);
    const other = join(SAMPLES, 'steep-and-high.csv');
    await command(own, 'import', other, '--facility', ELSEWHERE);
    const before = await everything(own);
    const tried = await command(own, 'import', SAMPLE, '--facility', ELSEWHERE);
    expect(tried.messages).toEqual([
      'first-approach.csv is in the library already: no approach was found at Choughfell ILS 32.',
    ]);
    const skipped = await command(own, 'import', SAMPLE, other);
    expect(skipped.messages).toEqual([
      'first-approach.csv is in the library already: skipped.',
      'steep-and-high.csv is in the library already: skipped.',
    ]);
    expect(await everything(own)).toEqual(before);
  });

  it('is not debriefed beside itself at a facility that was corrected, unless that is asked for', async () => {
    const own = await libraryOf(SAMPLE);
    const corrected = changed('Petrelholm ILS 07', { airportElevationFt: 61 });
    const before = await everything(own);
    await command(own, 'import', SAMPLE, '--facility', corrected);
    expect(await everything(own)).toEqual(before);
    await command(own, 'import', SAMPLE, '--facility', corrected, '--again', 'yes');
    const [only, ...others] = await debriefsOf(own);
    expect(others).toEqual([]);
    expect(JSON.parse(only!.content)).toMatchObject({ airportElevationFt: 61 });
  });

  it('is debriefed by another standard that is named, where it has a debrief, and once', async () => {
    const own = await libraryOf(SAMPLE);
    const words = ['import', SAMPLE, '--standard', 'light-aircraft'];
    expect((await command(own, ...(words as [string]))).answer).toContain(
      'kept for Rowan Teal, 1 approach at Petrelholm',
    );
    const standards = (await debriefsOf(own)).map(({ standard_id }) => standard_id);
    expect(standards).toEqual(['instrument-rating', 'light-aircraft']);
    const before = await everything(own);
    expect((await command(own, ...(words as [string]))).answer).toContain('0 logs kept, 1 known already');
    expect(await everything(own)).toEqual(before);
  });

  it('needs no day anew where it counts from its own start', async () => {
    const own = join(newFolder(), 'library');
    const log = join(SAMPLES, 'low-approach.csv');
    const at = join(SAMPLES, 'whimbrelness-ils-13.json');
    await command(own, 'import', log, '--facility', at, '--date', '2026-05-01');
    const said = await command(own, 'import', log, '--facility', at, '--standard', 'light-aircraft');
    expect(said.answer).toContain('low-approach.csv: kept, 1 approach at Whimbrelness ILS 13');
  });

  it('is known under whatever name when it comes twice in one import', async () => {
    const logs = join(newFolder(), 'logs');
    mkdirSync(logs);
    for (const name of ['a.csv', 'b.csv', 'c.csv']) copyFileSync(SAMPLE, join(logs, name));
    const own = join(newFolder(), 'library');
    const said = await command(own, 'import', logs, '--facility', FACILITY);
    expect(said.answer).toContain('1 log kept, 2 known already');
    expect(said.messages).toContain('b.csv is in the library already as a.csv: skipped.');
  });
});

describe('a debrief that is stated anew', () => {
  it('holds what is stated now, keeps what was signed beside it, and its notes', async () => {
    const own = await libraryOf(SAMPLE);
    const [before] = await debriefsOf(own);
    await opened(own, (library) => {
      const person_id = library.write(() => keepPerson(library, 'instructor', 'Juniper Crane'));
      sign(library, { debrief_id: before!.id, person_id, act: 'graded' });
      const { id } = library.first(from.selectFrom('lessons').select('id'))!;
      addNote(library, {
        lesson_id: id,
        debrief_id: before!.id,
        about_utc: null,
        author_id: null,
        text: 'calm',
      });
    });
    const stated = ['--vref', '70', '--antenna-height', '9', '--heights', 'from-rollout'];
    const said = await command(own, 'import', SAMPLE, '--again', 'yes', ...stated);
    expect(said.answer).toContain('first-approach.csv: kept for Rowan Teal, 1 approach at Petrelholm ILS 07');
    const [after, ...others] = await debriefsOf(own);
    expect(others).toEqual([]);
    expect(after).toMatchObject({ id: before!.id, antenna_height_ft: 9, heights: 'from-rollout' });
    expect(JSON.parse(after!.stated)).toMatchObject({ vrefKt: 70 });
    expect(after!.document_sha256).not.toBe(before!.document_sha256);
    await opened(own, (library) => {
      expect(signaturesOf(library, after!.id)).toMatchObject([
        { isCurrent: false, document_sha256: before!.document_sha256 },
      ]);
      const { id } = library.first(from.selectFrom('lessons').select('id'))!;
      expect(notesOf(library, id)).toMatchObject([{ text: 'calm', debrief_id: after!.id }]);
    });
    expect(await command(own, 'check')).toMatchObject({ status: 0, messages: [] });
  });

  it('stays where nothing is found by what is stated now', async () => {
    const own = await libraryOf(SAMPLE);
    const before = await everything(own);
    const moved = changed('Petrelholm ILS 07', {}, (place) => place.latDeg++);
    const said = await command(own, 'import', SAMPLE, '--facility', moved, '--again', 'yes');
    expect(said.messages).toContain(
      '  first-approach.csv: Warning: first-approach.csv holds no approach at Petrelholm ILS 07 by what is stated now: its debrief stays as it is.',
    );
    expect(await everything(own)).toEqual(before);
  });

  it('answers with the lesson and the debriefs of the log, whatever became of it', async () => {
    const own = await libraryOf(SAMPLE);
    const defined = defineFacility(readFileSync(FACILITY, 'utf8'), 'facility.json');
    if (!defined.ok) throw new Error(defined.refusal.message);
    const asked: ImportAsked = {
      facilities: [defined.value],
      settings: {},
      judging: { standard: DEFAULT_STANDARD, stated: NOTHING_STATED },
      student: null,
      date: null,
    };
    const log = { name: 'first-approach.csv', bytes: readFileSync(SAMPLE) };
    const job = { progress: () => {}, cancelled: () => false };
    await opened(own, async (library) => {
      const { id: lessonId } = library.first(from.selectFrom('lessons').select('id'))!;
      const debriefIds = [library.first(from.selectFrom('debriefs').select('id'))!.id];
      const known = keepNow(library, await importLog(library, log, asked, job));
      expect(known).toMatchObject({ value: { became: 'known', lessonId, debriefIds } });
      const anew = keepNow(library, await importLog(library, log, { ...asked, isAnew: true }, job));
      expect(anew).toMatchObject({ value: { became: 'kept', lessonId, debriefIds, approaches: 1 } });
    });
  });
});
