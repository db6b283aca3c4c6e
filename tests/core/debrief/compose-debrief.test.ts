import { describe, expect, it } from 'vitest';
import type { ApproachDebrief, Debrief } from '../../../core/debrief/debrief.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { debriefOf } from './drawn.ts';

const START_S = Date.parse('2026-03-14T09:00:00Z') / 1000;
/** Values at a height crossed are medians of the fixes around it: half a second at 90 kt. */
const HALF_A_SECOND_FT = 76;
const secondsIn = (utc: string) => Date.parse(utc) / 1000 - START_S;

function only(debrief: Debrief): ApproachDebrief {
  expect(debrief.approaches).toHaveLength(1);
  return debrief.approaches[0]!;
}
const final = (approach: ApproachDebrief) => approach.segments.find(({ kind }) => kind === 'final')!;
const criterion = (approach: ApproachDebrief, id: string) =>
  approach.criteria.find((found) => found.id === id)!;
const needles = (approach: ApproachDebrief) =>
  [criterion(approach, 'localizer-final'), criterion(approach, 'glidepath-final')] as const;
const event = (approach: ApproachDebrief, kind: string) =>
  approach.events.find((found) => found.kind === kind)!;

describe('a debrief', () => {
  it('finds the moments of the fix, the gates and decision altitude between fixes', () => {
    const approach = only(debriefOf());
    expect(secondsIn(event(approach, 'final-approach-fix').utc)).toBeCloseTo(120, 1);
    expect(event(approach, 'final-approach-fix').distanceToThresholdNm).toBeCloseTo(5, 4);
    const decision = event(approach, 'decision-altitude');
    expect(decision).toMatchObject({ altitudeFt: 240, altitudeSource: 'geometric', airspeedKt: null });
    expect(decision.unknown.airspeedKt).toBe('The log has no indicated airspeed.');
    // 240 ft stands 188 − 34 ft above the crossing height of 52: (240 − 34 − 52) ft / tan 3° = 2,938 ft, by hand.
    expect(Math.abs(decision.distanceToThresholdNm! * 6076 - 2938)).toBeLessThan(HALF_A_SECOND_FT);
    // Gates are above the touchdown zone, 40 ft.
    expect(event(approach, 'gate-1000').altitudeFt).toBe(1040);
    expect(event(approach, 'gate-500').altitudeFt).toBe(540);
    expect(approach.events.map(({ utc }) => utc)).toEqual(approach.events.map(({ utc }) => utc).sort());
    expect(approach).toMatchObject({ kind: 'approach', outcome: 'incomplete', index: 1 });
  });

  it('is met when neither needle was beyond ¾ scale', () => {
    const steady = debriefOf({ localizerFullScale: () => 0.749, glidepathFullScale: () => -0.749 });
    const approach = only(steady);
    expect(needles(approach).map(({ verdict }) => verdict)).toEqual(['met', 'met']);
    expect(needles(approach)[0].measured).toBeCloseTo(0.749, 6);
    expect(needles(approach)[1].measured).toBeCloseTo(-0.749, 6);
    expect(needles(approach)[1].why).toBe('within ¾ scale');
    expect(final(approach).localizer!.insideShare).toEqual({
      quarter: 0,
      half: 0,
      threeQuarters: 1,
      full: 1,
    });
    expect(approach.summary).toBe(
      'Stable at 1,000 ft and 500 ft as far as seen (without airspeed and bank); both needles within ¾ scale on final; the log ends before the approach does.',
    );
  });

  it('is not met past the edge, with the seconds, the depth, the moment and the side', () => {
    const low = ({ timeS }: { timeS: number }) => (timeS >= 200 && timeS <= 215 ? -0.95 : -0.55);
    const approach = only(debriefOf({ glidepathFullScale: low }));
    const [localizer, glidepath] = needles(approach);
    expect(localizer!.verdict).toBe('met');
    expect(glidepath).toMatchObject({ verdict: 'not-met', limit: 0.75, why: 'beyond ¾ scale for 16 s' });
    // 15 s at −0.95, and half of the second on each side of them, on straight lines.
    expect(glidepath!.timeOutsideS!.best).toBeCloseTo(16, 2);
    expect(glidepath!.timeOutsideS).toEqual({
      atLeast: glidepath!.timeOutsideS!.best,
      best: glidepath!.timeOutsideS!.best,
      atMost: glidepath!.timeOutsideS!.best,
    });
    const [excursion] = final(approach).glidepath!.excursions;
    expect(excursion!.side).toBe('low');
    expect(excursion!.peakFullScale).toBeCloseTo(-0.95, 6);
    expect(secondsIn(excursion!.startUtc)).toBeCloseTo(199.5, 1);
    expect(approach.summary).toContain('lost the glidepath low at ');
    expect(glidepath.excursions.map(({ prompt }) => prompt)).toEqual([false]);
  });

  it('says "less than 1 s", and names both needles and their sides', () => {
    const spikes = (at: number, size: number) => (moment: { timeS: number }) =>
      moment.timeS === at ? size : 0;
    const approach = only(
      debriefOf({ localizerFullScale: spikes(200, 0.8), glidepathFullScale: spikes(240, 0.8) }),
    );
    expect(approach.summary).toMatch(
      /lost the localizer to the right at [\d,]+ ft, promptly back within ¾ scale by [\d,]+ ft; lost the glidepath high at \d+ ft, promptly back within ¾ scale by \d+ ft; /,
    );
    expect(needles(approach).map(({ why }) => why)).toEqual(
      Array(2).fill('beyond ¾ scale for less than 1 s, promptly corrected'),
    );
    expect(final(approach).localizer!.excursions.map(({ side }) => side)).toEqual(['right']);
    expect(final(approach).glidepath!.excursions.map(({ side }) => side)).toEqual(['high']);
  });

  it('does not count what was flown before the fix, and gives it no glidepath limit', () => {
    const early = ({ timeS }: { timeS: number }) => (timeS < 115 ? 0.9 : 0);
    const approach = only(debriefOf({ glidepathFullScale: early }));
    const [intercept] = approach.segments;
    expect(intercept).toMatchObject({ kind: 'intercept', glidepath: { timeOutsideS: null, excursions: [] } });
    expect(intercept!.glidepath!.unknown.timeOutsideS).toContain('no limit');
    expect(intercept!.localizer!.timeOutsideS!.best).toBe(0);
    expect(needles(approach).map(({ verdict }) => verdict)).toEqual(['met', 'met']);
  });

  it('uses the indicated altitude for gates and decision altitude when it was logged', () => {
    const approach = only(
      debriefOf(
        {},
        {
          columns: ({ columns }, tenths) => ({
            altitudeIndicatedFt: tenths.map((t) => columns.heightFt[t]! - 100),
          }),
        },
      ),
    );
    expect(event(approach, 'decision-altitude')).toMatchObject({
      altitudeSource: 'indicated',
      altitudeFt: 240,
    });
    // 100 ft earlier at 318 ft a mile.
    const feetOut = event(approach, 'decision-altitude').distanceToThresholdNm! * 6076;
    expect(Math.abs(feetOut - 2938 - 1908)).toBeLessThan(HALF_A_SECOND_FT);
  });

  it('gives feet and no scale below decision altitude', () => {
    const approach = only(debriefOf());
    const visual = approach.segments.find(({ kind }) => kind === 'visual')!;
    expect(visual).toMatchObject({ localizer: null, glidepath: null });
    expect(visual.unknown.localizer).toContain('only feet are given');
    expect(visual.centrelineOffsetFt!.mean).toBeCloseTo(0, 2);
    expect(final(approach)).toMatchObject({ centrelineOffsetFt: null });
    expect(final(approach).unknown.centrelineOffsetFt).toContain('full scale');
  });

  it('does not assess a final that was not flown to decision altitude, unless it was beyond already', () => {
    const approach = only(debriefOf({ toNm: 1.5 }));
    expect(needles(approach)[0]).toMatchObject({
      verdict: 'not-assessed',
      why: 'within ¾ scale, but final was not flown to decision altitude',
    });
    expect(approach.summary).toBe(
      'Stable at 1,000 ft as far as seen (without airspeed and bank); both needles within ¾ scale on final, as far as it was flown and recorded; the log ends before the approach does.',
    );
    const beyond = debriefOf({
      toNm: 1.5,
      localizerFullScale: ({ timeS }) => (timeS > 200 && timeS < 204 ? -0.95 : 0),
    });
    expect(needles(only(beyond))[0].verdict).toBe('not-met');
    expect(final(only(beyond)).localizer!.excursions[0]!.side).toBe('left');
  });

  it('tells what the needles showed with the beam as well, and lets that decide nothing', () => {
    const approach = only(debriefOf({ localizerFullScale: () => 0.7, glidepathFullScale: () => 0.6 }));
    const { localizer, glidepath } = final(approach);
    expect(localizer!.timeOutsideS).toEqual({ atLeast: 0, best: 0, atMost: 0 });
    // 0.70 + 0.08 is beyond ¾ all along, 0.60 + 0.12 never.
    expect(localizer!.shownOutsideS).toMatchObject({ atLeast: 0, best: 0 });
    expect(localizer!.shownOutsideS!.atMost).toBeCloseTo(final(approach).durationS, 6);
    expect(glidepath!.shownOutsideS!.atMost).toBe(0);
    expect(needles(approach)[0].verdict).toBe('met');
  });

  it('has the miles of a criterion beside its seconds, and none where it is not told in time', () => {
    const low = ({ timeS }: { timeS: number }) => (timeS >= 200 && timeS <= 215 ? -0.95 : -0.55);
    const { criteria } = only(debriefOf({ glidepathFullScale: low }));
    const glidepath = criteria.find(({ id }) => id === 'glidepath-final')!;
    // At 90 kt 40 s are a mile, and 16 s were beyond.
    expect(glidepath.assessedNm).toBeCloseTo(glidepath.assessedS / 40, 3);
    expect(glidepath.outsideNm).toBeCloseTo(0.4, 3);
    const stability = criteria.find(({ id }) => id === 'stability')!;
    expect(stability).toMatchObject({ timeOutsideS: null, assessedNm: null, outsideNm: null });
    const airspeed = criteria.find(({ id }) => id === 'airspeed-final')!;
    for (const { unknown } of [stability, airspeed]) {
      expect(unknown['assessedNm']).toBe(unknown['timeOutsideS']);
      expect(unknown['outsideNm']).toBe(unknown['timeOutsideS']);
    }
    expect(airspeed.unknown['assessedNm']).toBe('Not assessed: no target airspeed was given.');
  });

  it('takes a gap for unrecorded time, neither inside nor outside', () => {
    const approach = only(
      debriefOf({}, { keep: (tenth) => tenth % 10 === 0 && !(tenth > 2000 && tenth < 2200) }),
    );
    expect(final(approach).unrecordedS).toBeCloseTo(20, 6);
    expect(needles(approach)[0]).toMatchObject({
      verdict: 'unclear',
      why: 'within ¾ scale, but 20 s of it were not recorded',
    });
  });

  it('has no glidepath figures where no height was recorded, and says so', () => {
    const silent = ({ columns }: { columns: { heightFt: Float64Array } }, tenths: readonly number[]) => ({
      altitudeGeometricFt: tenths.map((t) => (t > 1200 ? NaN : columns.heightFt[t]!)),
    });
    const { glidepath } = final(only(debriefOf({}, { columns: silent })));
    expect(glidepath).toMatchObject({
      rmsFullScale: null,
      insideS: null,
      timeOutsideS: null,
      excursions: [],
    });
    expect(glidepath!.unknown.rmsFullScale).toBe('Nothing of this needle was recorded here.');
  });

  it('marks an assumed fix and an assumed decision altitude', () => {
    const { finalApproachFix: _fix, minimums: _minimums, ...rest } = PETRELHOLM;
    const approach = only(debriefOf({}, { facility: rest }));
    expect(event(approach, 'final-approach-fix').remark).toBe('assumed');
    // 1,500 ft above the touchdown zone, and 200 ft above it.
    expect(event(approach, 'final-approach-fix').altitudeFt).toBeCloseTo(1540, 0);
    expect(event(approach, 'decision-altitude')).toMatchObject({ remark: 'assumed', altitudeFt: 240 });
  });

  it('begins final where the log begins inside the fix, and has no fix then', () => {
    const approach = only(debriefOf({ fromNm: 4.5 }));
    expect(approach.events.map(({ kind }) => kind)).not.toContain('final-approach-fix');
    expect(final(approach).startUtc).toBe(approach.startUtc);
  });

  it('carries what was recorded beside the needles', () => {
    const approach = only(
      debriefOf(
        {},
        {
          columns: (_truth, tenths) => ({
            airspeedIndicatedKt: tenths.map(() => 95),
            bankDeg: tenths.map((_, i) => (i % 2 ? 3 : -3)),
          }),
        },
      ),
    );
    expect(final(approach).airspeed).toMatchObject({
      mean: 95,
      standardDeviation: 0,
      lowest: 95,
      highest: 95,
      targetKt: null,
      timeOutsideS: null,
    });
    expect(final(approach).airspeed!.unknown.targetKt).toContain('No target airspeed');
    expect(final(approach).bank).toMatchObject({ lowest: -3, highest: 3 });
    expect(event(approach, 'final-approach-fix').airspeedKt).toBe(95);
    expect(approach.measures.sinkOnFinal!.heldFpm).toBeCloseTo(
      approach.measures.sinkOnFinal!.neededFpm,
      -1.2,
    );
    expect(approach.measures).toMatchObject({
      threshold: null,
      touchdownDistanceFt: null,
      windOnFinal: null,
    });
    expect(approach.measures.unknown.threshold).toContain('200 ft');
  });

  it('has the wind of each segment and of the gate where the log tells it, and its error', () => {
    // The nose on the course: 105 kt through the air against 90 over the ground.
    const course = debriefOf().facility.derived.courseTrueDeg;
    const columns = (headings: 'headingTrueDeg' | 'headingMagneticDeg', byDeg: number) => ({
      columns: (_truth: unknown, tenths: readonly number[]) => ({
        airspeedTrueKt: tenths.map(() => 105),
        [headings]: tenths.map(() => course - byDeg),
      }),
    });
    for (const recording of [
      columns('headingTrueDeg', 0),
      columns('headingMagneticDeg', PETRELHOLM.magneticVariationDeg),
    ]) {
      const { segments, measures } = only(debriefOf({}, recording));
      expect(segments.map(({ kind }) => kind)).toEqual(['intercept', 'final', 'visual']);
      for (const wind of [
        ...segments.map((segment) => segment.wind),
        measures.windOnFinal,
        measures.windAt1000,
      ]) {
        expect(wind!.headwindKt).toBeCloseTo(15, 1);
        expect(wind!.crosswindFromRightKt).toBeCloseTo(0, 0);
        expect(wind!.errorKt).toBeGreaterThan(5);
      }
      expect(measures.windAtThreshold).toBeNull();
      expect(measures.unknown.windAtThreshold).toContain('not crossed');
    }
  });

  it('says for each segment what its wind lacks', () => {
    const { segments, measures } = only(debriefOf());
    for (const { wind, unknown } of segments) {
      expect(wind).toBeNull();
      expect(unknown.wind).toBe('Wind needs an airspeed, which the log lacks.');
    }
    expect(measures.unknown).toMatchObject({
      windOnFinal: 'Wind needs an airspeed, which the log lacks.',
      windAt1000: 'Wind needs an airspeed, which the log lacks.',
    });
  });

  it('turns a magnetic heading by the magnetic model where the facility gives no variation', () => {
    const { magneticVariationDeg, ...facility } = PETRELHOLM;
    const course = debriefOf().facility.derived.courseTrueDeg;
    const columns = (_truth: unknown, tenths: readonly number[]) => ({
      airspeedTrueKt: tenths.map(() => 105),
      headingMagneticDeg: tenths.map(() => course - magneticVariationDeg),
    });
    const { measures } = only(debriefOf({}, { columns, facility }));
    // The model and the assigned value are within a degree there: 105 kt × sin 1° = 1.8 kt.
    expect(Math.abs(measures.windOnFinal!.crosswindFromRightKt)).toBeLessThan(1.9);
  });
});

describe('an airspeed estimated from a stated wind', () => {
  const stated = { targetAirspeedKt: 100, wind: { fromTrueDeg: 0, speedKt: 0 } };
  const against = (headwindKt: number) => ({
    ...stated,
    wind: { fromTrueDeg: debriefOf().facility.derived.courseTrueDeg, speedKt: headwindKt },
  });
  const speed = (approach: ApproachDebrief) => final(approach).airspeed!;

  it('is marked as one, within 10 kt', () => {
    const airspeed = speed(only(debriefOf({}, {}, against(12))));
    expect(airspeed).toMatchObject({ estimated: true, errorKt: 10 });
    // 102 kt true between 1,700 and 240 ft, where the standard atmosphere takes 2.4 % to 0.4 % off.
    expect(airspeed.mean).toBeGreaterThan(102 / 1.024);
    expect(airspeed.mean).toBeLessThan(102 / 1.004);
  });

  it('is outside by its error for certain, and by its error at most', () => {
    // ± 10 kt of 100: 90 kt over the ground, the wind to taste.
    const at = (headwindKt: number) => speed(only(debriefOf({}, {}, against(headwindKt)))).timeOutsideS!;
    const whole = final(only(debriefOf())).durationS;
    expect(at(12)).toMatchObject({ atLeast: 0, best: 0 });
    expect(at(12).atMost).toBeCloseTo(whole, 6);
    expect(at(-6)).toMatchObject({ atLeast: 0 });
    expect(at(-6).best).toBeCloseTo(whole, 6);
    expect(at(-15).atLeast).toBeCloseTo(whole, 6);
  });

  it('may have been outside in what was not recorded, logged or estimated', () => {
    const gap = { keep: (tenth: number) => tenth % 10 === 0 && (tenth < 2000 || tenth > 2200) };
    expect(speed(only(debriefOf({}, gap, against(12)))).timeOutsideS).toMatchObject({ atLeast: 0, best: 0 });
    const columns = (_truth: unknown, tenths: readonly number[]) => ({
      airspeedIndicatedKt: tenths.map(() => 100),
    });
    // From 199 s, the last fix before 200 s that is logged, to 221 s.
    expect(speed(only(debriefOf({}, { ...gap, columns }, stated))).timeOutsideS!.atMost).toBeCloseTo(22, 6);
  });

  it('is made only where the log has no indicated airspeed, and a wind was stated', () => {
    const columns = (_truth: unknown, tenths: readonly number[]) => ({
      airspeedIndicatedKt: tenths.map(() => 95),
    });
    expect(speed(only(debriefOf({}, { columns }, stated)))).toMatchObject({
      mean: 95,
      estimated: false,
      errorKt: 3,
    });
    expect(final(only(debriefOf({}, {}, { targetAirspeedKt: 100 }))).airspeed).toBeNull();
  });

  it('is never clear near its limit, and said to be an estimate in print, with the wind', () => {
    const debrief = debriefOf({}, {}, { ...stated, wind: { fromTrueDeg: 70, speedKt: 12.5 } });
    expect(criterion(only(debrief), 'airspeed-final').verdict).toBe('unclear');
    const text = debriefText(debrief);
    expect(text).toContain('within 10 kt: estimated from groundspeed and the stated wind');
    expect(text).toContain('wind from 070° true at 12.5 kt');
    expect(debriefText(debriefOf())).not.toContain('stated wind');
  });
});

describe('a flight that is no approach', () => {
  it('too far beside the localizer says so', () => {
    const debrief = debriefOf({ localizerFullScale: () => 1.5, toNm: 2 });
    expect(debrief.approaches).toEqual([]);
    expect(debrief.issues).toMatchObject([{ code: 'no-approach' }]);
    expect(debrief.issues[0]!.message).toContain('never within the localizer');
  });
});
