import { describe, expect, it } from 'vitest';
import { findClimb, missedApproachStartS } from '../../../core/approach/climb.ts';
import { makeFlown, THRESHOLD_FT, wholeOf, type Making } from './make-flown.ts';

const climb = (heightFt: Making['heightFt'] & {}, rest: Making = {}) => {
  const flown = makeFlown({ heightFt, ...rest });
  return findClimb(flown, wholeOf(flown));
};
/** Down at 8 ft/s to 200 ft at 50 s, then up. */
const downThenUp = (upFtPerS: number) => (s: number) => 200 + (s < 50 ? 8 * (50 - s) : upFtPerS * (s - 50));

describe('findClimb', () => {
  it('ends 300 ft above the lowest point, between fixes', () => {
    const found = climb(downThenUp(7))!;
    expect(found).toMatchObject({ lowestS: 50, lowestFix: 50, lowestFt: 200 + THRESHOLD_FT });
    expect(found.clearS).toBeCloseTo(50 + 300 / 7, 9);
  });

  it('takes exactly 300 ft for a climb, and a foot less for none', () => {
    expect(climb((s) => Math.min(500, downThenUp(10)(s)))!.clearS).toBe(80);
    expect(climb((s) => Math.min(499, downThenUp(10)(s)))).toBeNull();
    expect(climb(1000)).toBeNull();
    expect(climb((s) => 1000 - s)).toBeNull();
    expect(climb(1000, { timeS: [] })).toBeNull();
  });

  it('begins at the last of several equally low fixes', () => {
    expect(climb((s) => (s < 50 ? 600 : s <= 58 ? 200 : 200 + 10 * (s - 58)))!.lowestS).toBe(58);
  });

  it('is the first: a lower one later is another', () => {
    const twice = (s: number) => (s <= 20 ? 800 : s <= 60 ? 800 + 10 * (s - 20) : 1200 - 30 * (s - 60));
    expect(climb(twice)!).toMatchObject({ lowestS: 20, clearS: 50 });
  });

  it('passes over heights that are missing, and does not guess the moment across a gap', () => {
    expect(climb((s) => (s === 50 || s === 3 ? NaN : downThenUp(10)(s)))!.lowestS).toBe(49);
    expect(climb(NaN)).toBeNull();
    const timeS = [0, 1, 2, 3, 40, 41];
    expect(climb((s) => (s <= 3 ? 500 - s : 900), { timeS })).toMatchObject({ lowestS: 3, clearS: 40 });
  });
});

describe('the start of a missed approach', () => {
  const startS = (heightFt: Making['heightFt'] & {}, earliestS = 0, rest: Making = {}) => {
    const flown = makeFlown({ heightFt, ...rest });
    return missedApproachStartS(flown, findClimb(flown, wholeOf(flown))!, earliestS);
  };

  it('is the last moment, between two fixes, at which the sink was half of its mean over the ten seconds before', () => {
    // Rounding out by 0.8 ft/s each second from 8 ft/s at 40 s: 4 ft/s at 45 s is 0.44 above half of 7.1, 3.2 ft/s at
    // 46 s 0.13 below half of 6.7 (means of the fixes before, by hand; on a parabola the fit is exact).
    const roundOut = (s: number) =>
      s < 40 ? 220 + 8 * (40 - s) + 20 : s < 50 ? 200 + 0.4 * (50 - s) ** 2 : 200 + 10 * (s - 50);
    // The fits around 40 s, over the corner between the two, move the means by a few hundredths.
    expect(Math.abs(startS(roundOut) - (45 + 0.44 / 0.57))).toBeLessThan(0.1);
  });

  it('is a second before the lowest point of a sharp turn upward, where half of the sink is gone from the fit', () => {
    // At 49 s the line through the seven heights sinks 2.9 ft/s, less than half of 8; at 48 s it sinks all of it.
    expect(startS(downThenUp(10))).toBeCloseTo(48 + 4 / (4 + 1.14), 1);
  });

  it('is the lowest point itself when nothing sank before it', () => {
    expect(startS((s) => (s < 50 ? 200 : 200 + 10 * (s - 50)))).toBe(50);
    expect(startS((s) => 200 + 10 * s)).toBe(0);
  });

  it('is never before final began', () => {
    // Level from 30 s on: the sink ended there, before the earliest moment.
    const levelled = (s: number) => (s < 30 ? 200 + 8 * (30 - s) : s < 60 ? 200 : 200 + 10 * (s - 60));
    expect(startS(levelled, 50)).toBe(60);
    expect(startS(downThenUp(10), 49)).toBe(50);
  });

  it('is told beside a gap from the fixes on this side of it', () => {
    const timeS = [
      ...Array.from({ length: 40 }, (_, s) => s),
      ...Array.from({ length: 56 }, (_, s) => s + 46),
    ];
    // At 48 s the line through the six heights from 46 s on sinks 5.43 ft/s, 1.43 more than half of the mean; at 49 s
    // 2.86 ft/s, 0.71 less than half of it (computed).
    expect(startS(downThenUp(10), 0, { timeS })).toBeCloseTo(48 + 1.43 / (1.43 + 0.71), 2);
  });

  it('is the last fix before a gap, and no moment in it, where the sink ended in the gap', () => {
    const timeS = Array.from({ length: 102 }, (_, s) => s).filter((s) => s < 50 || s >= 60);
    const overTheGap = (s: number) => (s < 50 ? 220 + 8 * (50 - s) : 200 + 10 * (s - 60));
    expect(startS(overTheGap, 0, { timeS })).toBe(49);
  });
});
