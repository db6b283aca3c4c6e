import { describe, expect, it } from 'vitest';
import { otherRunwayFt } from '../../../core/approach/other-runway.ts';
import { findPasses } from '../../../core/approach/passes.ts';
import { FEET_PER_NM } from '../../../core/units/units.ts';
import { makeFlown, type Making } from './make-flown.ts';

/** From 4.9 NM, inside the fix at 5 NM, to beyond the threshold, passed at 196 s. */
const distanceNm = (s: number) => (196 - s) / 40;
/** Where the needle stands for an offset from the course; the antenna stands 1.2 NM beyond the threshold. */
const needleOf = (offsetFt: (s: number) => number) => (s: number) => {
  const sine = offsetFt(s) / ((distanceNm(s) + 1.2) * FEET_PER_NM);
  return (Math.asin(sine) * 180) / Math.PI / 2.5;
};
const at = (feet: number) => () => feet;

/** Flown at an offset from course and centreline, 1,000 ft to the right unless said, and 100 ft up at the end. */
const beside = (offsetFt: (s: number) => number = at(1000), making: Making = {}) => {
  const flown = makeFlown({
    untilS: 216,
    distanceNm,
    heightFt: (s) => Math.max(100, 1600 - 8 * s),
    offsetFt,
    localizer: needleOf(offsetFt),
    ...making,
  });
  return otherRunwayFt(flown, findPasses(flown)[0]!);
};
/** 1,000 ft but for one fix on either side, as far from it. */
const swinging = (byFt: number) => (s: number) => 1000 + (s === 30 ? byFt : s === 50 ? -byFt : 0);

describe('another runway', () => {
  it('is flown to beside the centreline, low, at one distance from it', () => {
    expect(beside()).toBe(1000);
    expect(beside(at(-1000))).toBe(-1000);
    expect(beside(at(0))).toBeNull();
  });

  it('lies more than 400 ft beside', () => {
    expect(beside(at(400))).toBeNull();
    expect(beside(at(400.1))).toBe(400.1);
  });

  it('lies outside the runway’s width by more than the position error', () => {
    expect(beside(at(450), { facility: { widthFt: 800 } })).toBeNull();
    expect(beside(at(450.1), { facility: { widthFt: 800 } })).toBe(450.1);
  });

  it('is flown to within 400 ft of one distance, and no more', () => {
    expect(beside(swinging(399.9))).toBe(1000);
    expect(beside(swinging(400.1))).toBeNull();
  });

  it('is not told by what was flown off the scale, nor by what was flown outside the fix', () => {
    expect(beside(swinging(3000))).toBe(1000);
    const fixAt = (nm: number) => ({ finalApproachFix: { name: null, distanceNm: nm, altitudeFt: null } });
    // The two fixes that swing lie 4.15 and 3.65 NM out.
    expect(beside(swinging(410), { facility: fixAt(3.6) })).toBe(1000);
    expect(beside(swinging(410), { facility: fixAt(3.7) })).toBeNull();
    // Off the scale from 2.6 NM on: nothing seen inside a fix at 2 NM.
    expect(beside(at(1000), { facility: fixAt(2) })).toBeNull();
  });

  it('is reached below 500 ft, and nothing is told without a height', () => {
    expect(beside(at(1000), { heightFt: 499.9 })).toBe(1000);
    expect(beside(at(1000), { heightFt: 500 })).toBeNull();
    expect(beside(at(1000), { heightFt: NaN })).toBeNull();
  });

  it('is one that the log ends short of', () => {
    expect(beside(at(1000), { untilS: 150, heightFt: (s) => 1600 - 8 * s })).toBe(1000);
  });
});
