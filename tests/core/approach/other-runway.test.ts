import { describe, expect, it } from 'vitest';
import { otherRunwayFt } from '../../../core/approach/other-runway.ts';
import { makeFlown, wholeOf, type Making } from './make-flown.ts';

/** From 2.5 NM to beyond the threshold, passed at 100 s, 1,000 ft to the right, and 100 ft up at the end. */
const beside = (making: Making) => {
  const flown = makeFlown({
    untilS: 120,
    distanceNm: (s) => (100 - s) / 40,
    heightFt: (s) => Math.max(100, 900 - 8 * s),
    offsetFt: 1000,
    ...making,
  });
  return otherRunwayFt(flown, wholeOf(flown));
};
/** 1,000 ft but for one fix on either side, as far from it. */
const swinging = (byFt: number) => (s: number) => 1000 + (s === 30 ? byFt : s === 50 ? -byFt : 0);

describe('another runway', () => {
  it('is flown to beside the centreline, low, at one distance from it', () => {
    expect(beside({})).toBe(1000);
    expect(beside({ offsetFt: -1000 })).toBe(-1000);
    expect(beside({ offsetFt: 0 })).toBeNull();
  });

  it('lies more than 400 ft beside', () => {
    expect(beside({ offsetFt: 400 })).toBeNull();
    expect(beside({ offsetFt: 400.1 })).toBe(400.1);
  });

  it('lies outside the runway’s width by more than the position error', () => {
    expect(beside({ offsetFt: 450, facility: { widthFt: 800 } })).toBeNull();
    expect(beside({ offsetFt: 450.1, facility: { widthFt: 800 } })).toBe(450.1);
  });

  it('is flown to within 400 ft of one distance, and no more', () => {
    expect(beside({ offsetFt: swinging(400) })).toBe(1000);
    expect(beside({ offsetFt: swinging(401) })).toBeNull();
  });

  it('is not told by what was flown off the scale', () => {
    const localizer = (s: number) => (s === 30 || s === 50 ? 1.001 : 0.5);
    expect(beside({ offsetFt: swinging(3000), localizer })).toBe(1000);
    expect(beside({ localizer: 1.001 })).toBeNull();
  });

  it('is reached below 500 ft, and nothing is told without a height', () => {
    expect(beside({ heightFt: 499.9 })).toBe(1000);
    expect(beside({ heightFt: 500 })).toBeNull();
    expect(beside({ heightFt: NaN })).toBeNull();
  });
});
