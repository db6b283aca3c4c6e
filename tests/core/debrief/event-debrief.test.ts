import { describe, expect, it } from 'vitest';
import type { ApproachEvent, FlownApproach } from '../../../core/approach/flown-approach.ts';
import { eventDebriefs } from '../../../core/debrief/event-debrief.ts';
import { makeFlown, type Making } from '../approach/make-flown.ts';

/** What is said of one event at a moment, by default the crossing of a height at 50 s. */
function said(making: Making, event: Partial<ApproachEvent> = {}, decisionS: number | null = null) {
  const gate: ApproachEvent = { kind: 'gate-500', timeS: 50, remark: null, heightCrossedFt: 660, ...event };
  const decision: ApproachEvent = { ...gate, kind: 'decision-altitude', timeS: decisionS ?? Infinity };
  const approach: FlownApproach = {
    kind: 'approach',
    why: null,
    startS: 0,
    endS: 100,
    outcome: 'incomplete',
    events: decisionS === null ? [gate] : [decision, gate],
    segments: [],
    finalBeganS: 0,
    flownToDecision: decisionS !== null,
    insideFix: null,
    unseen: [],
    roll: null,
  };
  return eventDebriefs(makeFlown(making), approach).at(-1)!;
}
/** Fixes only where a test says; the needle at each. */
const needleAt = (fixes: readonly (readonly [timeS: number, fullScale: number])[]): Making => ({
  timeS: fixes.map(([timeS]) => timeS),
  localizer: (s) => fixes.find(([timeS]) => timeS === s)![1],
});

describe('a glidepath that was met', () => {
  const met = (remark: ApproachEvent['remark']) =>
    said({}, { kind: 'glidepath-intercept', heightCrossedFt: null, remark }).unknown;
  it('from nobody knows where says so', () => {
    expect(met(null)['remark']).toBe(
      'The log begins, or has a gap, too shortly before to tell whether the glidepath was met from above or from below.',
    );
    expect(met('from-above')['remark']).toBeUndefined();
    expect(said({}).unknown['remark']).toBeUndefined();
  });
});

describe('at a height crossed', () => {
  it('the altitude is that height, and the rest are medians of the fixes around', () => {
    const event = said({ groundspeedKt: (s) => (s === 50 ? 200 : 90), heightFt: 555 });
    expect(event).toMatchObject({ altitudeFt: 660, groundspeedKt: 90 });
  });

  it('a fix exactly two seconds before counts as much as one exactly two seconds after', () => {
    const fixes = [
      [48, 0.1],
      [50, 0.2],
      [52, 0.6],
    ] as const;
    expect(said(needleAt(fixes)).localizerFullScale).toBe(0.2);
    // Flown the other way round in time, it is the same.
    const turned = fixes.map(([timeS, fullScale]) => [100 - timeS, fullScale] as const).toReversed();
    expect(said(needleAt(turned)).localizerFullScale).toBe(0.2);
  });

  it('a fix farther away than two seconds does not count', () => {
    const fixes = [
      [47.9, 0.9],
      [49, 0.1],
      [51, 0.3],
      [52.1, 0.9],
    ] as const;
    expect(said(needleAt(fixes)).localizerFullScale).toBeCloseTo(0.2, 12);
    expect(said(needleAt(fixes), { timeS: 60 }).localizerFullScale).toBeNull();
  });
});

describe('at any other event', () => {
  it('the values are those of the moment, between two fixes', () => {
    const event = said({ localizer: (s) => s / 100 }, { heightCrossedFt: null, timeS: 50.5 });
    expect(event.localizerFullScale).toBeCloseTo(0.505, 12);
    expect(event.altitudeFt).toBe(1100);
  });
});

describe('needles below decision altitude', () => {
  it('are not given, with the reason; at it and above they are', () => {
    const below = said({ localizer: 0.4 }, { kind: 'threshold', heightCrossedFt: null }, 49);
    expect(below).toMatchObject({
      localizerFullScale: null,
      glidepathFullScale: null,
      centrelineOffsetFt: 0,
    });
    expect(below.unknown.localizerFullScale).toMatch(/only feet/);
    expect(said({ localizer: 0.4 }, {}, 50).localizerFullScale).toBe(0.4);
  });
});

describe('an airspeed', () => {
  it('is null with its reason where the log has none, and where it has none at the moment', () => {
    expect(said({}).unknown.airspeedKt).toBe('The log has no indicated airspeed.');
    const missing = said({ recorded: { airspeedIndicatedKt: NaN } });
    expect(missing).toMatchObject({
      airspeedKt: null,
      unknown: { airspeedKt: expect.stringMatching(/moment/) },
    });
    expect(said({ recorded: { airspeedIndicatedKt: 88 } })).toMatchObject({ airspeedKt: 88 });
  });
});
