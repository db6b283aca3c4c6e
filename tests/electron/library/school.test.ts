import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { SchoolAsked } from '../../../core/progress/school/school-page.ts';
import { readDocument } from '../../../electron/library/documents.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { keepPerson, personNamed } from '../../../electron/library/people.ts';
import { schoolPage } from '../../../electron/library/school-page.ts';
import {
  ALL_FACILITIES,
  command,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  SAMPLE,
  SAMPLES,
  dropFacts,
} from './some-library.ts';

const SAID = ['--target-airspeed', '90', '--conditions', 'simulated', '--runway', 'seen'];
const EVERYTHING: SchoolAsked = {
  measure: 'level',
  filter: { standardKey: null, engineVersion: null, from: null, to: null, mix: {} },
  groupBy: null,
  isNamed: true,
};

let library = '';
beforeAll(async () => {
  // One has the samples, the other three logs of one flight, and a third one none.
  library = await libraryOf(manyLogs(3), 'Hazel Wren');
  await command(library, 'import', SAMPLES, ...ALL_FACILITIES, '--student', 'Rowan Teal', ...SAID);
  const roster = join(newFolder(), 'school.csv');
  writeFileSync(roster, 'name\nLinden Siskin\n');
  await command(library, 'roster', roster);
});

const page = (asked: Partial<SchoolAsked> = {}) =>
  opened(library, (open) => schoolPage(open, { ...EVERYTHING, ...asked })!);

/** The final segments of everything that a library holds, out of the documents themselves. */
function judgedApproaches(open: Library) {
  return open
    .all(from.selectFrom('debriefs').select('id'))
    .flatMap(({ id }) => readDocument(open, id).approaches)
    .filter(({ kind }) => kind === 'approach');
}

describe('a school out of the library', () => {
  it('has every judged approach of every student, or counts it as left out', async () => {
    const { school } = await page();
    const all = await opened(library, (open) => judgedApproaches(open).length);
    const left = school.leftOut.reduce((sum, { count }) => sum + count, 0);
    expect(school.compared!.approaches + left).toBe(all);
    expect(school.students.map(({ name }) => name)).toEqual(['Hazel Wren', 'Rowan Teal']);
    expect(school.coverage).toMatchObject({ studentsWithoutLog: ['Linden Siskin'], lessonsWithoutLog: 0 });
  });

  it.each([
    ['glidepath-final', 'rms'],
    ['localizer-before-final', 'inside-by-distance'],
    ['stability', 'share-met'],
  ])('tells of %s what the documents tell', async (measure, kind) => {
    const { school } = await page({ measure });
    expect(school.measure).toMatchObject({ id: measure, measure: kind });
    const approaches = await opened(library, judgedApproaches);
    const verdicts = { met: 0, 'not-met': 0, unclear: 0, 'not-assessed': 0 };
    for (const { criteria } of approaches)
      verdicts[criteria.find(({ id }) => id === measure)?.verdict ?? 'not-assessed']++;
    const cells = school.students.flatMap(({ lessons }) => lessons);
    for (const verdict of ['met', 'not-met', 'unclear'] as const)
      expect(cells.reduce((sum, cell) => sum + cell.verdicts[verdict], 0)).toBe(verdicts[verdict]);
  });

  it('has the RMS of the one flight in three logs, and who instructed it', async () => {
    const { school } = await page({ measure: 'glidepath-final' });
    const hazel = school.students.find(({ name }) => name === 'Hazel Wren')!;
    const rms = await opened(library, (open) => {
      const { id } = open.first(
        from
          .selectFrom('debriefs')
          .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
          .select('debriefs.id')
          .where('file_name', '=', 'log-01.csv'),
      )!;
      return readDocument(open, id).approaches[0]!.segments.find(({ kind }) => kind === 'final')!.glidepath!
        .rmsFullScale!;
    });
    expect(hazel.lessons).toMatchObject([{ approaches: 3 }]);
    // Lists come with 15 digits.
    expect(hazel.lessons[0]!.value).toBeCloseTo(rms, 12);
  });

  it('shows numbers in place of names, the same ones every time', async () => {
    const [first, again] = [await page({ isNamed: false }), await page({ isNamed: false })];
    const text = JSON.stringify(first);
    for (const name of ['Hazel', 'Rowan', 'Linden']) expect(text).not.toContain(name);
    expect(first).toEqual(again);
    expect(first.school.students.map(({ name }) => name)).toEqual([
      expect.stringMatching(/^Student \d$/),
      expect.stringMatching(/^Student \d$/),
    ]);
  });

  it('lets in what is asked for, and offers the rest still', async () => {
    await opened(library, (open) => {
      const { id } = personNamed(open, 'student', 'Hazel Wren');
      const instructor_id = open.write(() => keepPerson(open, 'instructor', 'Nils Brambling'));
      open.run(
        from.updateTable('lessons').set({ aircraft: 'QQ-XYZ', instructor_id }).where('student_id', '=', id),
      );
    });
    const mix = { aircraft: ['QQ-XYZ'] };
    const { school } = await page({ filter: { ...EVERYTHING.filter, mix }, groupBy: 'instructor' });
    expect(school.students.map(({ name }) => name)).toEqual(['Hazel Wren']);
    expect(school.caseMix.find(({ factor }) => factor === 'aircraft')!.values).toHaveLength(2);
    expect(school.groups!.groups.map(({ label }) => label)).toEqual(['Nils Brambling']);
  });

  it('says what each student needs by every criterion, the level being none', async () => {
    const { needs, measures } = await page();
    expect(measures.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['level', 'glidepath-final', 'minimums']),
    );
    expect(needs.map(({ name }) => name)).toEqual(['Hazel Wren', 'Rowan Teal']);
    const hazel = needs[0]!.criteria.find(({ id }) => id === 'glidepath-final')!;
    expect(Object.values(hazel.verdicts).reduce((sum, count) => sum + count, 0)).toBe(3);
  });

  it('counts an approach once in what is needed, though it was debriefed at two versions of a facility', async () => {
    const own = await libraryOf(SAMPLE, 'Hazel Wren');
    const facility = JSON.parse(readFileSync(FACILITY, 'utf8')) as object;
    const other = join(newFolder(), 'again.json');
    writeFileSync(other, JSON.stringify({ ...facility, name: 'The same by another name' }));
    await command(own, 'import', SAMPLE, '--facility', other);
    const { needs, school } = await opened(own, (open) => schoolPage(open, EVERYTHING)!);
    expect(school.leftOut).toMatchObject([{ why: 'same-approach', count: 1 }]);
    for (const { verdicts } of needs[0]!.criteria)
      expect(Object.values(verdicts).reduce((sum, count) => sum + count, 0)).toBe(1);
  });

  it('goes by the days in what is needed as well', async () => {
    const filter = { ...EVERYTHING.filter, to: '2026-03-15' };
    const { needs, school } = await page({ filter });
    expect(needs.map(({ name }) => name)).toEqual(school.students.map(({ name }) => name));
  });

  it('counts what is nobody’s, what was no approach, and what cannot be read or was held to something else', async () => {
    const own = await libraryOf(manyLogs(2), 'Hazel Wren');
    await command(own, 'import', SAMPLES, ...ALL_FACILITIES, '--student', 'Rowan Teal');
    await command(own, 'assign', 'tidy-landing.csv', '--nobody', 'yes');
    const count = await opened(own, (open) => {
      const all = from.selectFrom('approaches').select('kind').where('kind', '!=', 'approach');
      const first = from.selectFrom('approaches').select('approaches.id').where('number', '=', 1);
      open.run(
        from.deleteFrom('measures').where('criterion', '=', 'minimums').where('approach_id', 'in', first),
      );
      const { id } = open.first(
        from
          .selectFrom('debriefs')
          .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
          .select('debriefs.id')
          .where('file_name', '=', 'log-01.csv'),
      )!;
      dropFacts(open, id);
      open.run(
        from
          .updateTable('documents')
          .set({ json_gz: new Uint8Array([1]) })
          .where('debrief_id', '=', id),
      );
      return open.all(all).length;
    });
    const { coverage } = await opened(
      own,
      (open) => schoolPage(open, { ...EVERYTHING, measure: 'minimums' })!.school,
    );
    expect(coverage).toMatchObject({ unreadable: 1, passes: count });
    expect(coverage.notHeld).toBeGreaterThan(3);
  });

  it('has no page for a measure that nobody was held to', async () => {
    expect(
      await opened(library, (open) => schoolPage(open, { ...EVERYTHING, measure: 'no-such' })),
    ).toBeNull();
  });
});

describe('halfdot progress of all students', () => {
  it('prints a page without a name, and with names where they are asked for', async () => {
    const hidden = await command(library, 'progress', '--measure', 'glidepath-final', '--by', 'aircraft');
    expect(hidden).toMatchObject({ status: 0, messages: [] });
    expect(hidden.answer).toMatch(/^\S.* is to be practised by|^Of 2 students/);
    expect(hidden.answer).toContain('Groups, by aircraft');
    expect(hidden.answer).not.toContain('Hazel');
    const named = await command(library, 'progress', '--names', 'yes');
    expect(named.answer).toContain('Hazel Wren');
  });

  it('gives JSON and a table', async () => {
    const json = await command(library, 'progress', '--format', 'json');
    expect(JSON.parse(json.answer)).toMatchObject({ format: 'halfdot-school/1', needsByCriterion: [{}, {}] });
    // Nor an id, by which another export would tell who it is.
    const ids = await opened(library, (open) =>
      (['people', 'lessons'] as const).flatMap((table) => open.all(from.selectFrom(table).select('id'))),
    );
    for (const { id } of ids) expect(json.answer).not.toContain(id);
    const csv = await command(library, 'progress', '--format', 'csv');
    expect(csv.answer.split('\n')[0]).toMatch(/student/);
  });

  it.each([
    [['--measure', 'no-such'], 'No approach in the library was held to "no-such".'],
    [['--from', '2026-05-02', '--to', '2026-05-01'], '--from 2026-05-02 is after --to 2026-05-01.'],
    [['--from', '2026-13-01'], '--from 2026-13-01 is no day.'],
    [['--student', 'Hazel Wren', '--by', 'aircraft'], '--by is for all students'],
    [['--format', 'html'], 'A page is made of one student'],
  ])('refuses %j with one sentence', async (words, sentence) => {
    const said = await command(library, 'progress', ...words);
    expect(said).toMatchObject({ status: 2, answer: '', messages: [expect.stringContaining(sentence)] });
  });

  it('makes a page of one student that asks nothing of anybody and has every criterion drawn', async () => {
    const { answer } = await command(library, 'progress', '--student', 'Rowan Teal', '--format', 'html');
    expect(answer).toContain('<title>Progress of Rowan Teal</title>');
    expect(answer.match(/<svg class="lesson-plot"/g)).toHaveLength(8);
    expect(answer).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    expect(answer).toContain('For training debrief only, never for navigation.');
  });
});
