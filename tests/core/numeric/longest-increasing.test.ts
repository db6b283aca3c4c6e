import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestIncreasing } from '../../../core/numeric/longest-increasing.ts';

const indices = (values: number[]) => [...longestIncreasing(Float64Array.from(values))];

describe('longestIncreasing', () => {
  it.each([
    ['nothing', [], []],
    ['one value', [7], [0]],
    ['an increasing run', [1, 2, 3], [0, 1, 2]],
    ['the earlier of two equal values', [1, 2, 2, 3], [0, 1, 3]],
    ['a run with one value far ahead', [1, 99, 2, 3, 4], [0, 2, 3, 4]],
    ['a run with one value that goes back', [5, 6, 1, 7, 8], [0, 1, 3, 4]],
    ['the first of a falling run', [3, 2, 1], [0]],
    ['the earlier of two stretches that clash', [10, 11, 5, 6, 12], [0, 1, 4]],
  ])('keeps %s', (_name, values, expected) => expect(indices(values)).toEqual(expected));

  it('is increasing and as long as the longest run found by trying all', () => {
    const longestByTrying = (values: number[]) => {
      const best = values.map(() => 1);
      values.forEach((value, i) => {
        for (let k = 0; k < i; k++) if (values[k]! < value) best[i] = Math.max(best[i]!, best[k]! + 1);
      });
      return Math.max(0, ...best);
    };
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 30 }), (values) => {
        const kept = indices(values);
        expect(kept.length).toBe(longestByTrying(values));
        for (let k = 1; k < kept.length; k++) {
          expect(kept[k]!).toBeGreaterThan(kept[k - 1]!);
          expect(values[kept[k]!]!).toBeGreaterThan(values[kept[k - 1]!]!);
        }
      }),
    );
  });
});
