import { describe, expect, it } from 'vitest';
import type { ApproachSegment, EventKind, FlownApproach } from '../../../core/approach/flown-approach.ts';
import { wholeMeasures } from '../../../core/approach/whole-measures.ts';
import { makeFlown, type Making } from './make-flown.ts';

const FINAL: ApproachSegment = { kind: 'final', startS: 20, endS: 80 };

function approachOf(
  events: readonly [EventKind, number][],
  segments: readonly ApproachSegment[] = [FINAL],
): FlownApproach {
  return {
    kind: 'approach',
    why: null,
    startS: 0,
    endS: 100,
    outcome: 'landed',
    events: events.map(([kind, timeS]) => ({ kind, timeS, remark: null, heightCrossedFt: null })),
    segments,
    finalBeganS: 20,
    flownToDecision: true,
    insideFix: null,
    unseen: [],
    roll: null,
  };
}

const measures = (making: Making, events: readonly [EventKind, number][] = [], segments = [FINAL]) =>
  wholeMeasures(makeFlown(making), approachOf(events, segments), 0);

describe('the sink rate held on final', () => {
  it('is the height lost over the time, against what the groundspeed needs', () => {
    // 8 ft a second are 480 ft/min; 90 kt are 9,114.2 ft/min along the ground, and 3° of it 477.66.
    const { sink } = measures({ heightFt: (s) => 1500 - 8 * s });
    expect(sink!.heldFpm).toBeCloseTo(480, 9);
    expect(sink!.neededFpm).toBeCloseTo(477.66, 1);
  });

  it('looks at final and at nothing else', () => {
    const { sink } = measures({
      heightFt: (s) => (s < 20 ? 2000 : s <= 80 ? 1000 - 10 * (s - 20) : 100),
      groundspeedKt: (s) => (s >= 20 && s <= 80 ? 60 : 150),
    });
    expect(sink!.heldFpm).toBeCloseTo(600, 9);
    expect(sink!.neededFpm).toBeCloseTo((477.66 * 60) / 90, 1);
  });

  it('leaves a gap out', () => {
    // 5 ft a second to 40 s, unrecorded to 60 s, 5 ft a second to 80 s; what was lost meanwhile counts for nothing.
    const timeS = Array.from({ length: 101 }, (_, s) => s).filter((s) => s <= 40 || s >= 60);
    const { sink } = measures({ timeS, heightFt: (s) => 1500 - 5 * s - (s >= 60 ? 700 : 0) });
    expect(sink!.heldFpm).toBeCloseTo(300, 9);
  });

  it('is not known without heights or without a groundspeed', () => {
    expect(measures({ heightFt: NaN }).sink).toBeNull();
    expect(measures({ groundspeedKt: NaN }).sink).toBeNull();
  });
});

describe('what is measured on final', () => {
  it('is nothing where there was no final', () => {
    const recorded = { airspeedTrueKt: 100, headingTrueDeg: 90 };
    const { corrections, sink, wind } = measures({ recorded }, [], []);
    expect([corrections, sink, wind]).toEqual([null, null, null]);
  });

  it('holds the corrections and the wind of final', () => {
    const found = measures({
      courseAngleDeg: (s) => (s < 40 ? 0 : 4),
      recorded: { airspeedTrueKt: 100, headingTrueDeg: 90 },
    });
    expect(found.corrections).toMatchObject({ count: 1, largestDeg: 4 });
    expect(found.wind!.headwindKt).toBeCloseTo(10, 9);
  });
});

describe('the wind at a moment', () => {
  const EAST = { airspeedTrueKt: 100, headingTrueDeg: 90 };

  it('is that from 10 s before it to 10 s after it', () => {
    const recorded = EAST;
    const groundspeedKt = (s: number) => (s >= 40 && s <= 60 ? 88 : 30);
    const found = measures({ groundspeedKt, recorded }, [['gate-1000', 50]]);
    expect(found.windAt1000!.headwindKt).toBeCloseTo(12, 9);
    expect(found.windAtThreshold).toBeNull();
  });

  it('goes no farther than the approach: a wheel on the ground tells no wind', () => {
    // Ends at 100 s; from then on it brakes, and would show a gale.
    const groundspeedKt = (s: number) => (s <= 100 ? 92 : 92 - 10 * (s - 100));
    const found = measures({ untilS: 110, groundspeedKt, recorded: EAST }, [['threshold', 96]]);
    expect(found.windAtThreshold!.headwindKt).toBeCloseTo(8, 9);
  });

  it('is not known across a gap that holds all of the 20 s', () => {
    const timeS = Array.from({ length: 101 }, (_, s) => s).filter((s) => s < 40 || s > 60);
    expect(measures({ timeS, recorded: EAST }, [['gate-1000', 50]]).windAt1000).toBeNull();
  });
});

describe('threshold and touchdown', () => {
  const making: Making = {
    distanceNm: (s) => (50 - s) / 40,
    heightFt: (s) => 150 - 2 * s,
    offsetFt: (s) => -s / 10,
  };

  it('have a height and an offset at the one, and a distance beyond it at the other', () => {
    const found = measures(making, [
      ['threshold', 50],
      ['touchdown', 58],
    ]);
    expect(found.threshold!.heightFt).toBeCloseTo(50, 9);
    expect(found.threshold!.offsetFt).toBeCloseTo(-5, 9);
    // A fifth of a nautical mile.
    expect(found.touchdownDistanceFt).toBeCloseTo(1215.22, 2);
  });

  it('are not known where neither was reached, nor at a threshold passed abeam', () => {
    const found = measures(making, [['abeam-threshold', 50]]);
    expect([found.threshold, found.touchdownDistanceFt, found.heightLostFt]).toEqual([null, null, null]);
  });
});

describe('the height lost in a missed approach', () => {
  it('is that between its start and its lowest point', () => {
    const missed: [EventKind, number][] = [
      ['missed-approach-start', 60],
      ['lowest-point', 64.5],
    ];
    expect(measures({ heightFt: (s) => 900 - 8 * s }, missed).heightLostFt).toBeCloseTo(36, 9);
    expect(measures({}, [['missed-approach-start', 60]]).heightLostFt).toBeNull();
  });
});
