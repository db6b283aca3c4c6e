import { describe, expect, it } from 'vitest';
import { airacCycle } from '../../../core/facility/airac.ts';

describe('the days of a cycle', () => {
  it.each([
    ['2001', '2020-01-02', '2020-01-29', 'national tables of 2020, second-hand'],
    ['2006', '2020-05-21', '2020-06-17', 'the same'],
    ['2013', '2020-12-03', '2020-12-30', 'the same'],
    ['2014', '2020-12-31', '2021-01-27', 'the same: the rare fourteenth'],
    ['2101', '2021-01-28', '2021-02-24', 'the same'],
    ['2609', '2026-09-03', '2026-09-30', 'FAA CIFP, its header: effective 3 September 2026'],
    ['2602', '2026-02-19', '2026-03-18', 'computed'],
    ['1813', '2018-12-06', '2019-01-02', 'computed'],
    ['4314', '2043-12-31', '2044-01-27', 'the next fourteenth (from memory: 2043)'],
  ])('%s: %s to %s (%s)', (cycle, firstDay, lastDay) => {
    expect(airacCycle(cycle)).toEqual({ cycle, firstDay, lastDay });
  });

  it.each(['2600', '2614', '2699', '269', '26o9', '', '02609'])('"%s" is no cycle', (cycle) => {
    expect(airacCycle(cycle)).toBeNull();
  });

  it('follow one another without a gap for forty years', () => {
    const cycles = Array.from({ length: 40 * 14 }, (_, at) => {
      const year = String(20 + Math.floor(at / 14));
      return airacCycle(`${year}${String((at % 14) + 1).padStart(2, '0')}`);
    }).filter((cycle) => cycle !== null);
    expect(cycles.length).toBeGreaterThan(40 * 13);
    for (const [at, { firstDay }] of cycles.entries()) {
      const before = cycles[at - 1];
      if (before) expect(Date.parse(firstDay) - Date.parse(before.lastDay)).toBe(86_400_000);
      expect(new Date(firstDay).getUTCDay()).toBe(4);
    }
  });
});
