import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetColumns } from '../../../core/sheet/sheet.ts';
import { linePath, thinned } from '../../../renderer/sheet/lines.ts';
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

describe('a thinned line', () => {
  const run = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 3000, maxLength: 5000 });

  it('keeps in every pixel column its first, lowest, highest and last, in their order', () => {
    fc.assert(
      fc.property(run, fc.integer({ min: 20, max: 400 }), (values, widthPx) => {
        const rows = values.map((_, row) => row);
        const x = (row: number) => (row / values.length) * widthPx;
        const y = (row: number) => values[row]!;
        const kept = thinned(rows, x, y);
        expect(kept.length).toBeLessThanOrEqual(4 * (widthPx + 1));
        expect(kept).toEqual([...kept].sort((a, b) => a - b));
        const columnOf = (row: number) => Math.floor(x(row));
        for (let column = 0; column < widthPx; column++) {
          const all = rows.filter((row) => columnOf(row) === column);
          if (all.length === 0) continue;
          const left = kept.filter((row) => columnOf(row) === column);
          expect(Math.min(...left.map(y))).toBe(Math.min(...all.map(y)));
          expect(Math.max(...left.map(y))).toBe(Math.max(...all.map(y)));
          expect([left[0], left.at(-1)]).toEqual([all[0], all.at(-1)]);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('is drawn as it is where there are few', () => {
    const path = linePath(
      [[0, 1, 2]],
      (row) => row * 10,
      (row) => row,
    );
    expect(path).toBe('M0,0L10,1L20,2');
  });
});
