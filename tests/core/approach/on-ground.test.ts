import { describe, expect, it } from 'vitest';
import { findLanding, thresholdPassage } from '../../../core/approach/on-ground.ts';
import { NO_ERROR } from '../../../core/track/position-error.ts';
import { makeFlown, THRESHOLD_FT, wholeOf, type Making } from './make-flown.ts';

const FLAT_RUNWAY: Making['facility'] = {
  farEnd: { latDeg: 0, lonDeg: 0, elevationFt: THRESHOLD_FT },
};
/**
 * Over the threshold at 10 s at 90 kt, 152 ft a second, 40 s of runway; at 40 ft above a flat runway and sinking too
 * fast to be level.
 */
const OVER_RUNWAY: Making = {
  untilS: 60,
  distanceNm: (s) => (10 - s) / 40,
  heightFt: 40,
  verticalSpeedFpm: -600,
  facility: FLAT_RUNWAY,
};
/** Exactly 150 ft/min from 20 s to a moment, 300 before and after: both edges stand on a fix. */
const levelUntil = (untilS: number) => (s: number) => (s >= 20 && s <= untilS ? -150 : -300);

const landing = (making: Making) => {
  const flown = makeFlown({ ...OVER_RUNWAY, ...making });
  return findLanding(flown, thresholdPassage(flown, wholeOf(flown))!, flown.track.count - 1);
};

describe('passing the threshold', () => {
  it('is where the distance reaches nothing, between fixes, with the height there', () => {
    const flown = makeFlown({
      untilS: 20,
      distanceNm: (s) => (10.5 - s) / 40,
      heightFt: (s) => 155 - 10 * s,
    });
    const passage = thresholdPassage(flown, wholeOf(flown))!;
    expect(passage.timeS).toBeCloseTo(10.5, 9);
    expect(passage.heightFt).toBeCloseTo(50, 9);
  });

  it('is not when the log ends before it', () => {
    const flown = makeFlown({ distanceNm: 0.01 });
    expect(thresholdPassage(flown, wholeOf(flown))).toBeNull();
  });
});

describe('on the ground by being level', () => {
  it('for four seconds within 150 ft/min, and no less', () => {
    expect(landing({ verticalSpeedFpm: levelUntil(24) })!.roll).toEqual({ first: 20, last: 24 });
    expect(landing({ verticalSpeedFpm: levelUntil(23) })).toBeNull();
    expect(landing({ verticalSpeedFpm: -150.1 })).toBeNull();
    expect(landing({ verticalSpeedFpm: 150.1 })).toBeNull();
  });

  it('within the outline, wider by 50 ft, or by how far off the log says its fixes are', () => {
    const beside = (offsetFt: number, sideFt: number) =>
      landing({ verticalSpeedFpm: 0, offsetFt, error: { ...NO_ERROR, sideFt: () => sideFt } });
    expect(beside(124, 0)).not.toBeNull();
    expect(beside(126, 0)).toBeNull();
    expect(beside(126, 52)).not.toBeNull();
    expect(beside(126, 20)).toBeNull();
  });

  it('less than 60 ft above the runway', () => {
    expect(landing({ verticalSpeedFpm: 0, heightFt: 59.9 })).not.toBeNull();
    expect(landing({ verticalSpeedFpm: 0, heightFt: 60.1 })).toBeNull();
  });

  it('counts the height above the runway there, which rises', () => {
    // 60 ft up over 6,000 ft: from 20 to 30 s it rises from 15 to 30 ft above the threshold.
    const rising: Making = { verticalSpeedFpm: levelUntil(24), facility: {} };
    expect(landing({ ...rising, heightFt: 75 })).not.toBeNull();
    expect(landing({ ...rising, heightFt: 75.3 })).toBeNull();
    // As high above the threshold where the runway still lies lower is no ground.
    expect(
      landing({ ...rising, heightFt: 75, verticalSpeedFpm: (s) => (s > 11 && s < 18 ? 0 : -600) }),
    ).toBeNull();
  });

  it('within the outline, widened by the position error of 50 ft', () => {
    expect(landing({ verticalSpeedFpm: 0, offsetFt: -125 })).not.toBeNull();
    expect(landing({ verticalSpeedFpm: 0, offsetFt: 125.1 })).toBeNull();
    // 6,000 ft are flown over in 39.5 s: the far end is passed between 49 and 50 s.
    expect(landing({ verticalSpeedFpm: (s) => (s >= 45 ? 0 : -600) })!.roll).toEqual({ first: 45, last: 49 });
    expect(landing({ verticalSpeedFpm: (s) => (s >= 46 ? 0 : -600) })).toBeNull();
  });

  it('ends where the aircraft climbs away', () => {
    const climbing = (s: number) => (s < 20 ? -600 : s <= 30 ? 0 : 700);
    expect(landing({ verticalSpeedFpm: climbing })!.roll).toEqual({ first: 20, last: 30 });
  });
});

describe('on the ground by being slow', () => {
  it('below half the speed at the threshold, or 40 kt when that is more', () => {
    const slowing = (kt: number): Making => ({ groundspeedKt: (s) => (s <= 10 ? 90 : s < 30 ? 80 : kt) });
    expect(landing(slowing(45))!.roll.first).toBe(30);
    expect(landing(slowing(45.1))).toBeNull();
    expect(landing({ groundspeedKt: (s) => (s <= 10 ? 60 : s < 30 ? 50 : 40) })!.roll.first).toBe(30);
    expect(landing({ groundspeedKt: (s) => (s <= 10 ? 60 : s < 30 ? 50 : 40.1) })).toBeNull();
  });
});

/** A roll from 20 to 49 s on a runway that climbs unsaid: the lower half of its heights spreads by so many feet. */
const climbing = (ft: number) => (s: number) => (ft * Math.max(0, s - 20)) / 14;

describe('touchdown', () => {
  it('is the first moment within 3 ft of a flat roll’s height', () => {
    // Down 5 ft a second to 0 at 20 s, level from there: 3 ft are passed at 19.4 s.
    const making: Making = {
      heightFt: (s) => Math.max(0, 100 - 5 * s),
      verticalSpeedFpm: (s) => (s < 20 ? -300 : 0),
    };
    const found = landing(making)!;
    expect(found.touchdownS).toBeCloseTo(19.4, 9);
    expect(found.estimated).toBe(false);
  });

  it('is estimated from the braking where the lower half of the roll’s heights spreads 6 ft or more', () => {
    const spread = (ft: number): Making => ({
      heightFt: climbing(ft),
      verticalSpeedFpm: (s) => (s < 20 ? -300 : 0),
      // 1.5 kt/s from 30 s on: over ± 2 s the first fall of 4 kt is between 29 and 31 s.
      groundspeedKt: (s) => (s <= 30 ? 90 : 90 - 1.5 * (s - 30)),
    });
    expect(landing(spread(5.9))!.estimated).toBe(false);
    // At 31 s: 90 kt two seconds before, 85.5 two seconds after. At 30 s the fall is 3 kt only.
    expect(landing(spread(6))).toMatchObject({ estimated: true, touchdownS: 31 });
  });

  it('takes a fall of exactly 1 kt/s for braking, and less for none', () => {
    const falling = (ktPerS: number): Making => ({
      heightFt: climbing(10),
      verticalSpeedFpm: (s) => (s < 20 ? -300 : 0),
      groundspeedKt: (s) => 90 - ktPerS * Math.max(0, s - 30),
    });
    // 90 kt at 30 s and 86 at 34: seen from the middle.
    expect(landing(falling(1))!.touchdownS).toBe(32);
    // Never braked enough: where it was first level.
    expect(landing(falling(0.9))).toMatchObject({ estimated: true, touchdownS: 20 });
  });

  it('is not where the speed falls in the air, before the roll', () => {
    const slowedInTheAir: Making = {
      heightFt: climbing(10),
      verticalSpeedFpm: (s) => (s < 20 ? -300 : 0),
      groundspeedKt: (s) => 90 - 2 * Math.min(6, Math.max(0, s - 10)),
    };
    expect(landing(slowedInTheAir)!.touchdownS).toBe(20);
  });

  it('is told by the lowest of the roll: a float before it, level enough, is passed over', () => {
    const floating: Making = {
      heightFt: (s) => (s < 24 ? 12 : 0),
      verticalSpeedFpm: (s) => (s < 20 ? -300 : 0),
    };
    // From 12 ft at 23 s to nothing at 24 s: 3 ft are passed after three quarters of the second.
    expect(landing(floating)).toMatchObject({ estimated: false, touchdownS: 23.75 });
    // Nor does one fix that is off.
    const oneOff: Making = { ...floating, heightFt: (s) => (s < 24 || s === 40 ? 12 : 0) };
    expect(landing(oneOff)).toMatchObject({ estimated: false, touchdownS: 23.75 });
  });

  it('is after a float, however long, that ends in sinking on', () => {
    // Level at 12 ft from 14 to 20 s, then 2 s down to a roll of 30 s.
    const height = (s: number) => (s < 20 ? 12 : Math.max(0, 12 - 6 * (s - 20)));
    const floated = landing({
      heightFt: height,
      verticalSpeedFpm: (s) => (s < 14 ? -600 : s > 19 && s < 23 ? -360 : 0),
    })!;
    expect(floated.roll).toEqual({ first: 14, last: 49 });
    expect(floated.touchdownS).toBeCloseTo(21.5, 9);
  });

  it('is none against the course', () => {
    const against = (deg: number): Making => ({ verticalSpeedFpm: 0, courseAngleDeg: deg });
    expect(landing(against(90))).not.toBeNull();
    expect(landing(against(-90.1))).toBeNull();
  });
});
