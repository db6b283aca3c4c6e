import { describe, expect, it } from 'vitest';
import { windOver } from '../../../core/approach/wind.ts';
import { seededRandom } from '../../support/flight/random.ts';
import { makeFlown, THRESHOLD_FT, type Making } from './make-flown.ts';

const DEGREES = 180 / Math.PI;
const errorKt = (recorded: NonNullable<Making['recorded']>) =>
  windOver(makeFlown({ heightFt: -THRESHOLD_FT, recorded }), { startS: 0, endS: 100 }, 0)!.errorKt;

describe('how far the wind may be off', () => {
  // By hand: across the nose airspeed × sin 3° (3.162° with the variation's 1°), along it 3 kt (with 2.6 % of an
  // indicated airspeed for the temperature), the larger of them with 0.4 kt of the ground vector by squares.
  it.each([
    ['100 kt true, true heading: 5.234 across', { airspeedTrueKt: 100, headingTrueDeg: 90 }, 5.249],
    ['100 kt true, magnetic heading: 5.516 across', { airspeedTrueKt: 100, headingMagneticDeg: 90 }, 5.531],
    ['200 kt, twice as far across: 10.467', { airspeedTrueKt: 200, headingTrueDeg: 90 }, 10.475],
    ['50 kt true: 3 along', { airspeedTrueKt: 50, headingTrueDeg: 90 }, 3.027],
    ['50 kt indicated: 3 and 1.3 along', { airspeedIndicatedKt: 50, headingTrueDeg: 90 }, 3.294],
  ])('%s', (_, recorded, expected) => expect(errorKt(recorded)).toBeCloseTo(expected, 3));

  it('does not shrink with the length of the span', () => {
    const flown = makeFlown({ recorded: { airspeedTrueKt: 100, headingTrueDeg: 90 } });
    const [short, long] = [10, 100].map((endS) => windOver(flown, { startS: 0, endS }, 0)!.errorKt);
    expect(short).toBeCloseTo(long!, 9);
  });

  it('holds the truth in 95 of 100 trials where it is known worst, and in more elsewhere', () => {
    const random = seededRandom('wind error');
    const TRIALS = 4000;
    // Half-widths at 95 % are 1.96 standard deviations.
    const off = (halfWidth: number) => (halfWidth / 1.96) * random.gaussian();
    let across = 0;
    let along = 0;
    for (let trial = 0; trial < TRIALS; trial++) {
      // 100 kt through calm air to the east, each instrument off by one amount all along.
      const east = 100 + off(0.4);
      const north = off(0.4);
      const found = windOver(
        makeFlown({
          untilS: 2,
          groundspeedKt: Math.hypot(east, north),
          trackTrueDeg: Math.atan2(east, north) * DEGREES,
          recorded: { airspeedTrueKt: 100 + off(3), headingMagneticDeg: 90 + off(3) + off(1) },
        }),
        { startS: 0, endS: 2 },
        0,
      )!;
      if (Math.abs(found.crosswindFromRightKt) <= found.errorKt) across++;
      if (Math.abs(found.headwindKt) <= found.errorKt) along++;
    }
    expect(across / TRIALS).toBeGreaterThan(0.94);
    expect(across / TRIALS).toBeLessThan(0.96);
    expect(along / TRIALS).toBeGreaterThan(0.99);
  });
});
