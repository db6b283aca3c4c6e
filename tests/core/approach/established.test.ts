import { describe, expect, it } from 'vitest';
import { after, findCapture, triedForAMinute } from '../../../core/approach/established.ts';
import { makeFlown, wholeOf, type Making } from './make-flown.ts';

const capture = (making: Making, untilS = Infinity) => {
  const flown = makeFlown({ untilS: 200, ...making });
  return findCapture(flown, wholeOf(flown), untilS);
};
/** Exactly half scale from 20 s to a moment; full scale before and after, so that both edges stand on a fix. */
const halfUntil = (s1: number) => (s: number) => (s >= 20 && s <= s1 ? 0.5 : 1);

describe('established on the localizer', () => {
  it('from the first moment within half scale and 10°, between fixes', () => {
    // Half scale is passed at 25.5 s, and 10° half a second later.
    const making = { localizer: (s: number) => 1.01 - 0.02 * s, courseAngleDeg: (s: number) => 36 - s };
    expect(capture(making).establishedS).toBeCloseTo(26, 9);
  });

  it('takes exactly half scale and exactly 10° for within, and a step more for beyond', () => {
    expect(capture({ localizer: -0.5, courseAngleDeg: -10 }).establishedS).toBe(0);
    expect(capture({ localizer: 0.501 }).establishedS).toBeNull();
    expect(capture({ courseAngleDeg: 10.01 }).establishedS).toBeNull();
  });

  it('needs ten seconds of it, and no less', () => {
    expect(capture({ localizer: halfUntil(30) }).establishedS).toBe(20);
    expect(capture({ localizer: halfUntil(29) }).establishedS).toBeNull();
  });

  it('does not count across a gap, nor beside a track that is not known', () => {
    const before = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    expect(capture({ timeS: [...before, 20, 22, 24, 26, 28] }).establishedS).toBeNull();
    expect(capture({ timeS: [...before, 20, 22, 24, 26, 28, 30] }).establishedS).toBe(20);
    expect(capture({ courseAngleDeg: (s) => (s % 9 === 0 ? NaN : 0) }).establishedS).toBeNull();
  });

  it('stands before the threshold: what is flown beyond it does not count', () => {
    expect(capture({ distanceNm: (s) => (s <= 8 ? 0.1 : 0) }).establishedS).toBeNull();
    expect(capture({ distanceNm: (s) => (s <= 9 ? 0.1 : 0) }).establishedS).toBe(0);
    expect(capture({ timeS: [] }).establishedS).toBeNull();
  });
});

describe('lost and established again', () => {
  /** Full scale at 50 s, beyond it up to a moment, then full scale for a fix and centred again. */
  const beyondUntil = (backS: number) => (s: number) =>
    s === 50 || s === backS ? 1 : s > 50 && s < backS ? 1.5 : 0;

  it('is lost after three seconds beyond full scale, and not after less', () => {
    expect(capture({ localizer: beyondUntil(53) }).lostS).toEqual([50]);
    expect(capture({ localizer: beyondUntil(52) }).lostS).toEqual([]);
  });

  it('takes exactly full scale for not lost', () => {
    const at = (depth: number) => (s: number) => (s > 50 && s < 70 ? depth : 0);
    expect(capture({ localizer: at(1) }).lostS).toEqual([]);
    expect(capture({ localizer: at(-1.001) }).lostS).toHaveLength(1);
  });

  it('comes in turn: lost, established again, lost', () => {
    const twice = (s: number) =>
      s === 50 || s === 60 || s === 90 ? 1 : (s > 50 && s < 60) || s > 90 ? 1.5 : 0;
    const found = capture({ localizer: twice });
    expect(found.lostS).toEqual([50, 90]);
    // From full scale at 60 s to the middle at 61 s half scale is passed half way.
    expect(found.reEstablishedS).toEqual([60.5]);
  });

  it('is not lost where nothing was established, beyond the threshold, or after the approach ended', () => {
    expect(capture({ localizer: 1.5 }).lostS).toEqual([]);
    expect(capture({ localizer: beyondUntil(60), distanceNm: (s) => (s < 50 ? 1 : -1) }).lostS).toEqual([]);
    expect(capture({ localizer: beyondUntil(60) }, 50).lostS).toEqual([]);
    expect(capture({ localizer: beyondUntil(60) }, 50.1).lostS).toEqual([50]);
  });
});

describe('a minute on the localizer', () => {
  const tried = (making: Making) => {
    const flown = makeFlown(making);
    return triedForAMinute(flown, wholeOf(flown));
  };
  it('is within full scale and 30° of the course, both included, for 60 s', () => {
    expect(tried({ untilS: 60, localizer: 1, courseAngleDeg: -30 })).toBe(true);
    expect(tried({ untilS: 59, localizer: 1, courseAngleDeg: -30 })).toBe(false);
    expect(tried({ localizer: 1.001 })).toBe(false);
    expect(tried({ courseAngleDeg: 30.01 })).toBe(false);
  });
  it('is not made of two halves with a gap between', () => {
    const half = Array.from({ length: 40 }, (_, s) => s);
    expect(tried({ timeS: [...half, ...half.map((s) => s + 50)] })).toBe(false);
  });
});

describe('the rest of a stretch', () => {
  it('begins at the first fix at or after a moment, and never before the stretch', () => {
    const flown = makeFlown();
    expect(after(flown, { first: 5, last: 20 }, 10)).toEqual({ first: 10, last: 20 });
    expect(after(flown, { first: 5, last: 20 }, 10.5)).toEqual({ first: 11, last: 20 });
    expect(after(flown, { first: 5, last: 20 }, 2)).toEqual({ first: 5, last: 20 });
  });
});
