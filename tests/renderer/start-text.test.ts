import { describe, expect, it } from 'vitest';
import { startFrom } from '../../core/log/start-text.ts';
import { startProblem, startWords } from '../../renderer/state/start-text.ts';

const NINE_S = Date.UTC(2026, 4, 1, 9) / 1000;

describe('the start of a log as it is typed', () => {
  it.each([
    ['2026-05-01 09:00', NINE_S],
    ['2026-05-01T09:00:00Z', NINE_S],
    ['2026-05-01 09:00 UTC', NINE_S],
    ['2026-05-01 11:00+02:00', NINE_S],
    ['2026-05-01  09:00:30.5', NINE_S + 30.5],
  ])('%s is one, in UTC unless it says otherwise', (text, startS) => {
    expect(startFrom(text)).toBe(startS);
    expect(startProblem(text)).toBeNull();
  });

  it.each([
    'noon',
    '09:00',
    '2026-05-01',
    '1.5.2026 09:00',
    '2026-02-30 09:00',
    '2026-05-01 25:00',
    '2026-13-01 09:00',
  ])('%s is none, and that is said', (text) => {
    expect(startFrom(text)).toBeNull();
    expect(startProblem(text)).toBe('Write day and time, as 2026-05-01 09:00.');
  });

  it('is written as it can be typed', () => {
    expect(startWords(undefined)).toBe('');
    expect(startWords(NINE_S)).toBe('2026-05-01 09:00');
    expect(startFrom(startWords(NINE_S + 30))).toBe(NINE_S + 30);
  });
});
