import { expect, it } from 'vitest';
import { sourceFiles } from '../../house/source-files.ts';

it('every message of the room ends as a sentence does', () => {
  const made = sourceFiles('core/facility').flatMap(({ path, text }) =>
    [...text.matchAll(/(?:issue\('\w+', |refused\()'facility-[\w-]+', ([^,)]+)/g)].map(
      ([, message]) => `${path}: ${message!}`,
    ),
  );
  expect(made.length).toBeGreaterThan(15);
  expect(made.filter((message) => !/\.[`']$/.test(message))).toEqual([]);
});
