import { describe, expect, it } from 'vitest';
import { orderFixes } from '../../../core/track/order-fixes.ts';
import { makeLog } from './make-log.ts';

const at = (timeS: number[], latDeg = timeS.map((_, i) => 1 + i / 100), lonDeg = timeS.map(() => 2)) =>
  orderFixes(makeLog({ timeS, latDeg, lonDeg }));

describe('orderFixes', () => {
  it('keeps all rows of an orderly log, and says nothing', () => {
    expect(at([1, 2, 3])).toEqual({ rows: null, issues: [] });
    expect(at([])).toEqual({ rows: null, issues: [] });
  });

  it('leaves out a repeated time and keeps the first of the two', () => {
    const { rows, issues } = at([1, 2, 2, 3]);
    expect([...rows!]).toEqual([0, 1, 3]);
    expect(issues).toMatchObject([{ code: 'time-repeated', severity: 'note', count: 1, firstLine: 4 }]);
  });

  it('leaves out times that go back', () => {
    const { rows, issues } = at([10, 11, 5, 6, 12, 13, 14]);
    expect([...rows!]).toEqual([0, 1, 4, 5, 6]);
    expect(issues).toMatchObject([{ code: 'time-backwards', count: 2, firstLine: 4 }]);
    expect(issues[0]!.message).toContain('2 fixes were left out');
  });

  it('gives up one wrong time far ahead and not the flight after it', () => {
    const { rows, issues } = at([1, 9999, 2, 3, 4]);
    expect([...rows!]).toEqual([0, 2, 3, 4]);
    expect(issues).toMatchObject([{ code: 'time-backwards', count: 1, firstLine: 3 }]);
    expect(issues[0]!.message).toContain('1 fix was left out');
  });

  it('leaves out (0, 0) but not a fix that crosses one of the two', () => {
    const { rows, issues } = at([1, 2, 3, 4], [5, 0, 0, 5], [0, 0, 5, 5]);
    expect([...rows!]).toEqual([0, 2, 3]);
    expect(issues).toMatchObject([{ code: 'position-zero', count: 1, firstLine: 3 }]);
  });
});
