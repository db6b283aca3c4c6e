import { expect, it } from 'vitest';
import { openedWords } from '../../renderer/state/opened-words.ts';

// Times of this machine, wherever it is.
const local = (...parts: [number, number, number, number, number]) => new Date(...parts);
const words = (opened: Date, now: Date) => openedWords(opened.toISOString(), now);

it.each([
  ['today at 00:05', local(2026, 10, 26, 0, 5), local(2026, 10, 26, 23, 59)],
  ['yesterday at 23:59', local(2026, 10, 25, 23, 59), local(2026, 10, 26, 0, 0)],
  ['2026-11-24 at 09:03', local(2026, 10, 24, 9, 3), local(2026, 10, 26, 9, 3)],
  ['yesterday at 12:00', local(2025, 11, 31, 12, 0), local(2026, 0, 1, 12, 0)],
  // A clock that was put back is no reason to say something odd.
  ['2026-11-27 at 08:00', local(2026, 10, 27, 8, 0), local(2026, 10, 26, 8, 0)],
  // Days of 23 and 25 hours, where there are any.
  ['yesterday at 23:30', local(2026, 2, 28, 23, 30), local(2026, 2, 29, 0, 30)],
  ['yesterday at 00:30', local(2026, 9, 25, 0, 30), local(2026, 9, 26, 23, 30)],
])('a log was opened %s', (said, opened, now) => {
  expect(words(opened, now)).toBe(`opened ${said}`);
});
