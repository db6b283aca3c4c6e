import { describe, expect, it } from 'vitest';
import {
  findGlidepathIntercept,
  glidepathAliveS,
  neededSinkFpm,
} from '../../../core/approach/glidepath-intercept.ts';
import { makeFlown, wholeOf, type Making } from './make-flown.ts';

/** 90 kt × 101.27 ft/min a knot × tan 3° (0.052408), by hand: 477.7 ft/min, 7.961 ft/s. */
const NEEDED_FT_PER_S = 7.961;
const sinking = (share: number) => (s: number) => 1500 - share * NEEDED_FT_PER_S * s;

const intercept = (making: Making, establishedS: number | null = null) => {
  const flown = makeFlown({ heightFt: sinking(1), ...making });
  return findGlidepathIntercept(flown, wholeOf(flown), establishedS);
};
/** Full scale low until 20 s, exactly half scale from there: both stand on a fix. */
const inAt20 = (s: number) => (s < 20 ? -1 : s === 20 ? -0.5 : 0);

describe('the sink that a path needs', () => {
  it('is groundspeed × 101.27 × tan(angle), down positive', () => {
    expect(neededSinkFpm(makeFlown(), 90)).toBeCloseTo(477.66, 1);
    // 100 kt on 3.5°: 10126.9 × 0.061163, by hand.
    expect(neededSinkFpm(makeFlown({ facility: { glidepathAngleDeg: 3.5 } }), 100)).toBeCloseTo(619.39, 1);
  });
});

describe('the glidepath alive', () => {
  const alive = (making: Making) => {
    const flown = makeFlown(making);
    return glidepathAliveS(flown, wholeOf(flown));
  };
  it('is first within full scale while the localizer is', () => {
    expect(alive({ glidepath: (s) => -3 + 0.1 * s })).toBeCloseTo(20, 9);
    expect(alive({ localizer: (s) => 3 - 0.1 * s })).toBeCloseTo(20, 9);
    expect(alive({ glidepath: 1, localizer: -1 })).toBe(0);
    expect(alive({ glidepath: 1.001 })).toBeNull();
    expect(alive({ glidepath: NaN })).toBeNull();
  });
  it('is before the threshold', () => expect(alive({ distanceNm: -1 })).toBeNull());
});

describe('the glidepath intercept', () => {
  it('is the first moment from which half scale is held for ten seconds', () => {
    expect(intercept({ glidepath: inAt20 })).toEqual({ timeS: 20, from: 'below' });
    expect(intercept({ glidepath: 0.5 })?.timeS).toBe(0);
    expect(intercept({ glidepath: 0.501 })).toBeNull();
    const until = (s1: number) => (s: number) => (s >= 20 && s <= s1 ? 0.5 : 1);
    expect(intercept({ glidepath: until(30) })?.timeS).toBe(20);
    expect(intercept({ glidepath: until(29) })).toBeNull();
  });

  it('asks for the localizer within full scale, exactly at it included, before the threshold', () => {
    expect(intercept({ localizer: -1 })?.timeS).toBe(0);
    expect(intercept({ localizer: 1.001 })).toBeNull();
    expect(intercept({ distanceNm: 0 })).toBeNull();
  });

  it.each([
    [0.49, null],
    [0.51, 0],
    [1.49, 0],
    [1.51, null],
    [0, null],
    [-1, null],
  ])('with %s of the needed sink is found at %s', (share, timeS) => {
    expect(intercept({ heightFt: sinking(share) })?.timeS ?? null).toBe(timeS);
  });

  it('held level first comes when the mean of ten seconds is half of what is needed', () => {
    // From 40 s on 1.1 of the needed sink: its share of ten seconds is half after 4.55 s, so from 35 s on.
    const heightFt = (s: number) => 1500 - Math.max(0, s - 40) * 1.1 * NEEDED_FT_PER_S;
    expect(intercept({ heightFt })?.timeS).toBe(35);
  });

  it('is tried at the last moment from which the needles hold, between fixes', () => {
    // In until 30.5 s. Sinking from 25.4 s on: half of ten seconds' sink is reached by those from 20.4 s on.
    const glidepath = (s: number) => (s <= 30 ? 0 : 1);
    const level = (untilS: number) => (s: number) => 1500 - Math.max(0, s - untilS) * NEEDED_FT_PER_S;
    expect(intercept({ glidepath, heightFt: level(25.4) })?.timeS).toBe(20.5);
    expect(intercept({ glidepath, heightFt: level(25.6) })).toBeNull();
  });

  it('is not at a moment before the needles were out', () => {
    // In for 12.5 s level, out, and in again for 7 s: the ten seconds before the end sink enough, but not on needles.
    const glidepath = (s: number) => (s === 13 || s > 20 ? 1 : 0);
    const heightFt = (s: number) => 1500 - Math.max(0, s - 10.5) * NEEDED_FT_PER_S;
    expect(intercept({ untilS: 25, glidepath, heightFt })).toBeNull();
  });

  it('needs its sink from the mean groundspeed of the ten seconds', () => {
    // 60 kt for five seconds and 120 kt after: mean 90 within 3 kt. Twice 120 kt would ask for twice the sink.
    const groundspeedKt = (s: number) => (s < 6 ? 60 : 120);
    expect(intercept({ untilS: 10, groundspeedKt, heightFt: sinking(0.55) })?.timeS).toBe(0);
    expect(intercept({ groundspeedKt: 180, heightFt: sinking(0.55) })).toBeNull();
  });

  it('is not made across a gap, nor where a height is missing', () => {
    const before = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    expect(intercept({ timeS: [...before, 20, 22, 24, 26, 28] })).toBeNull();
    expect(intercept({ timeS: [...before, 20, 22, 24, 26, 28, 30] })?.timeS).toBe(20);
    expect(intercept({ glidepath: NaN })).toBeNull();
    expect(intercept({ glidepath: (s) => (s % 10 === 9 ? NaN : 0) })).toBeNull();
    expect(intercept({ timeS: [] })).toBeNull();
  });
});

describe('an intercept from above', () => {
  const highAt = (highS: number, depth: number) => (s: number) => (s < 70 ? (s === highS ? depth : -1) : 0);
  it('was beyond half scale above within the minute before', () => {
    // From −1 at 69 s to 0 at 70 s half scale is passed at 69.5 s: the minute before begins at 9.5 s.
    expect(intercept({ glidepath: highAt(10, 0.6) })).toEqual({ timeS: 69.5, from: 'above' });
    expect(intercept({ glidepath: highAt(9, 0.6) })).toEqual({ timeS: 69.5, from: 'below' });
    expect(intercept({ glidepath: highAt(10, 0.5) })?.from).toBe('below');
  });
  it('or when the localizer was established, however long ago', () => {
    expect(intercept({ glidepath: highAt(5, 0.6) }, 5)?.from).toBe('above');
    expect(intercept({ glidepath: highAt(5, 0.5) }, 5)?.from).toBe('below');
    expect(intercept({ glidepath: highAt(5, 0.6) }, 6)?.from).toBe('below');
    expect(intercept({ glidepath: highAt(5, 0.6) })?.from).toBe('below');
  });
});

describe('where an intercept came from', () => {
  it('nobody knows when the log begins on the path, or goes on there after a gap', () => {
    expect(intercept({ glidepath: 0 })).toEqual({ timeS: 0, from: null });
    expect(intercept({ glidepath: -0.5 })?.from).toBeNull();
    const resumed = [0, 1, 2, ...Array.from({ length: 30 }, (_, k) => 70 + k)];
    expect(intercept({ timeS: resumed, glidepath: (s) => (s < 70 ? -1 : 0) })).toEqual({
      timeS: 70,
      from: null,
    });
  });

  it('is known of what was seen out before, however shortly', () => {
    expect(intercept({ glidepath: (s) => (s < 3 ? -0.6 : 0) })?.from).toBe('below');
    expect(intercept({ glidepath: (s) => (s < 3 ? 0.6 : 0) })?.from).toBe('above');
  });

  it('is below when a minute was recorded and was never above', () => {
    // Level on the path's edge for a minute, and then down it.
    const heightFt = (s: number) => 1500 - Math.max(0, s - 70) * NEEDED_FT_PER_S;
    expect(intercept({ glidepath: -0.4, heightFt })).toMatchObject({ from: 'below' });
  });
});
