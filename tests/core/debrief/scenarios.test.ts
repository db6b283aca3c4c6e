import { describe, expect, it } from 'vitest';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import * as flown from '../../support/scenarios/approaches.ts';
import * as none from '../../support/scenarios/no-approaches.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { debriefTruth } from './drawn.ts';

const EVERYTHING = {
  columns: ({ columns }: ReturnType<typeof fly>, tenths: readonly number[]) => ({
    airspeedTrueKt: tenths.map((t) => columns.airspeedTrueKt[t]!),
    headingTrueDeg: tenths.map((t) => columns.headingTrueDeg[t]!),
  }),
};

/** Flown by the generator, which knows what was flown; nothing is added to the truth. */
describe('the ending of an approach', () => {
  it.each([
    flown.straightInLanding,
    flown.missedStraightAhead,
    flown.missedTurning,
    flown.lowApproach,
    flown.touchAndGoOnce,
    flown.touchAndGoThenLanding,
    flown.circling,
    flown.circlingFromNearBy,
    flown.sidestepping,
    flown.brokenOff,
    flown.endsOnFinal,
    flown.holdThenLanding,
  ])('is what was flown: %o', (scenario) => {
    const plan = scenario(PETRELHOLM);
    const debrief = debriefTruth(fly(plan));
    const graded = debrief.approaches.filter(({ kind }) => kind === 'approach');
    expect(graded.map(({ outcome }) => outcome)).toEqual(plan.outcomes);
    for (const { events, segments } of graded) {
      const times = events.map(({ utc }) => Date.parse(utc));
      expect(times).toEqual(times.toSorted((a, b) => a - b));
      expect(segments.every(({ durationS }) => durationS > 0)).toBe(true);
    }
    expect(
      debriefText(debrief)
        .split('\n')
        .every((line) => line.length <= 100),
    ).toBe(true);
  });

  it('in a circle is no safety limit crossed, and no rate that was not held, where its altitude was held before', () => {
    const [approach] = debriefTruth(fly(flown.circlingFromNearBy(PETRELHOLM))).approaches;
    const final = approach!.segments.find(({ kind }) => kind === 'final')!;
    // Held for long enough that it would be both anywhere else.
    expect(final.glidepath!.maxAbsFullScale).toBeGreaterThan(2);
    expect(approach!.safety).toEqual([]);
    expect(approach!.findings.map(({ id }) => id)).not.toContain('rate-not-held');
  });

  it('of a missed approach has its start, its lowest point and the height lost', () => {
    const truth = fly(flown.missedStraightAhead(PETRELHOLM));
    const [approach] = debriefTruth(truth).approaches;
    const [goAround] = truth.facts.goArounds;
    const seconds = (kind: string) =>
      Date.parse(approach!.events.find((event) => event.kind === kind)!.utc) / 1000;
    expect(Math.abs(seconds('lowest-point') - goAround!.lowestS)).toBeLessThanOrEqual(1);
    expect(Math.abs(seconds('missed-approach-start') - goAround!.decidedS)).toBeLessThan(4);
    const { heightLostInMissedApproachFt } = approach!.measures;
    expect(heightLostInMissedApproachFt).toBeGreaterThan(0);
    expect(heightLostInMissedApproachFt).toBeLessThan(60);
    expect(approach!.segments.map(({ kind }) => kind)).toContain('missed');
    expect(debriefText(debriefTruth(truth))).toContain(
      'in the missed approach, from where the sink was halved',
    );
  });

  it('of a landing has the threshold and the touchdown where the wheels touched', () => {
    const truth = fly(flown.straightInLanding(PETRELHOLM));
    const [approach] = debriefTruth(truth).approaches;
    const touchdown = approach!.events.find(({ kind }) => kind === 'touchdown')!;
    expect(Math.abs(Date.parse(touchdown.utc) / 1000 - truth.facts.touchdownsS[0]!)).toBeLessThan(3);
    expect(approach!.measures.threshold!.heightFt).toBeGreaterThan(20);
    expect(approach!.measures.threshold!.heightFt).toBeLessThan(90);
    expect(approach!.measures.touchdownDistanceFt).toBeGreaterThan(200);
  });

  it('with a heading and an airspeed tells the wind that was flown through', () => {
    const truth = fly(flown.straightInLanding(PETRELHOLM));
    const [approach] = debriefTruth(truth, EVERYTHING).approaches;
    const final = approach!.segments.find(({ kind }) => kind === 'final')!;
    const inFinal = (i: number) => {
      const s = truth.columns.timeS[i]! * 1000;
      return s >= Date.parse(final.startUtc) && s <= Date.parse(final.endUtc);
    };
    const mean = (column: Float64Array) => {
      const values = column.filter((_, i) => inFinal(i));
      return values.reduce((sum, value) => sum + value, 0) / values.length;
    };
    const speedKt = Math.hypot(mean(truth.columns.windEastKt), mean(truth.columns.windNorthKt));
    expect(Math.abs(approach!.measures.windOnFinal!.speedKt - speedKt)).toBeLessThan(1.5);
    expect(approach!.measures.windOnFinal!.headwindKt).toBeGreaterThan(0);
    expect(debriefText(debriefTruth(truth, EVERYTHING))).toContain('Wind on final from');
  });

  it('and the wind at the gate and at the threshold, which is weaker near the ground', () => {
    const truth = fly(flown.straightInLanding(PETRELHOLM));
    const { events, measures } = debriefTruth(truth, EVERYTHING).approaches[0]!;
    const { timeS, windEastKt, windNorthKt } = truth.columns;
    const moments = [
      ['gate-1000', measures.windAt1000],
      ['threshold', measures.windAtThreshold],
    ] as const;
    for (const [kind, wind] of moments) {
      const momentS = Date.parse(events.find((event) => event.kind === kind)!.utc) / 1000;
      const around = Array.from(timeS.keys()).filter((i) => Math.abs(timeS[i]! - momentS) <= 10);
      const mean = (column: Float64Array) => around.reduce((sum, i) => sum + column[i]!, 0) / around.length;
      const from = wind!.fromTrueDeg * (Math.PI / 180);
      // The truth's wind blows to, the answer's comes from; it is told by a track over 5 s, and to the touchdown only.
      expect(Math.abs(wind!.speedKt * Math.sin(from) + mean(windEastKt))).toBeLessThan(0.5);
      expect(Math.abs(wind!.speedKt * Math.cos(from) + mean(windNorthKt))).toBeLessThan(0.5);
    }
    expect(measures.windAtThreshold!.speedKt).toBeLessThan(measures.windAt1000!.speedKt);
  });
});

describe('recorded needles', () => {
  const truth = fly(flown.straightInLanding(PETRELHOLM));
  const recorded = (localizerBy: number) => ({
    columns: ({ beam }: typeof truth, tenths: readonly number[]) => ({
      // As a needle points, and the glidepath's the other way about.
      localizerRecordedFullScale: tenths.map((t) => -stopped(beam.localizerFullScale[t]! + localizerBy)),
      glidepathRecordedFullScale: tenths.map((t) => stopped(beam.glidepathFullScale[t]!)),
    }),
  });
  const stopped = (fullScale: number) => Math.max(-1, Math.min(1, fullScale));
  const inOneLine = (text: string) => text.replaceAll(/\s+/g, ' ');

  it('of the same beam agree, whichever way they were recorded, and change no verdict', () => {
    const debrief = debriefTruth(truth, recorded(0));
    const { measures, criteria } = debrief.approaches[0]!;
    expect(measures.recordedLocalizer).toMatchObject({ turned: true, agrees: true });
    expect(measures.recordedGlidepath).toMatchObject({ turned: false, agrees: true });
    expect(measures.recordedLocalizer!.rmsFullScale).toBeLessThan(0.01);
    expect(measures.recordedGlidepath!.rmsFullScale).toBeLessThan(0.01);
    expect(criteria).toEqual(debriefTruth(truth).approaches[0]!.criteria);
    expect(inOneLine(debriefText(debrief))).toContain(
      'The recorded localizer needle agrees with the computed one',
    );
  });

  it('of another course do not agree, and the facility is asked about', () => {
    const debrief = debriefTruth(truth, recorded(0.4));
    const { recordedLocalizer } = debrief.approaches[0]!.measures;
    expect(recordedLocalizer).toMatchObject({ turned: true, agrees: false });
    expect(recordedLocalizer!.biasFullScale).toBeCloseTo(0.4, 1);
    const text = inOneLine(debriefText(debrief));
    expect(text).toContain('The recorded localizer needle does not agree with the computed one: 0.4');
    expect(text).toContain('farther right on average');
    expect(text).toContain("Check the facility's course, its antenna or its width");
  });

  it('of a log without them are null, and the answer says why', () => {
    const { measures } = debriefTruth(truth).approaches[0]!;
    expect([measures.recordedLocalizer, measures.recordedGlidepath]).toEqual([null, null]);
    expect(measures.unknown.recordedLocalizer).toBe(
      'The log holds no such needle, or less than 30 s of it on its scale.',
    );
  });
});

describe('what is no approach', () => {
  it.each([
    ['an overflight', none.overflight(PETRELHOLM)],
    ['straight through at 30°', none.through(PETRELHOLM, 30)],
    ['straight through at 90°', none.through(PETRELHOLM, 90)],
    ['a landing the other way', none.reciprocalLanding(PETRELHOLM)],
    ['a parallel runway 750 ft away', none.parallelLanding(PETRELHOLM, 750)],
    ['a parallel runway 1,500 ft away', none.parallelLanding(PETRELHOLM, 1500)],
    ['circuits with 1 NM finals', none.circuits(PETRELHOLM)],
  ])('%s is none, with a note that says why', (_name, plan) => {
    const debrief = debriefTruth(fly(plan));
    expect(debrief.approaches.filter(({ kind }) => kind === 'approach')).toEqual([]);
    if (debrief.approaches.length === 0) expect(debrief.issues.length).toBeGreaterThan(0);
    for (const { notGradedBecause } of debrief.approaches)
      expect(notGradedBecause).toMatch(/^not graded: it /);
    expect(debriefText(debrief)).toMatch(/no approach|another runway|Not an approach/i);
  });

  it('a final joined two miles out is a visual final, and not graded', () => {
    const debrief = debriefTruth(fly(none.joinedAtTwoMiles(PETRELHOLM)));
    expect(debrief.approaches.map(({ kind }) => kind)).toEqual(['visual-final']);
    expect(debrief.approaches[0]).toMatchObject({ criteria: [], grade: null });
    expect(debrief.approaches[0]!.notGradedBecause).toMatch(/joined the final \d\.\d NM out/);
  });
});

describe('the page is true to its log', () => {
  const text = (recording: Parameters<typeof debriefTruth>[1] = {}) =>
    debriefText(debriefTruth(fly(flown.straightInLanding(PETRELHOLM)), recording));

  it('says which altitudes it tells, and that the altimeter decides over others', () => {
    expect(text()).toContain(
      'What happened (UTC; heights from the log, ± 0 ft: your altimeter decides; needles: 1 is',
    );
    const indicated: Parameters<typeof debriefTruth>[1] = {
      columns: ({ columns }, tenths) => ({ altitudeIndicatedFt: tenths.map((t) => columns.indicatedFt[t]!) }),
    };
    expect(text(indicated)).toContain('What happened (UTC; indicated altitudes; needles: 1 is full scale)');
  });

  it('tells no turns of a needle from fixes five seconds apart, and why', () => {
    const slow = { keep: (tenth: number) => tenth % 50 === 0 };
    const [approach] = debriefTruth(fly(flown.straightInLanding(PETRELHOLM)), slow).approaches;
    const { localizer } = approach!.segments.find(({ kind }) => kind === 'final')!;
    expect(localizer!.reversalsPerMinute).toBeNull();
    expect(localizer!.unknown.reversalsPerMinute).toContain('more than 3 s apart');
    expect(text(slow)).toContain('reversals not told');
  });

  it('claims no clock for a log that has none', () => {
    const debrief = debriefTruth(fly(flown.touchAndGoThenLanding(PETRELHOLM)));
    const elapsed = debriefText({ ...debrief, log: { ...debrief.log, timeReference: 'elapsed' } });
    expect(elapsed).not.toContain('UTC');
    expect(elapsed).toContain('What happened (from the start of the log; ');
    expect(elapsed).toMatch(/^Approach 2, \d\d:\d\d:\d\d into the log$/m);
    const local = debriefText({ ...debrief, log: { ...debrief.log, timeReference: 'local' } });
    expect(local).toContain('What happened (times as written; ');
  });

  it('says nothing of a standard where nothing was judged', () => {
    const debrief = debriefTruth(fly(none.overflight(PETRELHOLM)));
    expect(debriefText(debrief)).not.toContain('judged by');
    expect(text()).toContain('judged by FAA-S-ACS-8C');
  });
});
