import { describe, expect, it } from 'vitest';
import { findGaps } from '../../../core/track/gaps.ts';

describe('findGaps', () => {
  it('calls no interval of exactly 5 s at 1 Hz a gap, and one a moment longer a gap', () => {
    expect(findGaps(Float64Array.of(0, 1, 2, 3, 8, 9)).gaps).toEqual([]);
    expect(findGaps(Float64Array.of(0, 1, 2, 3, 8.01, 9)).gaps).toEqual([
      { beforeIndex: 3, startS: 3, endS: 8.01 },
    ]);
  });

  it('goes by three times the median interval when that is longer', () => {
    const slow = findGaps(Float64Array.of(0, 4, 8, 12, 24, 28, 41));
    expect(slow.medianIntervalS).toBe(4);
    expect(slow.gapLimitS).toBe(12);
    expect(slow.gaps).toEqual([{ beforeIndex: 5, startS: 28, endS: 41 }]);
  });

  it('has no median and no gap for one fix', () => {
    expect(findGaps(Float64Array.of(7)).medianIntervalS).toBeNaN();
    expect(findGaps(Float64Array.of(7)).gaps).toEqual([]);
  });
});
