import { describe, expect, it } from 'vitest';
import { estimatedAirspeed } from '../../../core/approach/estimated-airspeed.ts';
import { makeFlown, THRESHOLD_FT, type Making } from './make-flown.ts';

const SEA_LEVEL: Making = { heightFt: -THRESHOLD_FT };
const estimate = (making: Making, fromTrueDeg: number, speedKt: number) =>
  estimatedAirspeed(makeFlown({ ...SEA_LEVEL, untilS: 2, ...making }), { fromTrueDeg, speedKt });

describe('the airspeed that a groundspeed and a stated wind make', () => {
  // Wind triangles by hand, at sea level, where true and indicated airspeed are one.
  it.each([
    ['a headwind is flown against', 90, 90, 90, 10, 100],
    ['a tailwind carries', 90, 90, 270, 10, 80],
    ['in calm air it is the groundspeed', 90, 200, 0, 0, 90],
    ['a crosswind is crabbed against: 3, 4, 5', 40, 90, 180, 30, 50],
    ['from the other side the same', 40, 90, 0, 30, 50],
    ['360 and 0 are both north', 90, 0, 360, 10, 100],
    ['an hour in 12 kt: 5, 12, 13', 5, 180, 90, 12, 13],
    // Law of cosines: the square root of 100² + 20² + 2 × 100 × 20 × cos 50° (0.642788) = 12,971.15.
    ['50° off the nose', 100, 70, 120, 20, 113.891],
    ['50° off the nose across north', 100, 350, 40, 20, 113.891],
  ])('%s', (_, groundspeedKt, trackTrueDeg, fromTrueDeg, speedKt, airspeedKt) => {
    const found = estimate({ groundspeedKt, trackTrueDeg }, fromTrueDeg, speedKt);
    expect(found).toHaveLength(3);
    for (const kt of found) expect(kt).toBeCloseTo(airspeedKt, 3);
  });

  it('is an indicated one: 100 kt true at 5,000 ft, where the density ratio is 0.8617, are 92.83', () => {
    const high = { heightFt: 5000 - THRESHOLD_FT, groundspeedKt: 80, trackTrueDeg: 90 };
    expect(estimate(high, 90, 20)[0]).toBeCloseTo(92.83, 2);
  });

  it('is not known where the ground vector is not', () => {
    const halting = { groundspeedKt: (s: number) => (s === 0 ? NaN : 90) };
    const standing = { trackTrueDeg: (s: number) => (s === 1 ? NaN : 90) };
    expect([...estimate({ ...halting, ...standing }, 90, 10)]).toEqual([NaN, NaN, expect.closeTo(100, 9)]);
  });

  it('is worked out once for a flight and a wind, and anew for another of either', () => {
    const flown = makeFlown({ ...SEA_LEVEL, groundspeedKt: 90 });
    const at = (speedKt: number, flight = flown) => estimatedAirspeed(flight, { fromTrueDeg: 90, speedKt });
    const first = at(10);
    expect(at(10)).toBe(first);
    expect(at(20)[0]).toBeCloseTo(110, 9);
    expect(at(10)[0]).toBeCloseTo(100, 9);
    expect(at(10, makeFlown({ ...SEA_LEVEL, groundspeedKt: 60 }))[0]).toBeCloseTo(70, 9);
  });
});
