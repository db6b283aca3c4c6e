import { describe, expect, it } from 'vitest';
import { findCorrections } from '../../../core/approach/corrections.ts';
import { makeFlown, type Making } from './make-flown.ts';

const WHOLE = { startS: 0, endS: 100 };
const found = (making: Making, span = WHOLE) => findCorrections(makeFlown(making), span);
/** On course, from 20 to 24 s over to an angle, and held there. */
const turnTo = (deg: number) => (s: number) => (Math.min(4, Math.max(0, s - 20)) * deg) / 4;

describe('corrections', () => {
  it('are changes of track of 2° or more', () => {
    expect(found({ courseAngleDeg: turnTo(2) })).toEqual({
      count: 1,
      meanDeg: 2,
      largestDeg: 2,
      delays: [],
    });
    expect(found({ courseAngleDeg: turnTo(-2) })!.count).toBe(1);
    expect(found({ courseAngleDeg: turnTo(1.99) })).toEqual({
      count: 0,
      meanDeg: null,
      largestDeg: null,
      delays: [],
    });
  });

  it('have a mean and a largest', () => {
    // 4° over, 6° back.
    const courseAngleDeg = (s: number) => turnTo(4)(s) - turnTo(6)(s - 30);
    expect(found({ courseAngleDeg })).toMatchObject({ count: 2, meanDeg: 5, largestDeg: 6 });
  });

  it('are smoothed over three seconds: one fix that jumps is none', () => {
    // 5° at one fix: of five samples over 3 s the one in the middle sees 5° and two see 1.25°: 1.5° on average.
    expect(found({ courseAngleDeg: (s) => (s === 50 ? 5 : 0) })!.count).toBe(0);
    expect(found({ courseAngleDeg: (s) => (s === 50 ? 7 : 0) })!.largestDeg).toBeCloseTo(2.1, 9);
  });

  it('are looked for within the span only, and are not known without a track', () => {
    expect(found({ courseAngleDeg: turnTo(3) }, { startS: 25, endS: 100 })!.count).toBe(0);
    expect(found({ courseAngleDeg: NaN })).toBeNull();
    expect(found({}, { startS: 5, endS: 5 })).toBeNull();
  });

  it('do not span a gap', () => {
    const timeS = [0, 1, 2, 3, 4, 20, 21, 22, 23, 24];
    expect(found({ timeS, courseAngleDeg: (s) => (s < 10 ? 0 : 5) })!.count).toBe(0);
  });
});

describe('the time from leaving a quarter scale to the correction', () => {
  /** A quarter scale exactly at 30 s, and on outward. */
  const leaving = (s: number) => Math.min(0.9, (s - 20) / 40);
  /** 3° away from the course until 40 s, then 1° a second back to 3° towards it: 2° are turned back at 42 s. */
  const turningBack = (s: number) => 3 - Math.min(6, Math.max(0, s - 40));

  it('runs until the track has turned 2° back', () => {
    expect(found({ localizer: leaving, courseAngleDeg: turningBack })!.delays).toEqual([
      { leftS: 30, delayS: 12 },
    ]);
  });

  it('is as long on the left', () => {
    const left = { localizer: (s: number) => -leaving(s), courseAngleDeg: (s: number) => -turningBack(s) };
    expect(found(left)!.delays).toEqual([{ leftS: 30, delayS: 12 }]);
  });

  it('is not known when the track never turned back, or turned farther away', () => {
    expect(found({ localizer: leaving, courseAngleDeg: 3 })!.delays).toEqual([{ leftS: 30, delayS: null }]);
    const away = (s: number) => -turningBack(s);
    expect(found({ localizer: leaving, courseAngleDeg: away })!.delays[0]!.delayS).toBeNull();
  });

  it('is of no time when the quarter was never left, or was left before the span', () => {
    expect(found({ localizer: 0.25, courseAngleDeg: turningBack })!.delays).toEqual([]);
    expect(found({ localizer: 0.26, courseAngleDeg: turningBack })!.delays).toEqual([]);
  });
});
