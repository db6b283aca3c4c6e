import { describe, expect, it } from 'vitest';
import { facilityDoubts } from '../../../core/approach/facility-doubts.ts';
import type { ApproachEvent } from '../../../core/approach/flown-approach.ts';
import { rolloutOf } from '../../../core/approach/rollout.ts';
import { makeFlown, type Making } from './make-flown.ts';
import { ROLL, ROLLING } from './rolling.ts';

const rollout = (making: Making = {}, roll = ROLL) =>
  rolloutOf(makeFlown({ ...ROLLING, ...making }), { roll })!;

describe('a roll after landing', () => {
  it('at the height of an antenna six feet up shows no bias', () => {
    expect(rollout().heightBiasFt).toBeCloseTo(0, 9);
    expect(rollout({ heightFt: 41 }).heightBiasFt).toBeCloseTo(35, 9);
    expect(rollout({ heightFt: -14 }).heightBiasFt).toBeCloseTo(-20, 9);
  });

  it('is held to the antenna that is stated', () => {
    expect(rollout({ heightFt: 41, antennaHeightFt: 11 }).heightBiasFt).toBeCloseTo(30, 9);
    expect(rollout({ heightFt: 0, antennaHeightFt: 0 }).heightBiasFt).toBeCloseTo(0, 9);
  });

  it('tells it by its slow end only, where the aircraft has settled', () => {
    // Slowest 30 kt: below 1.25 × 30 + 1 = 38.5 kt, from 42 s on.
    expect(rollout({ heightFt: (s) => (s < 42 ? 100 : 16) }).heightBiasFt).toBeCloseTo(10, 9);
    expect(rollout({ heightFt: (s) => (s < 43 ? 100 : 16) }).heightBiasFt).toBeCloseTo(10, 9);
    expect(rollout({ heightFt: (s) => (s === 45 ? 500 : 16) }).heightBiasFt).toBeCloseTo(10, 9);
  });

  it('counts from the runway where it rolls, which may rise', () => {
    // 60 ft over 6,000 ft; at 46 s, in the middle of the slow end, 0.56 NM or 3,403 ft along: 34 ft up.
    expect(rollout({ heightFt: 40, facility: {} }).heightBiasFt).toBeCloseTo(0, 0);
  });

  it('has its line, beside the centreline or askew', () => {
    expect(rollout({ offsetFt: -70 })).toMatchObject({ offsetFt: -70, askewDeg: 0 });
    // 2 ft aside for each of 61 ft along: atan(2 / 60.76) = 1.885°, by hand.
    expect(rollout({ offsetFt: (s) => 2 * s }).askewDeg).toBeCloseTo(1.885, 2);
    expect(rollout({ offsetFt: (s) => -2 * s }).askewDeg).toBeCloseTo(-1.885, 2);
  });

  it('has it from the part before it turns off or is slow', () => {
    const turning = rollout({
      offsetFt: (s) => (s < 40 ? 5 : 5 + 30 * (s - 39)),
      courseAngleDeg: (s) => (s < 40 ? 0 : 26),
    });
    expect(turning).toMatchObject({ offsetFt: 5, askewDeg: 0 });
    expect(
      rollout({ groundspeedKt: (s) => (s < 40 ? 60 : 24), offsetFt: (s) => (s < 40 ? 5 : 99) }).offsetFt,
    ).toBe(5);
  });

  it('has no line, direction or height where too little was recorded of it', () => {
    expect(rollout({}, { first: 10, last: 11 })).toEqual({
      heightBiasFt: null,
      offsetFt: null,
      askewDeg: null,
      asideFt: null,
    });
    // 13 intervals of 61 ft are 790 ft, 14 are 851.
    expect(rollout({}, { first: 10, last: 23 }).askewDeg).toBeNull();
    expect(rollout({}, { first: 10, last: 24 }).askewDeg).toBe(0);
    expect(rollout({ courseAngleDeg: 11 }).offsetFt).toBeNull();
    expect(rollout({ heightFt: NaN }).heightBiasFt).toBeNull();
  });

  it('is none without a landing', () => {
    expect(rolloutOf(makeFlown(), { roll: null })).toBeNull();
  });
});

describe('what a landing says against the facility', () => {
  const event = (kind: ApproachEvent['kind'], timeS: number): ApproachEvent => ({
    kind,
    timeS,
    remark: null,
    heightCrossedFt: null,
  });
  const codes = (making: Making, events: ApproachEvent[] = []) => {
    const flown = makeFlown({ ...ROLLING, ...making });
    const approach = {
      kind: 'approach',
      why: null,
      startS: 0,
      endS: 10,
      outcome: 'landed',
      events,
      segments: [],
      finalBeganS: 0,
      flownToDecision: true,
      insideFix: null,
      unseen: [],
      roll: ROLL,
    } as const;
    return facilityDoubts(flown, approach, rolloutOf(flown, approach));
  };

  it('is nothing where it rolled out on the runway', () => {
    expect(codes({}, [event('threshold', 5)])).toEqual([]);
    expect(codes({ offsetFt: 60, heightFt: 86 })).toEqual([]);
  });

  it('is asked with the field that is likely wrong', () => {
    expect(codes({ offsetFt: -60.1 })).toMatchObject([
      { code: 'facility-centreline', message: 'The roll ran 60 ft left of the entered centreline.' },
    ]);
    expect(codes({ offsetFt: (s) => 1.5 * s })).toMatchObject([
      {
        code: 'facility-bearing',
        message: 'The roll ran along 091.4° true, and the runway is entered at 090.0°.',
        tip: 'Check the positions of both ends of the runway, or runway.trueBearingDeg.',
      },
    ]);
    expect(codes({ heightFt: 86.1 })).toMatchObject([
      { code: 'facility-elevation', message: 'On the roll the log stood 80 ft above the entered runway.' },
    ]);
    expect(codes({ heightFt: -90 })).toMatchObject([{ code: 'facility-elevation' }]);
    expect(codes({ heightFt: (s) => (s === 5 ? 300 : 6) }, [event('abeam-threshold', 5)])).toMatchObject([
      {
        code: 'facility-threshold',
        severity: 'warning',
        message: 'It landed, and yet crossed the entered threshold 300 ft up.',
      },
    ]);
  });

  it('is asked of a bearing more than a degree off, and of none less', () => {
    // 1.06 ft aside for each of 60.76 ft along is 1.0°, by hand.
    expect(codes({ offsetFt: (s) => 1.05 * s })).toEqual([]);
    expect(codes({ offsetFt: (s) => 1.07 * s })).toMatchObject([{ code: 'facility-bearing' }]);
    // Nor of one who strays 40 ft aside, however short the way.
    const shortWay = (ft: number) => ({
      offsetFt: (s: number) => (ft * (s - 10)) / 40,
      distanceNm: (s: number) => -0.1 - 0.005 * s,
    });
    expect(codes(shortWay(39.9))).toEqual([]);
    expect(codes(shortWay(40.1))).toMatchObject([{ code: 'facility-bearing' }]);
  });

  it('is nothing without a roll', () => {
    const flown = makeFlown();
    expect(facilityDoubts(flown, { events: [] } as never, null)).toEqual([]);
  });
});
