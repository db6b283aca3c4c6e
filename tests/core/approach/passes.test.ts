import { describe, expect, it } from 'vitest';
import { findPasses, isInbound } from '../../../core/approach/passes.ts';
import { makeFlown, type Making } from './make-flown.ts';

const passes = (making: Making) =>
  findPasses(makeFlown({ untilS: 400, ...making })).map(({ first, last, until }) => [first, last, until]);
/** On the localizer, away from it from after 100 s until just before a moment, and on it again. */
const awayUntil = (backS: number) => (s: number) => (s > 100 && s < backS ? 2 : 0);

describe('inbound', () => {
  it.each([
    ['45° to the left', { courseAngleDeg: -45 }, true],
    ['a step over 45° to the right', { courseAngleDeg: 45.01 }, false],
    ['outbound', { courseAngleDeg: 180 }, false],
    ['a step before the threshold', { distanceNm: 0.001 }, true],
    ['abeam the threshold', { distanceNm: 0 }, false],
    ['beyond the threshold', { distanceNm: -0.5 }, false],
    ['standing, without a track', { courseAngleDeg: NaN }, false],
  ])('%s is, or is not', (_name, making, yes) => expect(isInbound(makeFlown(making), 0)).toBe(yes));
});

describe('findPasses', () => {
  it('finds one from the first fix on the scale to the last, exactly full scale included', () => {
    const localizer = (s: number) => (s === 50 || s === 60 ? 1 : s > 50 && s < 60 ? 0.5 : -1.001);
    expect(passes({ localizer })).toEqual([[50, 60, 400]]);
  });

  it('finds one of a single fix, and none where there is none', () => {
    expect(passes({ localizer: (s) => (s === 7 ? -1 : 3) })).toEqual([[7, 7, 400]]);
    expect(passes({ localizer: 1.001 })).toEqual([]);
    expect(passes({ courseAngleDeg: 46 })).toEqual([]);
    expect(passes({ timeS: [] })).toEqual([]);
  });

  it('parts two at a minute off the scale, and not a second sooner', () => {
    expect(passes({ localizer: awayUntil(159) })).toEqual([[0, 400, 400]]);
    // What follows the first, up to the fix before the second, tells how the first ended.
    expect(passes({ localizer: awayUntil(160) })).toEqual([
      [0, 100, 159],
      [160, 400, 400],
    ]);
  });

  it('adds the time off the scale and the time outbound up', () => {
    const offThenOut = (backS: number): Making => ({
      localizer: awayUntil(130),
      courseAngleDeg: (s) => (s >= 130 && s < backS ? 180 : 0),
    });
    expect(passes(offThenOut(159))).toHaveLength(1);
    expect(passes(offThenOut(160))).toHaveLength(2);
    // Half a minute off, a second on, and half a minute off again: never a whole one.
    expect(passes({ localizer: (s) => (s > 100 && s < 160 && s !== 130 ? 2 : 0) })).toHaveLength(1);
  });

  it('takes a gap for time away only when it ended farther out', () => {
    const timeS = [0, 1, 2, 302, 303];
    expect(passes({ timeS, distanceNm: (s) => (s < 300 ? 8 : 3) })).toEqual([[0, 4, 4]]);
    expect(passes({ timeS, distanceNm: (s) => (s < 300 ? 3 : 8) })).toEqual([
      [0, 2, 2],
      [3, 4, 4],
    ]);
    expect(passes({ timeS: [0, 1, 2, 61, 62], distanceNm: (s) => (s < 60 ? 3 : 8) })).toHaveLength(1);
    expect(passes({ timeS: [0, 1, 2, 62, 63], distanceNm: (s) => (s < 60 ? 3 : 8) })).toHaveLength(2);
  });
});
