import { describe, expect, it } from 'vitest';
import { linePath, thinned } from '../../../renderer/sheet/lines.ts';

const run = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Where a thinned line stands at a row: on the straight line between those that were kept. */
function drawnAt(kept: readonly number[], y: (row: number) => number, row: number): number {
  const after = kept.findIndex((one) => one >= row);
  if (after <= 0) return y(kept[0]!);
  const [a, b] = [kept[after - 1]!, kept[after]!];
  return y(a) + ((y(b) - y(a)) * (row - a)) / (b - a);
}

describe('a line thinned to its pixels', () => {
  it('of straight rows is its two ends', () => {
    expect(
      thinned(
        run(500),
        (row) => row,
        (row) => 2 * row,
      ),
    ).toEqual([0, 499]);
  });

  it('with few rows to a pixel stands within a tenth of a pixel of every one of them', () => {
    const y = (row: number) => 40 * Math.sin(row / 9) + 5 * Math.sin(row);
    const kept = thinned(run(300), (row) => row * 3, y);
    expect(kept.length).toBeLessThan(300);
    for (const row of run(300)) expect(Math.abs(drawnAt(kept, y, row) - y(row))).toBeLessThan(0.6);
  });

  it('with many rows to a pixel keeps every peak, and four rows to a pixel at most', () => {
    const y = (row: number) => (row === 7777 ? 90 : row === 3131 ? -90 : Math.sin(row));
    const kept = thinned(run(10_000), (row) => row / 100, y);
    expect(kept).toContain(7777);
    expect(kept).toContain(3131);
    expect(kept.length).toBeLessThanOrEqual(4 * 101);
    expect([kept[0], kept.at(-1)]).toEqual([0, 9999]);
    expect(kept).toEqual([...kept].sort((a, b) => a - b));
  });

  it('keeps the bends of both edges of an area', () => {
    const bent = (at: number) => (row: number) => Math.abs(row - at) * 3;
    expect(thinned(run(100), (row) => row * 5, bent(30), bent(70))).toEqual([0, 30, 70, 99]);
  });

  it('keeps how far it went before it turned back over itself', () => {
    const there = (row: number) => (row <= 50 ? row : 100 - row);
    expect(
      thinned(
        run(101),
        (row) => there(row) * 4,
        () => 0,
      ),
    ).toEqual([0, 50, 100]);
  });

  it('of nothing, or of one row, is that', () => {
    expect(
      thinned(
        [],
        (row) => row,
        (row) => row,
      ),
    ).toEqual([]);
    expect(
      thinned(
        [4],
        (row) => row,
        (row) => row,
      ),
    ).toEqual([4]);
    expect(
      linePath(
        [],
        (row) => row,
        (row) => row,
      ),
    ).toBe('');
  });
});
