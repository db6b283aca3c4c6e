import { describe, expect, it } from 'vitest';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';

const LENGTH = 5000;
const timeS = Float64Array.from({ length: LENGTH }, (_, i) => 100 + i / 2);

/** A column whose values are their places, and which places were worked out. */
function counted() {
  const asked: [first: number, end: number][] = [];
  const column = new LazyColumn(LENGTH, (values, first, end) => {
    asked.push([first, end]);
    for (let i = first; i < end; i++) values[i] = i;
  });
  const workedOut = () => asked.reduce((sum, [first, end]) => sum + end - first, 0);
  return { column, workedOut };
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

  it('holds the fixes of a span, the one before it and the one after it', () => {
    const { column, workedOut } = counted();
    // From between the places 1021 and 1022 to between 2048 and 2049.
    const values = column.within(timeS, { startS: 100 + 1021.5 / 2, endS: 100 + 2048.5 / 2 });
    for (let i = 1021; i <= 2049; i++) expect(values[i]).toBe(i);
    expect(workedOut()).toBeLessThan(LENGTH);
  });

  it('holds what there is of a span that reaches beyond its ends', () => {
    const values = counted().column.within(timeS, { startS: 0, endS: 1e9 });
    expect(values.every((value, i) => value === i)).toBe(true);
    expect(counted().column.within(timeS, { startS: 1e9, endS: 2e9 })).toHaveLength(LENGTH);
  });
});
