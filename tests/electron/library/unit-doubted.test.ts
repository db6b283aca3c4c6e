import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Progress } from '../../../core/progress/progress.ts';
import type { School } from '../../../core/progress/school/school.ts';
import { FEET_PER_METRE } from '../../../core/units/units.ts';
import { bareLog } from '../../support/files/bare-log.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { straightInLanding } from '../../support/scenarios/approaches.ts';
import { command, FACILITY, libraryOf, manyLogs, newFolder } from './some-library.ts';

const STUDENT = ['--student', 'Rowan Teal'];

/** A landing in metres whose column names no unit. */
function inMetres(): string {
  const path = join(newFolder(), 'in-metres.csv');
  writeFileSync(
    path,
    bareLog(fly(straightInLanding(PETRELHOLM)), 'alt', (ft) => ft / FEET_PER_METRE),
  );
  return path;
}

it('heights in a unit that is doubted are in no figure of a record, which says so, until the unit is stated', async () => {
  const library = await libraryOf(manyLogs(1));
  const log = inMetres();
  const json = async <T>(...words: string[]) =>
    JSON.parse((await command(library, 'progress', ...words, '--format', 'json')).answer) as T;
  expect(await command(library, 'import', log, '--facility', FACILITY, ...STUDENT)).toMatchObject({
    status: 0,
  });
  const { compared, leftOut } = await json<Progress>(...STUDENT);
  expect(compared!.approaches).toBe(1);
  expect(leftOut).toMatchObject([{ why: 'unit-doubted', count: 1, later: 1 }]);
  for (const words of [STUDENT, [...STUDENT, '--format', 'html']]) {
    const { answer } = await command(library, 'progress', ...words);
    expect(answer.replaceAll(/\s+/g, ' ')).toContain('in another unit than they were read in');
  }
  for (const measure of ['stability', 'level']) {
    const { outcomes, coverage, students } = await json<School>('--measure', measure);
    expect(outcomes!.decided + outcomes!.unclear + outcomes!.notAssessed).toBe(1);
    expect(coverage).toMatchObject({ unitDoubted: 1, notHeld: 0, byDraft: 0 });
    expect(students[0]!.lessons.reduce((sum, { approaches }) => sum + approaches, 0)).toBe(1);
  }

  await command(library, 'import', log, '--facility', FACILITY, '--unit', 'alt=m', '--again', 'yes');
  const stated = await json<Progress>(...STUDENT);
  expect([stated.compared!.approaches, stated.leftOut]).toEqual([2, []]);
  const { coverage } = await json<School>('--measure', 'level');
  expect(coverage.unitDoubted).toBe(0);
});
