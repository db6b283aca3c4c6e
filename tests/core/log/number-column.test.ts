import { describe, expect, it } from 'vitest';
import { NumberColumn } from '../../../core/log/number-column.ts';

function filled(values: readonly number[], expected?: number): NumberColumn {
  const column = new NumberColumn(expected);
  for (const value of values) column.push(value);
  return column;
}
const counting = (length: number) => Array.from({ length }, (_, i) => i);

describe('a column of numbers', () => {
  it.each([0, 10, 9000, 100_000])('gives back what came, whatever number was expected (%d)', (expected) => {
    const column = filled(counting(50_000), expected);
    expect(column.length).toBe(50_000);
    expect([...column.take()]).toEqual(counting(50_000));
  });

  it('takes no memory until the first number comes, and then holds what came before it', () => {
    const column = filled(Array.from({ length: 20_000 }, () => NaN));
    expect([column.isVoid, column.length]).toEqual([true, 20_000]);
    column.push(7);
    column.push(NaN);
    expect(column.isVoid).toBe(false);
    const values = column.take();
    expect([values.length, values.indexOf(7), values[0], values[20_001]]).toEqual([20_002, 20_000, NaN, NaN]);
  });

  it('of which none came is unknown throughout', () => {
    expect([...filled([NaN, NaN]).take()]).toEqual([NaN, NaN]);
    expect([...filled([]).take()]).toEqual([]);
  });

  it('is empty after it was taken, and can be filled again', () => {
    const column = filled([1, 2]);
    column.take();
    expect([column.length, column.isVoid]).toEqual([0, true]);
    column.push(3);
    expect([...column.take()]).toEqual([3]);
  });
});
