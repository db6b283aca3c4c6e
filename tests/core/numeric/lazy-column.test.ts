import { describe, expect, it } from 'vitest';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';

const LENGTH = 5000;

/** A column whose values are their places, and which places were worked out. */
function counted() {
  let worked = 0;
  const column = new LazyColumn(LENGTH, (block, first) => {
    worked += block.length;
    for (let k = 0; k < block.length; k++) block[k] = first + k;
  });
  return { column, workedOut: () => worked };
}

describe('a column that is worked out as it is asked for', () => {
  it('has the value of every place, in whatever order they are asked for', () => {
    const { column } = counted();
    for (const i of [4999, 0, 1023, 1024, 2500]) expect(column.at(i)).toBe(i);
  });

  it('works each value out once, and few that nobody asked for', () => {
    const { column, workedOut } = counted();
    for (let k = 0; k < 3; k++) for (let i = 2000; i < 2100; i++) column.at(i);
    expect(workedOut()).toBeLessThan(2100);
    for (let i = 0; i < LENGTH; i++) column.at(i);
    expect(workedOut()).toBe(LENGTH);
  });

  it('is unknown outside', () => {
    const { column, workedOut } = counted();
    expect([column.at(-1), column.at(LENGTH), column.at(NaN)]).toEqual([NaN, NaN, NaN]);
    expect(workedOut()).toBe(0);
  });

  it('gives a copy of any part of it, of which it works out little more than was asked for', () => {
    for (const [first, end] of [
      [0, 0],
      [0, 1],
      [255, 257],
      [256, 512],
      [1021, 2050],
      [4990, LENGTH],
      [0, LENGTH],
    ] as const) {
      const { column, workedOut } = counted();
      const part = column.slice(first, end);
      expect(part).toEqual(Float64Array.from({ length: end - first }, (_, k) => first + k));
      expect(workedOut()).toBeLessThanOrEqual(end - first + 2 * 255);
      part.fill(-1);
      expect(column.slice(first, end)[0]).toBe(end > first ? first : undefined);
    }
  });
});
