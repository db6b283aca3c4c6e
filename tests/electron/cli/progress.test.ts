import { expect, it } from 'vitest';
import { progressLine } from '../../../electron/cli/progress.ts';

it('says nothing in the first second, then at most a line a second', () => {
  const said: string[] = [];
  let nowMs = 0;
  const job = progressLine(
    'Reading a.csv',
    (line) => said.push(line),
    () => nowMs,
  );
  for (nowMs = 0; nowMs <= 3500; nowMs += 100) job.progress(nowMs / 3500);
  expect(said).toEqual(['Reading a.csv … 29 %', 'Reading a.csv … 57 %', 'Reading a.csv … 86 %']);
  nowMs = 9000;
  job.progress(null);
  expect(said.at(-1)).toBe('Reading a.csv …');
  expect(job.cancelled()).toBe(false);
});
