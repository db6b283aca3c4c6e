import { describe, expect, it } from 'vitest';
import { altimeterDoubts } from '../../../core/approach/altimeter-doubt.ts';
import type { FlownApproach } from '../../../core/approach/flown-approach.ts';
import { makeFlown, THRESHOLD_FT, type Making } from './make-flown.ts';
import { ROLL, ROLLING } from './rolling.ts';

const landed = (first: number, last: number) => ({ roll: { first, last } }) as FlownApproach;
const LANDED = landed(ROLL.first, ROLL.last);
const doubts = (making: Making, approaches = [LANDED]) =>
  altimeterDoubts(makeFlown({ ...ROLLING, ...making }), approaches);
const shown = (offFt: number) => ({ indicatedFt: THRESHOLD_FT + offFt });

describe('what a roll says against the altimeter', () => {
  it('is nothing within 75 ft of the runway, where the wheels are', () => {
    expect(doubts(shown(0))).toEqual([]);
    expect(doubts(shown(74.9))).toEqual([]);
    expect(doubts(shown(-74.9))).toEqual([]);
  });

  it('is told from 75 ft on, to which side, and what follows', () => {
    expect(doubts(shown(75))).toMatchObject([
      {
        code: 'altimeter-off-on-roll',
        severity: 'warning',
        count: 1,
        message:
          'On the roll after landing the indicated altitude was 75 ft too high: decision altitude and gates were ' +
          'passed about as much lower than it showed, and they are judged by what it showed.',
      },
    ]);
    expect(doubts(shown(-273.4))[0]!.message).toMatch(/was 273 ft too low: .* passed about as much higher/);
  });

  it('is told by the slow end, and where the runway is there', () => {
    expect(doubts({ indicatedFt: (s) => THRESHOLD_FT + (s < 42 ? 200 : 0) })).toEqual([]);
    // 60 ft over 6,000 ft; at 46 s, in the middle of the slow end, 0.56 NM or 3,403 ft along: 34 ft up.
    expect(doubts({ ...shown(108), heightFt: 40, facility: {} })).toEqual([]);
    expect(doubts({ ...shown(110), heightFt: 40, facility: {} })[0]!.message).toContain('76 ft too high');
  });

  it('is one for all rolls, of the one that was off most', () => {
    const drifting: Making = {
      groundspeedKt: 30,
      indicatedFt: (s) => THRESHOLD_FT - (s < 25 ? 0 : s < 40 ? 80 : 120),
    };
    const rolls = [landed(10, 20), landed(26, 36), landed(42, 50)];
    expect(doubts(drifting, rolls)).toMatchObject([
      { count: 2, message: expect.stringContaining('On 2 of 3 rolls') as string },
    ]);
    expect(doubts(drifting, rolls)[0]!.message).toContain('was off, at most 120 ft too low');
  });

  it('is left to the facility where heights by satellite stand as far off', () => {
    expect(doubts({ ...shown(120), heightFt: 126 })).toEqual([]);
    // As far off to the other side they do not.
    expect(doubts({ ...shown(120), heightFt: -114 })).toHaveLength(1);
    expect(doubts({ ...shown(120), heightFt: NaN })).toHaveLength(1);
  });

  it('is nothing without a roll, an altimeter, or enough of either', () => {
    expect(doubts({})).toEqual([]);
    expect(doubts(shown(200), [{ roll: null } as FlownApproach])).toEqual([]);
    expect(doubts(shown(200), [landed(10, 11)])).toEqual([]);
    expect(doubts({ indicatedFt: NaN })).toEqual([]);
    expect(doubts({ indicatedFt: NaN, heightFt: 126 })).toEqual([]);
  });
});
