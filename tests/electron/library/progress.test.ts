import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import type { Progress } from '../../../core/progress/progress.ts';
import { readDocument } from '../../../electron/library/documents.ts';
import { from } from '../../../electron/library/library.ts';
import { personNamed } from '../../../electron/library/people.ts';
import { agreeGoal, reachGoal } from '../../../electron/library/record.ts';
import { run } from '../../../electron/cli/run.ts';
import {
  ALL_FACILITIES,
  command,
  keepInstead,
  libraryOf,
  newFolder,
  opened,
  SAMPLE,
  SAMPLES,
  dropFacts,
} from './some-library.ts';

let library = '';
beforeAll(async () => {
  library = join(newFolder(), 'library');
  const said = ['--target-airspeed', '90', '--conditions', 'simulated', '--runway', 'seen'];
  await command(library, 'import', SAMPLES, ...ALL_FACILITIES, '--student', 'Rowan Teal', ...said);
  const roster = join(newFolder(), 'school.csv');
  writeFileSync(roster, 'name\nHazel Wren\n');
  await command(library, 'roster', roster);
});

/** As version 0.1.0 made it. */
function withoutMiles(debrief: Debrief): Debrief {
  const approaches = debrief.approaches.map((approach) => ({
    ...approach,
    criteria: approach.criteria.map(({ assessedNm: _assessedNm, outsideNm: _outsideNm, ...rest }) => rest),
  }));
  return { ...debrief, engineVersion: '0.1.0', approaches } as unknown as Debrief;
}

async function recordOf(student: string, folder = library): Promise<Progress> {
  const said = await command(folder, 'progress', '--student', student, '--format', 'json');
  expect(said).toMatchObject({ status: 0, messages: [] });
  return JSON.parse(said.answer) as Progress;
}

describe('halfdot progress', () => {
  it('holds every approach of the student: compared, or left out with a count', async () => {
    const record = await recordOf('rowan teal');
    const listed = await command(
      library,
      'list',
      'approaches',
      '--student',
      'Rowan Teal',
      '--format',
      'json',
    );
    const all = (JSON.parse(listed.answer) as unknown[]).length;
    const left = record.leftOut.reduce((sum, { count }) => sum + count, 0);
    expect(record).toMatchObject({ format: 'halfdot-progress/1', student: 'Rowan Teal' });
    expect(record.compared!.approaches).toBeGreaterThan(10);
    expect(record.compared!.approaches + left).toBe(all);
    const inLessons = record.lessons.reduce((sum, { approaches }) => sum + approaches, 0);
    expect(inLessons).toBe(record.compared!.approaches);
    for (const { verdicts } of record.lines)
      expect(Object.values(verdicts).reduce((sum, count) => sum + count, 0)).toBe(inLessons);
  });

  it('tells the figures that the debrief has', async () => {
    const own = join(newFolder(), 'library');
    await command(
      own,
      'import',
      SAMPLE,
      ...ALL_FACILITIES,
      '--student',
      'Rowan Teal',
      '--target-airspeed',
      '90',
    );
    const debrief = JSON.parse((await command(own, 'list', 'approaches', '--format', 'json')).answer) as {
      level: number | null;
      levelLow: number | null;
      date: string;
    }[];
    const record = await recordOf('Rowan Teal', own);
    expect(record.lessons).toMatchObject([{ date: debrief[0]!.date, approaches: 1 }]);
    const approach = await opened(own, (open) => {
      const { id } = open.first(from.selectFrom('debriefs').select('id'))!;
      return readDocument(open, id).approaches[0]!;
    });
    const { rmsFullScale } = approach.segments.find(({ kind }) => kind === 'final')!.glidepath!;
    const { assessedNm, outsideNm } = approach.criteria.find(({ id }) => id === 'glidepath-final')!;
    const insideShare = 1 - outsideNm! / assessedNm!;
    const glidepath = record.lines.find(({ id }) => id === 'glidepath-final')!;
    expect(glidepath.lessons).toMatchObject([{ rms: rmsFullScale, insideShare, approaches: 1 }]);
    expect(rmsFullScale).toBeGreaterThan(0);
  });

  it('tells the goals that were agreed with this student, and which were reached', async () => {
    await opened(library, (open) => {
      const { id } = personNamed(open, 'student', 'Rowan Teal');
      const other = personNamed(open, 'student', 'Hazel Wren').id;
      reachGoal(open, agreeGoal(open, { student_id: id, lesson_id: null, text: 'Settle the needles' }));
      agreeGoal(open, { student_id: id, lesson_id: null, text: 'Hold 90 kt' });
      agreeGoal(open, { student_id: other, lesson_id: null, text: 'Of another' });
    });
    const { goals } = await recordOf('Rowan Teal');
    const today = expect.stringMatching(/^\d{4}-\d\d-\d\d$/);
    expect(goals).toEqual([
      { id: expect.any(String), text: 'Settle the needles', agreedOn: today, reachedOn: today },
      { id: expect.any(String), text: 'Hold 90 kt', agreedOn: today, reachedOn: null },
    ]);
  });

  it('prints a page, and a table', async () => {
    const page = await command(library, 'progress', '--student', 'Rowan Teal');
    expect(page.answer).toMatch(/^Over \d+ approaches in \d+ lessons, from /);
    const table = await command(library, 'progress', '--student', 'Rowan Teal', '--format', 'csv');
    expect(table.answer).toMatch(/^student,standard,/);
  });

  it('says that nothing is judged of whom there is nothing, and that there is nobody of another name', async () => {
    const page = await command(library, 'progress', '--student', 'Hazel Wren');
    expect(page).toMatchObject({
      status: 0,
      answer: expect.stringMatching(/^No approach of Hazel Wren has been/),
    });
    const nobody = await command(library, 'progress', '--student', 'Linden Siskin');
    expect(nobody).toMatchObject({ status: 2, answer: '' });
    expect(nobody.messages.join()).toContain('There is no student "Linden Siskin" in the library.');
  });

  it('copies what is missing out of the documents again, and tells the same', async () => {
    const before = await recordOf('Rowan Teal');
    await opened(library, (open) => {
      const first = from.selectFrom('approaches').select('id').where('number', '=', 1);
      open.run(from.deleteFrom('approach_facts').where('approach_id', 'in', first));
      expect(open.all(from.selectFrom('measures').selectAll().where('approach_id', 'in', first))).toEqual([]);
    });
    expect(await recordOf('Rowan Teal')).toEqual(before);
  });

  it('has no share of a debrief that tells no distance, and says why', async () => {
    const own = await libraryOf(SAMPLE);
    await opened(own, (open) => {
      for (const { id } of open.all(from.selectFrom('debriefs').select('id')))
        keepInstead(open, id, withoutMiles(readDocument(open, id)));
    });
    const line = (await recordOf('Rowan Teal', own)).lines.find(({ id }) => id === 'localizer-before-final')!;
    expect(line).toMatchObject({
      measure: 'inside-by-distance',
      notMeasured: [{ why: 'debriefed by a version that told no distance', approaches: 1 }],
    });
  });

  it('stops while it copies where it is asked to, and tells nothing', async () => {
    await opened(library, (open) => open.run(from.deleteFrom('approach_facts')));
    const answers: string[] = [];
    const messages: string[] = [];
    const status = await run(['progress', '--student', 'Rowan Teal', '--library', library], {
      answer: async (text) => answers.push(text) > 0,
      message: (line) => void messages.push(line),
      job: () => ({ progress: () => void process.emit('SIGINT'), cancelled: () => false }),
    });
    expect({ status, answers, messages }).toEqual({
      status: 2,
      answers: [],
      messages: ['halfdot: Stopped. The library is whole, and nothing was changed.'],
    });
  });

  it('names a debrief that cannot be read, which costs no other', async () => {
    const before = await recordOf('Rowan Teal');
    const name = await opened(library, (open) => {
      const { id, file_name } = open.first(
        from
          .selectFrom('debriefs')
          .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
          .select(['debriefs.id', 'file_name'])
          .where('file_name', '=', 'went-around.csv'),
      )!;
      dropFacts(open, id);
      open.run(
        from
          .updateTable('documents')
          .set({ json_gz: new Uint8Array([1, 2]) })
          .where('debrief_id', '=', id),
      );
      return file_name;
    });
    const record = await recordOf('Rowan Teal');
    expect(record.compared!.approaches).toBe(before.compared!.approaches - 1);
    expect(record.leftOut.at(-1)).toMatchObject({
      why: 'unreadable',
      count: 1,
      sentence: expect.stringContaining(name),
    });
  });
});
