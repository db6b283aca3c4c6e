import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Progress } from '../../../core/progress/progress.ts';
import type { School } from '../../../core/progress/school/school.ts';
import { from } from '../../../electron/library/library.ts';
import { LIBRARY_FILE } from '../../../electron/library/open-library.ts';
import { approachesWithoutFacts } from '../../../electron/library/missing-facts.ts';
import { sinceLastTime } from '../../../electron/library/since-last-time.ts';
import {
  command,
  FACILITY,
  libraryOf,
  manyLogs,
  newFolder,
  opened,
  rawFile,
  SAMPLES,
} from './some-library.ts';

const NOT_COUNTED = 'not counted: the facility was an unconfirmed draft.';
/** Of another flight than the one that stands at the facility itself, and later. */
const AT_DRAFT = join(SAMPLES, 'unstable-and-continued.csv');
const STUDENT = ['--student', 'Rowan Teal'];

let library = '';
beforeEach(async () => {
  library = await libraryOf(manyLogs(1));
  const said = await command(
    library,
    'import',
    AT_DRAFT,
    '--facility',
    draft(['glidepath.angleDeg']),
    ...STUDENT,
  );
  expect(said).toMatchObject({ status: 0, messages: [expect.stringContaining('is a draft from a landing')] });
});

/** The samples' facility as it would be drafted from a landing in some other log. */
function draft(unconfirmed: readonly string[]): string {
  const facility = JSON.parse(readFileSync(FACILITY, 'utf8')) as object;
  const origin = { landing: { logSha256: 'ab'.repeat(32), unconfirmed } };
  const path = join(newFolder(), 'draft.json');
  writeFileSync(path, JSON.stringify({ ...facility, name: 'A draft', origin }));
  return path;
}

async function json<T>(...words: string[]): Promise<T> {
  const said = await command(library, ...(words as [string]), '--format', 'json');
  expect(said).toMatchObject({ status: 0, messages: [] });
  return JSON.parse(said.answer) as T;
}

const record = () => json<Progress>('progress', ...STUDENT);
const school = () => json<School>('progress', '--measure', 'stability');
const total = (counts: object) => Object.values<number>({ ...counts }).reduce((sum, count) => sum + count, 0);

async function expectOneCounted(): Promise<void> {
  const { compared, lines, leftOut } = await record();
  expect(compared!.approaches).toBe(1);
  for (const { verdicts } of lines) expect(total(verdicts)).toBe(1);
  expect(leftOut).toMatchObject([
    { why: 'by-draft', count: 1, sentence: expect.stringContaining(NOT_COUNTED) },
  ]);
  const { students, outcomes, coverage, needs } = await school();
  expect(students.map(({ lessons }) => lessons.map(({ verdicts }) => total(verdicts)))).toEqual([[1]]);
  expect(outcomes!.decided + outcomes!.unclear + outcomes!.notAssessed).toBe(1);
  expect(needs.map(({ verdicts }) => total(verdicts))).toEqual([1]);
  expect(coverage).toMatchObject({ byDraft: 1, notHeld: 0, passes: 0 });
}

describe('an approach that an unconfirmed draft of its facility judged', () => {
  it('is listed without a grade, stands in no figure, and every page says why', async () => {
    const flown = await json<{ facility: string; level: number | null; summary: string }[]>(
      'list',
      'approaches',
    );
    const there = flown.find(({ facility }) => facility === 'A draft')!;
    expect(flown).toHaveLength(2);
    expect(there).toMatchObject({ level: null, score: null });
    expect(there.summary).toMatch(/^By an unconfirmed draft of the facility: /);
    await expectOneCounted();
    for (const words of [STUDENT, [...STUDENT, '--format', 'html'], []]) {
      const { answer } = await command(library, 'progress', ...words);
      expect(answer.replaceAll(/\s+/g, ' ')).toContain(NOT_COUNTED);
    }
  });

  it('is counted like any other once the draft is confirmed and the debrief made anew', async () => {
    const said = await command(library, 'import', AT_DRAFT, '--facility', draft([]), '--again', 'yes');
    expect(said).toMatchObject({ status: 0, messages: [] });
    const { compared, leftOut, lines } = await record();
    expect([compared!.approaches, leftOut]).toEqual([2, []]);
    for (const { verdicts } of lines) expect(total(verdicts)).toBe(2);
    expect(lines.filter(({ verdicts }) => verdicts['not-met'] > 0).map(({ id }) => id)).toEqual([
      'glidepath-final',
    ]);
    const { coverage, students } = await school();
    expect(coverage.byDraft).toBe(0);
    expect(students[0]!.lessons.reduce((sum, { approaches }) => sum + approaches, 0)).toBe(2);
  });

  it('is nothing that a later one was better than', async () => {
    const which = (name: string) =>
      opened(library, (open) => {
        const { sha256 } = open.first(
          from.selectFrom('logs').select('sha256').where('file_name', 'like', `${name}%`),
        )!;
        open.run(
          from
            .updateTable('approaches')
            .set({ date: '2026-12-24' })
            .where('facility', '=', 'Petrelholm ILS 07'),
        );
        return sinceLastTime(open, {
          sha256,
          facility: 'Petrelholm ILS 07',
          standardId: 'instrument-rating',
        });
      });
    expect(await which('log-01')).toEqual([]);
    await command(library, 'import', AT_DRAFT, '--facility', draft([]), '--again', 'yes');
    expect(await which('log-01')).toMatchObject([{ sentence: expect.stringContaining('at A draft') }]);
  });
});

describe('a library of version 4, which counted what drafts judged', () => {
  it('counts it no more, and keeps what was copied of all else', async () => {
    await rawFile(join(library, LIBRARY_FILE), (sqlite) => {
      sqlite.exec(`INSERT INTO measures SELECT approaches.id, criterion, place, title, 'not-met', 0, NULL, 9, NULL
        FROM measures, approaches WHERE approaches.facility = 'A draft';
        UPDATE approach_facts SET went_on = 'unstable-continued';
        ALTER TABLE approach_facts DROP COLUMN by_draft;
        PRAGMA user_version = 4`);
    });
    await opened(library, (open) => {
      expect(approachesWithoutFacts(open)).toBe(1);
      const left = from.selectFrom('approach_facts').select(['went_on', 'by_draft']);
      expect(open.all(left)).toEqual([{ went_on: 'unstable-continued', by_draft: 0 }]);
    });
    await expectOneCounted();
    await opened(library, (open) => expect(approachesWithoutFacts(open)).toBe(0));
  });
});
