import { describe, expect, it } from 'vitest';
import { windNeeds, windOver } from '../../../core/approach/wind.ts';
import { makeFlown, type Making } from './make-flown.ts';

const WHOLE = { startS: 0, endS: 100 };
const DEGREES = 180 / Math.PI;
const wind = (making: Making, variationDeg: number | null = 0, span = WHOLE) =>
  windOver(makeFlown(making), span, variationDeg);
/** 100 kt through the air, pointing along the course, which leads to the east. */
const EAST = { airspeedTrueKt: 100, headingTrueDeg: 90 };
/** Over the ground by the components that are left of it: made good toward east and toward north, in knots. */
const madeGood = (eastKt: number, northKt: number): Making => ({
  groundspeedKt: Math.hypot(eastKt, northKt),
  trackTrueDeg: Math.atan2(eastKt, northKt) * DEGREES,
});

describe('the wind that was flown through', () => {
  it('is the air vector against the ground vector: ahead', () => {
    const found = wind({ ...madeGood(80, 0), recorded: EAST })!;
    expect(found.fromTrueDeg).toBeCloseTo(90, 9);
    expect(found.speedKt).toBeCloseTo(20, 9);
    expect(found.headwindKt).toBeCloseTo(20, 9);
    expect(found.crosswindFromRightKt).toBeCloseTo(0, 9);
  });

  it('a tailwind is a negative headwind', () => {
    const found = wind({ ...madeGood(115, 0), recorded: EAST })!;
    expect(found.fromTrueDeg).toBeCloseTo(270, 9);
    expect(found.headwindKt).toBeCloseTo(-15, 9);
  });

  it('that drifts the aircraft to the left comes from the right, positive', () => {
    // Inbound to the east, carried to the north: a wind from the south, which is on the right.
    const found = wind({ ...madeGood(100, 20), recorded: EAST })!;
    expect(found.fromTrueDeg).toBeCloseTo(180, 9);
    expect(found.crosswindFromRightKt).toBeCloseTo(20, 9);
    expect(found.headwindKt).toBeCloseTo(0, 9);
  });

  it('that drifts the aircraft to the right comes from the left, negative', () => {
    const found = wind({ ...madeGood(100, -20), recorded: EAST })!;
    expect(found.fromTrueDeg % 360).toBeCloseTo(0, 9);
    expect(found.crosswindFromRightKt).toBeCloseTo(-20, 9);
  });

  it('that is crabbed against comes from where the nose points', () => {
    // Ten degrees right of the track that is made good along the course.
    const recorded = { airspeedTrueKt: 100, headingTrueDeg: 100 };
    const along = 100 * Math.cos(10 / DEGREES);
    const found = wind({ ...madeGood(along, 0), recorded })!;
    expect(found.crosswindFromRightKt).toBeCloseTo(100 * Math.sin(10 / DEGREES), 9);
    expect(found.headwindKt).toBeCloseTo(0, 9);
  });

  it('is told against the course, whichever way that leads', () => {
    // The same wind from the south, inbound to the north: straight behind.
    const northward = { courseTrueDeg: 0 };
    const found = wind({ ...madeGood(100, 20), recorded: EAST, facility: northward })!;
    expect(found.headwindKt).toBeCloseTo(-20, 9);
    expect(found.crosswindFromRightKt).toBeCloseTo(0, 9);
  });

  it('is a mean of vectors: 20 kt from either side are none', () => {
    const trackTrueDeg = (s: number) => Math.atan2(100, s < 50 ? 20 : s === 50 ? 0 : -20) * DEGREES;
    const groundspeedKt = (s: number) => (s === 50 ? 100 : Math.hypot(100, 20));
    const span = { startS: -1, endS: 100 };
    expect(wind({ trackTrueDeg, groundspeedKt, recorded: EAST }, 0, span)!.speedKt).toBeCloseTo(0, 9);
  });

  it('is that of the span, of the fixes of which everything is known', () => {
    const making: Making = {
      groundspeedKt: (s) => (s < 40 ? 100 : s > 60 ? NaN : 90),
      trackTrueDeg: 90,
      recorded: EAST,
    };
    expect(wind(making, 0, { startS: 40, endS: 100 })!.headwindKt).toBeCloseTo(10, 9);
    expect(wind(making, 0, { startS: 70, endS: 100 })).toBeNull();
    expect(wind(making, 0, { startS: 0, endS: 39 })!.headwindKt).toBeCloseTo(0, 9);
  });
});

it('the wind is the same at ten fixes a second and at one, and with half of them missing', () => {
  const groundspeedKt = (s: number) => 100 - s / 5;
  const making = { groundspeedKt, recorded: EAST };
  const everyTenth = { ...making, timeS: Array.from({ length: 1001 }, (_, tenth) => tenth / 10) };
  // Dense at first and thin later: a mean over fixes would hear the beginning more.
  const thinning = {
    ...making,
    timeS: [...Array.from({ length: 50 }, (_, s) => s), 51, 54, 57, 60].concat([
      65, 70, 75, 80, 85, 90, 95, 100,
    ]),
  };
  // From calm to 20 kt: 10 kt on average.
  for (const one of [making, everyTenth, thinning]) expect(wind(one)!.headwindKt).toBeCloseTo(10, 9);
});

describe('what a log lacks for a wind', () => {
  const needs = (recorded: Making['recorded'], variationDeg: number | null = 0) =>
    windNeeds(makeFlown({ recorded: recorded ?? {} }), variationDeg);

  it('is the first thing that is missing', () => {
    expect(needs({})).toBe('airspeed');
    expect(needs({ headingTrueDeg: 90 })).toBe('airspeed');
    expect(needs({ airspeedIndicatedKt: 90 })).toBe('heading');
    expect(needs({ airspeedIndicatedKt: 90, headingMagneticDeg: 90 }, null)).toBe('variation');
    expect(needs({ airspeedIndicatedKt: 90, headingMagneticDeg: 90 })).toBe('recorded');
    expect(needs({ airspeedTrueKt: 90, headingTrueDeg: 90 }, null)).toBe('recorded');
  });
});

describe('what the wind is told from', () => {
  it('a magnetic heading with the variation added, east positive', () => {
    const recorded = { airspeedTrueKt: 100, headingMagneticDeg: 80 };
    expect(wind({ ...madeGood(80, 0), recorded }, 10)!.headwindKt).toBeCloseTo(20, 9);
    expect(wind({ ...madeGood(80, 0), recorded }, null)).toBeNull();
    // Taken for true, the nose would point to the left of the course.
    expect(wind({ ...madeGood(80, 0), recorded }, 0)!.crosswindFromRightKt).toBeLessThan(-15);
  });

  it('needs an airspeed and a heading', () => {
    expect(wind({ recorded: {} })).toBeNull();
    expect(wind({ recorded: { airspeedTrueKt: 100 } })).toBeNull();
    expect(wind({ recorded: { headingTrueDeg: 90 } })).toBeNull();
  });

  it('prefers the true airspeed to the indicated one, and the true heading to the magnetic one', () => {
    const recorded = { ...EAST, airspeedIndicatedKt: 50, headingMagneticDeg: 200 };
    expect(wind({ ...madeGood(80, 0), recorded })!.headwindKt).toBeCloseTo(20, 9);
  });

  /**
   * True over indicated airspeed is one over the root of the density ratio: 0.8617 at 5,000 ft and 0.7385 at
   * 10,000 ft, from 843.07 and 696.82 hPa at 278.24 and 268.34 K (ISA, ICAO Doc 7488; computed).
   */
  it.each([
    [0, 1],
    [5000, 0.8617],
    [10000, 0.7385],
  ])('an indicated airspeed is taken to true at %i ft', (altitudeFt, densityRatio) => {
    const recorded = { airspeedIndicatedKt: 100, headingTrueDeg: 90 };
    const found = wind({ ...madeGood(100, 0), heightFt: altitudeFt - 100, recorded })!;
    expect(found.headwindKt).toBeCloseTo(100 / Math.sqrt(densityRatio) - 100, 1);
  });
});
