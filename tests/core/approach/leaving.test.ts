import { describe, expect, it } from 'vitest';
import { leavingS } from '../../../core/approach/leaving.ts';
import { makeFlown, type Making } from './make-flown.ts';

/** On the localizer up to 100 s, where the needle stands exactly at full scale; recorded to a moment. */
const left = (making: Making, untilS = 200) =>
  leavingS(makeFlown({ untilS, localizer: (s) => (s < 100 ? 0 : s === 100 ? 1 : 2), ...making }), {
    first: 0,
    last: 100,
    until: untilS,
  });

describe('leaving the localizer', () => {
  it('is the moment from which it stands beyond full scale for five seconds', () => {
    expect(left({})).toBeCloseTo(100, 9);
    // 0.5 at the last fix on it, 2 at the next: full scale is passed after a third of the second.
    expect(left({ localizer: (s) => (s <= 100 ? 0.5 : 2) })).toBeCloseTo(100 + 1 / 3, 9);
    expect(left({ localizer: (s) => (s <= 100 ? -0.5 : -2) })).toBeCloseTo(100 + 1 / 3, 9);
  });

  it('takes exactly full scale for on it', () => {
    expect(left({ localizer: 1 })).toBeNull();
    expect(left({ localizer: (s) => (s <= 100 ? 1 : 1.0001) })).toBeCloseTo(100, 9);
  });

  it('needs five seconds in the log, and no less', () => {
    expect(left({}, 105)).toBeCloseTo(100, 9);
    expect(left({}, 104)).toBeNull();
    expect(left({}, 100)).toBeNull();
  });

  it('begins before the threshold only; the five seconds that prove it may end behind it', () => {
    expect(left({ distanceNm: (s) => (s <= 105 ? 0.1 : -0.1) })).toBeCloseTo(100, 9);
    expect(left({ distanceNm: (s) => (s <= 101 ? 0.1 : -0.1) })).toBeCloseTo(100, 9);
    const leftLater = (s: number) => (s <= 102 ? 0.5 : 2);
    expect(left({ localizer: leftLater, distanceNm: (s) => (s <= 103 ? 0.1 : -0.1) })).toBeCloseTo(
      102 + 1 / 3,
      9,
    );
    expect(left({ localizer: leftLater, distanceNm: (s) => (s <= 102 ? 0.1 : -0.1) })).toBeNull();
  });

  it('is the last of several: five seconds beyond full scale before the pass was last on it are none', () => {
    const twice = (s: number) => (s > 60 && s < 80 ? 2 : s < 100 ? 0 : s === 100 ? 1 : 2);
    expect(left({ localizer: twice })).toBeCloseTo(100, 9);
  });

  it('is not seen through a gap: it begins with the first fix after it', () => {
    const before = Array.from({ length: 103 }, (_, s) => s);
    const timeS = [...before, 120, 121, 122, 123, 124, 125];
    const flown = makeFlown({ timeS, localizer: (s) => (s <= 100 ? 0 : 2) });
    expect(leavingS(flown, { first: 0, last: 100, until: 108 })).toBe(120);
    expect(leavingS(flown, { first: 0, last: 100, until: 107 })).toBeNull();
  });
});
