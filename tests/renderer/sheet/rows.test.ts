import { describe, expect, it } from 'vitest';
import type { SheetColumns } from '../../../core/sheet/sheet.ts';
import { partsWhere, rowAt, runsIn, valueAtRow, withCrossings } from '../../../renderer/sheet/rows.ts';

const columns = (timeS: number[], gaps: number[] = []) =>
  ({
    timeS: Float64Array.from(timeS),
    gapBefore: Uint8Array.from(timeS, (_, row) => Number(gaps.includes(row))),
  }) as unknown as SheetColumns;

describe('rows between fixes', () => {
  it('stand at their moment, and have the value on the line between their neighbours', () => {
    const some = columns([10, 11, 13, 20]);
    expect([9, 10, 12, 20, 99].map((s) => rowAt(some, s))).toEqual([0, 0, 1.5, 3, 3]);
    expect(valueAtRow([0, 10, 30], 1.5)).toBe(20);
    expect(valueAtRow([0, 10, 30], 2)).toBe(30);
    expect(valueAtRow([0, NaN, 30], 0.5)).toBeNaN();
  });

  it('run from the first moment of a span to its last, parted at gaps and at what is not known', () => {
    const some = columns([0, 1, 2, 3, 4, 5, 6, 7], [5]);
    const value = (row: number) => (row === 2 ? NaN : row);
    expect(runsIn(some, { startS: 0.5, endS: 7 }, value)).toEqual([
      [0.5, 1],
      [3, 4],
      [5, 6, 7],
    ]);
    expect(runsIn(some, { startS: 2.5, endS: 4.5 }, (row) => row)).toEqual([[2.5, 3, 4]]);
  });

  it('are set in where a limit is crossed', () => {
    const off = (row: number) => row - 1.25;
    expect(withCrossings([0, 1, 2, 3], off)).toEqual([0, 1, 1.25, 2, 3]);
    expect(partsWhere([0, 1, 1.25, 2, 3], (row) => off(row) >= 0)).toEqual([[1.25, 2, 3]]);
  });
});
