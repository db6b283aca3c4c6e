import { describe, expect, it } from 'vitest';
import type { Moments } from '../../../core/approach/approach-events.ts';
import { segmentsOf, type Limits } from '../../../core/approach/segments.ts';
import { makeFlown, type Making } from './make-flown.ts';

/** Landed at 300 s after the threshold at 290 s, decision altitude at 250 s. */
const LANDED: Moments = {
  aliveS: 20,
  capture: { establishedS: 40, lostS: [], reEstablishedS: [] },
  glidepathAliveS: 60,
  intercept: { timeS: 90, from: 'below' },
  fixS: 100,
  fixAssumed: false,
  gates: [],
  decision: { timeS: 250, altitudeFt: 330, assumed: false },
  unseen: [],
  missedStartS: null,
  ending: {
    outcome: 'landed',
    leftS: null,
    passage: { timeS: 290, heightFt: 50 },
    landing: { touchdownS: 300, estimated: false, roll: { first: 300, last: 320 } },
    climb: null,
  },
};
/** Missed at 255 s; the lowest point at 260 s is 300 ft, and 300 ft above it stood at 290 s. */
const MISSED: Moments = {
  ...LANDED,
  missedStartS: 255,
  ending: {
    outcome: 'missed-approach',
    leftS: null,
    passage: null,
    landing: null,
    climb: { lowestS: 260, lowestFt: 300, lowestFix: 260, clearS: 290 },
  },
};

const segments = (moments: Moments, limits: Limits, making: Making = {}) =>
  segmentsOf(makeFlown({ untilS: 600, ...making }), moments, limits, 600).map(({ kind, startS, endS }) => [
    kind,
    startS,
    endS,
  ]);

describe('segments', () => {
  it('of a landing part at the fix and at decision altitude, and end at touchdown', () => {
    expect(segments(LANDED, { beganS: 100, endS: 300 })).toEqual([
      ['intercept', 20, 100],
      ['final', 100, 250],
      ['visual', 250, 300],
    ]);
  });

  it('end at the threshold where no touchdown was seen, and at the approach’s end where neither was', () => {
    const noLanding = { ...LANDED.ending, landing: null };
    const limits = { beganS: 100, endS: 310 };
    expect(segments({ ...LANDED, ending: noLanding }, limits).at(-1)).toEqual(['visual', 250, 290]);
    const neither = { ...LANDED, ending: { ...noLanding, passage: null } };
    expect(segments(neither, limits).at(-1)).toEqual(['visual', 250, 310]);
  });

  it('have no visual one when the approach ended before decision altitude', () => {
    expect(segments(LANDED, { beganS: 100, endS: 240 })).toEqual([
      ['intercept', 20, 100],
      ['final', 100, 240],
    ]);
    expect(segments({ ...LANDED, decision: null }, { beganS: 100, endS: 300 })).toHaveLength(2);
  });

  it('end final with the last fix before a gap in which decision altitude was passed', () => {
    const unseen = [{ kind: 'decision-altitude', startS: 240, endS: 258 }] as const;
    const gap = { ...LANDED, decision: null, unseen };
    expect(segments(gap, { beganS: 100, endS: 300 })).toEqual([
      ['intercept', 20, 100],
      ['final', 100, 240],
      ['visual', 258, 300],
    ]);
    // A go-around begun before it ends final first.
    expect(
      segments({ ...MISSED, decision: null, unseen, missedStartS: 230 }, { beganS: 100, endS: 290 })[1],
    ).toEqual(['final', 100, 230]);
  });

  it('end final at the threshold where decision altitude was not reached before it', () => {
    const over: Making = { distanceNm: (s) => (290.5 - s) / 40 };
    const limits = { beganS: 100, endS: 300 };
    expect(segments({ ...LANDED, decision: null }, limits, over)).toEqual([
      ['intercept', 20, 100],
      ['final', 100, 290.5],
    ]);
    const late = { ...LANDED.decision!, timeS: 295 };
    expect(segments({ ...LANDED, decision: late }, limits, over).slice(1)).toEqual([
      ['final', 100, 290.5],
      ['visual', 295, 300],
    ]);
  });

  it('end final with the last fix before a gap over the threshold', () => {
    const timeS = Array.from({ length: 301 }, (_, s) => s).filter((s) => s <= 280 || s >= 292);
    const over: Making = { timeS, distanceNm: (s) => (290.5 - s) / 40 };
    const found = segments({ ...LANDED, decision: null }, { beganS: 100, endS: 300 }, over);
    expect(found.at(-1)).toEqual(['final', 100, 280]);
  });

  it('are the intercept alone when final never began, and no intercept when final began with the localizer', () => {
    expect(segments(LANDED, { beganS: null, endS: 80 })).toEqual([['intercept', 20, 80]]);
    expect(segments(LANDED, { beganS: 20, endS: 300 })[0]).toEqual(['final', 20, 250]);
  });
});

describe('the missed segment', () => {
  const limits = { beganS: 100, endS: 290 };
  const missed = (making: Making) => segments(MISSED, limits, making).at(-1);
  /** Climbing 5 ft a second from 300 ft at 260 s, all the way; 1,500 ft above is passed at 560 s. */
  const climbing: Making = { heightFt: (s) => 200 + 5 * Math.max(0, s - 260), verticalSpeedFpm: 300 };
  const levelBetween = (fromS: number, toS: number, fpm = 0): Making => ({
    ...climbing,
    verticalSpeedFpm: (s) => (s >= fromS && s <= toS ? fpm : 300),
  });

  it('begins at the start of the missed approach, which also ends the visual one', () => {
    expect(segments(MISSED, limits, climbing)).toEqual([
      ['intercept', 20, 100],
      ['final', 100, 250],
      ['visual', 250, 255],
      ['missed', 255, 560],
    ]);
    const early = { ...MISSED, missedStartS: 230 };
    expect(segments(early, limits, climbing).slice(1)).toEqual([
      ['final', 100, 230],
      ['missed', 230, 560],
    ]);
  });

  it('ends at the first of ten seconds level, and not for less', () => {
    expect(missed(levelBetween(400, 410))).toEqual(['missed', 255, 400]);
    expect(missed(levelBetween(400, 409))).toEqual(['missed', 255, 560]);
    expect(missed(levelBetween(400, 430))).toEqual(['missed', 255, 400]);
  });

  it('takes less than 100 ft/min for level', () => {
    expect(missed(levelBetween(400, 410, 99.9))).toEqual(['missed', 255, 400]);
    expect(missed(levelBetween(400, 410, 100))).toEqual(['missed', 255, 560]);
  });

  it('does not take the lowest point for a level-off', () => {
    expect(missed(levelBetween(255, 290))).toEqual(['missed', 255, 560]);
  });

  it('ends with what was recorded when it was still climbing', () => {
    expect(missed({ heightFt: (s) => 200 + Math.max(0, s - 260), verticalSpeedFpm: 300 })).toEqual([
      'missed',
      255,
      600,
    ]);
  });
});
