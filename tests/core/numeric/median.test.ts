import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median } from '../../../core/numeric/median.ts';

describe('median', () => {
  it.each([
    ['the one value', [4], 4],
    ['the middle of an odd number', [9, 1, 5], 5],
    ['the mean of the two in the middle', [4, 1, 3, 2], 2.5],
    ['values, passing over NaN', [NaN, 2, NaN, 8], 5],
    ['equal values', [3, 3, 3, 3], 3],
  ])('is %s', (_name, values, expected) => expect(median(values)).toBe(expected));

  it('of nothing, or of nothing but NaN, is not a number', () => {
    expect(median([])).toBeNaN();
    expect(median([NaN, NaN])).toBeNaN();
  });

  it('keeps the order of its input', () => {
    const values = new Float64Array([3, 1, 2]);
    median(values);
    expect([...values]).toEqual([3, 1, 2]);
  });

  it('agrees with sorting', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 40 }), (values) => {
        const sorted = [...values].sort((a, b) => a - b);
        const middle = sorted.length >> 1;
        const expected = sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
        expect(median(values)).toBe(expected);
      }),
    );
  });
});
