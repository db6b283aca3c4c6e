import { describe, expect, it } from 'vitest';
import { halved } from '../../../core/standard/halved.ts';
import type { Limit } from '../../../core/standard/standard.ts';
import { judgeTimed, type TimedQuestion } from '../../../core/standard/timed-criterion.ts';
import { every } from '../numeric/line.ts';

const band = (lower: number | null, upper: number | null): Limit => ({
  lower,
  upper,
  code: null,
  source: 'made for this test',
  status: 'own choice',
});

/** 100 s at a value each ten seconds, against ± 1. */
function question(values: number[], more: Partial<TimedQuestion> = {}): TimedQuestion {
  return {
    id: 'made',
    title: 'Made',
    unit: 'kt',
    limit: band(-1, 1),
    limitWords: '±1 kt',
    counted: [{ startS: 0, endS: (values.length - 1) * 10 }],
    parts: [every(10, values)],
    flownNm: [
      every(
        10,
        values.map((_, i) => i / 4),
      ),
    ],
    halfWidths: [],
    madeUpToS: null,
    near: 0,
    halfFloor: 0,
    prompt: { depth: 0, stop: Infinity, lowFromS: Infinity, decisionS: null, finalS: 1000 },
    endedBy: null,
    openEnd: null,
    ...more,
  };
}

describe('a tolerance told in time', () => {
  it('exactly at its limit is met', () => {
    expect(judgeTimed(question([1, 1, -1, -1]))).toMatchObject({
      verdict: 'met',
      why: 'within ±1 kt',
      outsideS: 0,
      assessedS: 30,
    });
  });

  it('knows the value farthest beyond, or nearest to, its limit', () => {
    expect(judgeTimed(question([0, 0.5, -0.9, 0])).measured).toBe(-0.9);
    expect(judgeTimed(question([0, 3, -2, 0])).measured).toBe(3);
    // 2 below 0..20 is farther out than 1 above it.
    expect(judgeTimed(question([21, -2, 10], { limit: band(0, 20) })).measured).toBe(-2);
    expect(judgeTimed(question([900, 950, 800], { limit: band(null, 1000) })).measured).toBe(950);
    expect(judgeTimed(question([70, 61, 80], { limit: band(60, null) })).measured).toBe(61);
  });

  it('takes what was left on purpose for no farthest value, and an excursion before it for one', () => {
    const left = (values: number[]) => judgeTimed(question(values, { endedBy: 'leaving' }));
    expect(left([0, -0.5, 0, 3]).measured).toBeCloseTo(1, 12);
    expect(left([0, -0.5, 0, 3]).excursions).toEqual([]);
    expect(left([0, -2, 0, 3]).measured).toBe(-2);
    expect(left([0, 0.5, 0, 0]).measured).toBe(0.5);
  });

  it('says where only the number of short ones is against them', () => {
    const why = (values: number[]) => judgeTimed(question(values)).why;
    // Each beyond for 3.3 s of the 20 that it takes up and back.
    expect(why([0, 1.2, 0, 0, 1.2, 0, 0, 1.2, 0])).toBe(
      'beyond ±1 kt for 10 s, 3 times: two at most count as promptly corrected',
    );
    expect(why([0, 1.2, 0, 0, 1.2, 0])).not.toContain('times');
    expect(why([0, 1.2, 0, 0, 1.2, 0, 0, 9, 0])).not.toContain('times');
  });

  it('tells the share within half of it on the lines between fixes', () => {
    // 0 to 1: half of the time within 0.5.
    expect(judgeTimed(question([0, 1])).insideHalfShare).toBeCloseTo(0.5, 12);
    expect(judgeTimed(question([0, 1], { halfFloor: 0.8 })).insideHalfShare).toBeCloseTo(0.8, 12);
  });

  it('of one side tells its share too', () => {
    const share = (values: number[], limit: Limit) => judgeTimed(question(values, { limit })).insideHalfShare;
    expect(share([400, 600], band(null, 1000))).toBeCloseTo(0.5, 12);
    expect(share([-400, -600], band(-1000, null))).toBeCloseTo(0.5, 12);
    expect(share([900, 900], band(null, 1000))).toBe(0);
  });

  it('that nothing was recorded for is not assessed', () => {
    expect(
      judgeTimed(question([], { parts: [], flownNm: [], counted: [{ startS: 0, endS: 30 }] })),
    ).toMatchObject({
      verdict: 'not-assessed',
      why: 'nothing of it was recorded',
      measured: null,
      outsideS: null,
      insideHalfShare: null,
    });
  });

  it('with an unrecorded beginning or end is unclear, however short', () => {
    const counted = [{ startS: -2, endS: 30 }];
    expect(judgeTimed(question([0, 0, 0, 0], { counted }))).toMatchObject({
      verdict: 'unclear',
      outsideRangeS: { atLeast: 0, atMost: 2 },
      why: 'within ±1 kt, but 2 s of it were not recorded',
    });
    expect(judgeTimed(question([0, 0, 0, 0], { counted: [{ startS: 0, endS: 31 }] })).verdict).toBe(
      'unclear',
    );
    expect(judgeTimed(question([2, 2, 0, 0], { counted })).verdict).toBe('not-met');
  });

  it('with an open end is not assessed when within, and not met when beyond', () => {
    const openEnd = 'it went on unseen';
    expect(judgeTimed(question([0, 0], { openEnd }))).toMatchObject({
      verdict: 'not-assessed',
      why: 'within ±1 kt, but it went on unseen',
    });
    expect(judgeTimed(question([0, 2, 0], { openEnd })).verdict).toBe('not-met');
  });

  it('takes a made-up excursion in place of what was flown in its time, to its very end', () => {
    // At 15 s the value is 2; it comes down through 1 at 25 s.
    const found = judgeTimed(question([2, 2, 2, 0, 0], { madeUpToS: 15 }));
    expect(found.excursions.map(({ startS, endS }) => [startS, endS])).toEqual([
      [0, 15],
      [15, 25],
    ]);
    expect(found.outsideS).toBe(25);
  });
});

describe('half of a limit', () => {
  it.each([
    ['to both sides of a target', band(-10, 10), 0, [-5, 5]],
    ['never below the floor', band(-5, 10), 4, [-4, 5]],
    ['is the middle half of a band beside it', band(0, 20), 4, [5, 15]],
    ['of a narrow one the floor to both sides', band(0, 10), 4, [1, 9]],
    ['of a band narrower than the floor all of it', band(0, 6), 4, [0, 6]],
    ['of one side', band(null, 1000), 0, [null, 500]],
    ['of the other side', band(-1000, null), 0, [-500, null]],
    ['is the limit itself where that keeps away from the target', band(60, null), 0, [60, null]],
    ['likewise on the other side', band(null, -60), 0, [null, -60]],
  ])('%s', (_, limit, floor, [lower, upper]) => {
    expect(halved(limit, floor)).toEqual({ lower, upper });
  });
});
