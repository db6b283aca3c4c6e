import { describe, expect, it } from 'vitest';
import { resample, swingsOf } from '../../../core/approach/swings.ts';
import { every, line } from '../numeric/line.ts';

const sizes = (...value: number[]) => swingsOf(every(1, value), 2).map(({ from, to }) => to - from);

describe('swingsOf', () => {
  it('finds movements from turning point to turning point', () => {
    expect(sizes(0, 3, 0, -3, 0)).toEqual([3, -6, 3]);
    expect(swingsOf(every(1, [0, 1, 3, 1, 0]), 2)).toEqual([
      { startS: 0, endS: 2, from: 0, to: 3 },
      { startS: 2, endS: 4, from: 3, to: 0 },
    ]);
  });
  it('passes over wiggles within a swing', () => expect(sizes(0, 1.5, 0.5, 3, 2, 5)).toEqual([5]));
  it('takes exactly the least for a swing, and nothing less', () => {
    expect(sizes(0, 2)).toEqual([2]);
    expect(sizes(0, 1.99, 0, 1.99)).toEqual([]);
  });
  it('keeps the turning point when one step falls below where the swing began', () => {
    expect(sizes(0, 3, -5)).toEqual([3, -8]);
    expect(sizes(0, -3, 5)).toEqual([-3, 8]);
  });
  it('counts a drift that comes before the first swing into it', () => {
    expect(sizes(1, 0, 1, 2.5)).toEqual([2.5]);
  });
});

describe('resample', () => {
  it('takes values every second from the start of the line', () => {
    expect(resample(line([10.5, 12.5, 13.7], [0, 4, 4]), 1)).toEqual(
      line([10.5, 11.5, 12.5, 13.5], [0, 2, 4, 4]),
    );
  });
  it('thins a fast line', () => {
    const fast = every(0.25, [0, 1, 2, 3, 4]);
    expect(resample(fast, 0.5)).toEqual(every(0.5, [0, 2, 4]));
  });
});
