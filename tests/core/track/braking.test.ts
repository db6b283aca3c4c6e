import { describe, expect, it } from 'vitest';
import { firstBraking } from '../../../core/track/braking.ts';

/** Fixes a second apart. */
const trackOf = (groundspeedKt: readonly number[], gapLimitS = 3) => ({
  timeS: Float64Array.from(groundspeedKt, (_, i) => i),
  groundspeedKt: Float64Array.from(groundspeedKt),
  gapLimitS,
});
/** 60 kt for ten seconds, then slower by so much a second. */
const slowing = (ktPerS: number) =>
  trackOf(Array.from({ length: 20 }, (_, i) => 60 - ktPerS * Math.max(0, i - 10)));

describe('firstBraking', () => {
  it('is where 4 kt are lost between 2 s before and 2 s after', () => {
    // By 2 kt a second from 10 s on: 4 kt less at 12 s, and so at 10 s ± 2 s.
    expect(firstBraking(slowing(2), 0, 19)).toBe(10);
    expect(firstBraking(slowing(1), 0, 19)).toBe(12);
    expect(firstBraking(slowing(2), 14, 19)).toBe(14);
  });

  it('is nowhere where speed is lost more slowly, is not recorded on both sides, or is gained', () => {
    expect(firstBraking(slowing(0.9), 0, 19)).toBeNull();
    expect(firstBraking(slowing(-2), 0, 19)).toBeNull();
    expect(firstBraking(slowing(2), 18, 19)).toBeNull();
    expect(firstBraking(trackOf([]), 0, -1)).toBeNull();
  });
});
