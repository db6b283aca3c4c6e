import { describe, expect, it } from 'vitest';
import { approachEvents, type Moments } from '../../../core/approach/approach-events.ts';

const MOMENTS: Moments = {
  aliveS: 20,
  capture: { establishedS: 40, lostS: [130, 150], reEstablishedS: [140] },
  glidepathAliveS: 60,
  intercept: { timeS: 90, from: 'above' },
  fixS: 100,
  fixAssumed: true,
  gates: [
    { kind: 'gate-1000', timeS: 160, altitudeFt: 1160 },
    { kind: 'gate-500', timeS: 220, altitudeFt: 660 },
  ],
  decision: { timeS: 250, altitudeFt: 330, assumed: true },
  unseen: [],
  missedStartS: null,
  ending: {
    outcome: 'landed',
    leftS: null,
    passage: { timeS: 290, heightFt: 50 },
    landing: { touchdownS: 300, estimated: true, roll: { first: 300, last: 320 } },
    climb: null,
  },
};
const kinds = (moments: Moments, endS = 300) => approachEvents(moments, endS).map(({ kind }) => kind);

describe('the events of an approach', () => {
  it('stand in the order of time, each loss and each return where it was', () => {
    expect(approachEvents(MOMENTS, 300).map(({ kind, timeS }) => [kind, timeS])).toEqual([
      ['localizer-alive', 20],
      ['localizer-established', 40],
      ['glidepath-alive', 60],
      ['glidepath-intercept', 90],
      ['final-approach-fix', 100],
      ['localizer-lost', 130],
      ['localizer-re-established', 140],
      ['localizer-lost', 150],
      ['gate-1000', 160],
      ['gate-500', 220],
      ['decision-altitude', 250],
      ['threshold', 290],
      ['touchdown', 300],
    ]);
  });

  it('say what is peculiar about them, and which height was crossed', () => {
    const told = approachEvents(MOMENTS, 300)
      .filter(({ remark, heightCrossedFt }) => remark !== null || heightCrossedFt !== null)
      .map(({ kind, remark, heightCrossedFt }) => [kind, remark, heightCrossedFt]);
    expect(told).toEqual([
      ['glidepath-intercept', 'from-above', null],
      ['final-approach-fix', 'assumed', null],
      ['gate-1000', null, 1160],
      ['gate-500', null, 660],
      ['decision-altitude', 'assumed', 330],
      ['touchdown', 'estimated', null],
    ]);
  });

  it('end with the approach, the moment of its end included', () => {
    expect(kinds(MOMENTS, 220).at(-1)).toBe('gate-500');
    expect(kinds(MOMENTS, 219.9).at(-1)).toBe('gate-1000');
  });

  it('have the threshold below 200 ft, and pass it abeam at 200 ft', () => {
    const crossedAt = (heightFt: number) =>
      kinds({ ...MOMENTS, ending: { ...MOMENTS.ending, passage: { timeS: 290, heightFt } } }).at(-2);
    expect(crossedAt(199.9)).toBe('threshold');
    expect(crossedAt(200)).toBe('abeam-threshold');
  });

  it('have a lowest point only where a missed approach was begun', () => {
    const climb = { lowestS: 270, lowestFt: 300, lowestFix: 270, clearS: 295 };
    const ending = { ...MOMENTS.ending, passage: null, landing: null, climb };
    expect(kinds({ ...MOMENTS, ending }).at(-1)).toBe('decision-altitude');
    expect(kinds({ ...MOMENTS, missedStartS: 265, ending }).slice(-2)).toEqual([
      'missed-approach-start',
      'lowest-point',
    ]);
  });

  it('are the localizer alive alone when nothing else was reached', () => {
    const nothing: Moments = {
      ...MOMENTS,
      capture: { establishedS: null, lostS: [], reEstablishedS: [] },
      glidepathAliveS: null,
      intercept: null,
      fixS: null,
      gates: [],
      decision: null,
      ending: { ...MOMENTS.ending, passage: null, landing: null },
    };
    expect(kinds(nothing)).toEqual(['localizer-alive']);
  });
});
