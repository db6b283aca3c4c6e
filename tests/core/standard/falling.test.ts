import { describe, expect, it } from 'vitest';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';
import { fallsToS } from '../../../core/standard/falling.ts';
import { makeFlown } from '../approach/make-flown.ts';

/** A fix a second from 100 s on, with none from 110 s to 120 s; heights fall by 10 a second from 1,000. */
const timeS = Float64Array.from({ length: 40 }, (_, i) => 100 + (i <= 10 ? i : i + 9));
const falling = timeS.map((s) => 1000 - 10 * (s - 100));
const { track } = makeFlown({ timeS: [...timeS] });
const lazily = new LazyColumn(falling.length, (block, first) =>
  block.set(falling.subarray(first, first + block.length)),
);

describe.each([
  ['as it stands', falling],
  ['that is worked out as it is asked for', lazily],
])('a column %s', (_, column) => {
  const to = (level: number, startS: number, endS: number) =>
    fallsToS({ track }, { startS, endS }, column, level);

  it('falls to a level between fixes', () => {
    expect(to(955, 100, 130)).toBeCloseTo(104.5, 9);
    expect(to(955, 104.25, 104.75)).toBeCloseTo(104.5, 9);
  });

  it('is there from the start where it was so already', () => {
    expect(to(955, 106.3, 130)).toBe(106.3);
    expect(to(1000, 100, 130)).toBe(100);
  });

  it('is not there before the end of the span, nor below what was flown', () => {
    expect(to(955, 100, 104.4)).toBeNull();
    expect(to(0, 100, 1000)).toBeNull();
    expect(to(955, 103, 103)).toBeNull();
  });

  it('has passed a level within a gap where it is seen again', () => {
    expect(to(850, 100, 130)).toBe(120);
    expect(to(850, 112, 130)).toBe(120);
  });

  it('begins and ends with the track', () => {
    expect(to(995, 0, 1000)).toBeCloseTo(100.5, 9);
    expect(to(2000, 0, 1000)).toBe(100);
    expect(to(0, 500, 1000)).toBeNull();
  });
});
