import { describe, expect, it } from 'vitest';
import { byMargin, firstCrossing, firstHold } from '../../../core/approach/hold.ts';

function track(timeS: number[], gapLimitS = 5) {
  return { timeS: Float64Array.from(timeS), gapLimitS };
}
const all = (values: ArrayLike<number>) => ({ first: 0, last: values.length - 1 });
const seconds = (n: number) => Array.from({ length: n }, (_, i) => i);

describe('firstHold', () => {
  const hold = (margins: number[][], forS: number, timeS = seconds(margins[0]!.length), gapLimitS = 5) =>
    firstHold(
      track(timeS, gapLimitS),
      all(timeS),
      margins.map((margin) => byMargin((i) => margin[i]!)),
      forS,
    );

  it('begins where the last condition comes in, between fixes', () => {
    // The first passes zero at 0.25, the second at 1.5.
    expect(
      hold(
        [
          [-1, 3, 3, 3, 3, 3],
          [-1, -1, 1, 1, 1, 1],
        ],
        3,
      ),
    ).toBe(1.5);
  });

  it('begins at the first fix when the conditions hold there already', () => {
    expect(hold([[1, 1, 1, 1]], 3)).toBe(0);
  });

  it('counts up to where the first condition goes out, between fixes', () => {
    expect(hold([[-1, 1, 1, 1, -1]], 3)).toBe(0.5);
    expect(hold([[-1, 1, 1, 1, -1]], 3.01)).toBeNull();
  });

  it('takes exactly zero for holding', () => {
    expect(hold([[0, 0, 0]], 2)).toBe(0);
  });

  it('starts again after an interruption', () => {
    expect(hold([[1, 1, -1, 1, 1, 1, 1]], 3)).toBe(2.5);
  });

  it('does not span a gap', () => {
    expect(hold([[1, 1, 1, 1]], 3, [0, 1, 20, 21])).toBeNull();
    expect(hold([[1, 1, 1, 1, 1]], 2, [0, 1, 20, 21, 22])).toBe(20);
  });

  it('does not hold where a value is missing, and does not guess towards it', () => {
    expect(hold([[NaN, 1, 1, 1]], 2)).toBe(1);
    expect(hold([[1, 1, 1, NaN]], 2)).toBe(0);
    expect(hold([[1, 1, NaN, 1, 1]], 2)).toBeNull();
  });

  it('with no duration asked gives the moment that the conditions come in', () => {
    expect(hold([[-3, -1, 1]], 0)).toBe(1.5);
    expect(hold([[-3, -1, -1]], 0)).toBeNull();
  });
});

describe('firstCrossing', () => {
  const crossing = (values: number[], level: number, options = {}, timeS = seconds(values.length)) =>
    firstCrossing(track(timeS), all(values), Float64Array.from(values), level, options);

  it('interpolates the moment of falling to a level', () => {
    expect(crossing([10, 6, 2], 5)).toBe(1.25);
    expect(crossing([10, 5, 2], 5)).toBe(1);
  });
  it('rises only when asked to', () => {
    expect(crossing([2, 6, 10], 5)).toBeNull();
    expect(crossing([2, 6, 10], 5, { rising: true })).toBe(0.75);
  });
  it('passes over crossings before a moment', () => {
    expect(crossing([6, 4, 6, 4], 5, { afterS: 1 })).toBe(2.5);
  });
  it('is not made across a gap or beside a missing value', () => {
    expect(crossing([6, 4], 5, {}, [0, 60])).toBeNull();
    expect(crossing([6, NaN, 4], 5)).toBeNull();
  });
});
