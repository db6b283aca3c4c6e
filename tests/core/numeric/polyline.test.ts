import { describe, expect, it } from 'vitest';
import { clip, durationS, firstAfter, valueAt } from '../../../core/numeric/polyline.ts';
import { line } from './line.ts';

const of = (...values: number[]) => Float64Array.from(values);
const clipped = (timeS: number[], values: number[], startS: number, endS: number, gapLimitS = 5) =>
  clip(of(...timeS), of(...values), { startS, endS }, gapLimitS);

describe('clip', () => {
  it('interpolates both ends', () => {
    expect(clipped([0, 2, 4], [0, 20, 0], 1, 3)).toEqual([line([1, 2, 3], [10, 20, 10])]);
  });
  it('takes whole intervals when the ends are fixes, and gives back their own values', () => {
    expect(clipped([0, 1, 2, 3], [0.1, 0.2, 0.3, 0.4], 1, 2)).toEqual([line([1, 2], [0.2, 0.3])]);
  });
  it('cuts both ends out of one interval', () => {
    expect(clipped([0, 4], [0, 8], 1, 2)).toEqual([line([1, 2], [2, 4])]);
  });
  it('parts at an interval longer than the limit and keeps one exactly as long', () => {
    expect(clipped([0, 5, 10.5, 11], [1, 2, 3, 4], 0, 20)).toEqual([
      line([0, 5], [1, 2]),
      line([10.5, 11], [3, 4]),
    ]);
  });
  it('parts at a missing value', () => {
    expect(clipped([0, 1, 2, 3, 4], [1, 2, NaN, 4, 5], 0, 4)).toEqual([
      line([0, 1], [1, 2]),
      line([3, 4], [4, 5]),
    ]);
  });
  it('holds no more than was recorded, and nothing where nothing was', () => {
    expect(clipped([0, 1], [1, 2], -5, 9)).toEqual([line([0, 1], [1, 2])]);
    expect(clipped([0, 1], [1, 2], 5, 9)).toEqual([]);
    expect(clipped([0, 1], [1, 2], -5, 0)).toEqual([]);
    expect(clipped([0, 1], [1, 2], 0.5, 0.5)).toEqual([]);
    expect(clipped([0], [1], -1, 1)).toEqual([]);
    expect(clipped([], [], 0, 1)).toEqual([]);
  });
});

describe('valueAt', () => {
  const timeS = of(0, 1, 2, 10);
  const value = of(0, 10, NaN, 40);
  it.each([
    ['between two fixes', 0.25, 2.5],
    ['at a fix', 1, 10],
    ['at the last fix', 10, 40],
    ['before the first', -1, NaN],
    ['after the last', 11, NaN],
    ['beside a missing value', 1.5, NaN],
    ['across a gap', 5, NaN],
  ])('%s', (_name, s, expected) => expect(valueAt(timeS, value, s, 5)).toBe(expected));
});

it('firstAfter finds the first later time', () => {
  expect(firstAfter(of(1, 2, 3), 2)).toBe(2);
  expect(firstAfter(of(1, 2, 3), 0)).toBe(0);
  expect(firstAfter(of(1, 2, 3), 3)).toBe(3);
});

it('durationS adds up parts', () => {
  expect(durationS([])).toBe(0);
  expect(durationS(clipped([0, 1, 20, 22], [1, 1, 1, 1], 0, 99))).toBe(3);
});
