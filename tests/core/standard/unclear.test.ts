import { describe, expect, it } from 'vitest';
import { goAroundFrom, judged, levelIntercept, pathFt, swing } from './judged.ts';

const localizer = (fullScale: number, localizerOff: number) =>
  judged({ localizerFullScale: () => fullScale, localizerOff }).criterion('localizer-final');

describe('a needle that may be off', () => {
  it.each([
    ['within ¾ scale by more than that', 0.7, 0.04, 'met'],
    ['within by far more', 0.45, 0.25, 'met'],
    ['within by less', 0.7, 0.06, 'unclear'],
    ['beyond by less', 0.8, 0.06, 'unclear'],
    ['beyond by more', 0.8, 0.04, 'not-met'],
    ['beyond by more, to the left', -0.8, 0.04, 'not-met'],
  ])('%s: %d ± %d is %s', (_, fullScale, off, verdict) => {
    expect(localizer(fullScale, off).verdict).toBe(verdict);
  });

  it('has three figures of its time outside, and says them', () => {
    // Final takes 180.7 s: 20 s at 0.95 and 20 s at 0.80.
    const at = (fromS: number, peak: number) => swing(fromS, 20, peak);
    const both = (moment: { readonly timeS: number }) => at(150, 0.95)(moment) + at(220, 0.8)(moment);
    const found = judged({ localizerFullScale: both, localizerOff: 0.1 }).criterion('localizer-final');
    expect(found).toMatchObject({ verdict: 'not-met', halfWidth: 0.1 });
    expect(found.outsideS).toBeGreaterThan(38);
    expect(found.outsideRangeS!.atLeast).toBeGreaterThan(18);
    expect(found.outsideRangeS!.atLeast).toBeLessThan(22);
    expect(found.outsideRangeS!.atMost).toBeGreaterThan(found.outsideS!);
    expect(found.why).toMatch(/^beyond ¾ scale for \d\d s, \d\d to \d\d s given its error$/);
  });

  it('that was corrected promptly may have gone too deep for that', () => {
    const promptly = (localizerOff: number) =>
      judged({ localizerFullScale: swing(180.05, 4, 0.8), everyS: 0.1, localizerOff }).criterion(
        'localizer-final',
      );
    expect(promptly(0.02).verdict).toBe('met');
    // 0.80 + 0.11 is beyond 0.75 + 0.15.
    expect(promptly(0.11)).toMatchObject({ verdict: 'unclear' });
  });

  it('beside a short gap hides what may have been beyond half of its limit there', () => {
    const beside = (localizerOff: number) =>
      judged({ localizerFullScale: () => 0.3, gaps: [[200, 209]], localizerOff }).criterion(
        'localizer-final',
      );
    expect(beside(0.05).verdict).toBe('met');
    // 0.30 + 0.10 is beyond half of ¾ scale.
    expect(beside(0.1)).toMatchObject({ verdict: 'unclear', outsideRangeS: { atLeast: 0 } });
    expect(beside(0.1).why).toBe('within ¾ scale, but 9 s of it were not recorded');
  });

  it('by more than its full scale is not judged at all', () => {
    expect(localizer(0, 1.1)).toMatchObject({
      verdict: 'not-assessed',
      why: 'the positions of this log may be off by more than the full scale of the needle',
    });
  });

  it('leaves a final that was not flown to its end open, unless it was surely beyond', () => {
    const cut = (fullScale: number, off: number) =>
      judged({ toNm: 1.5, localizerFullScale: () => fullScale, localizerOff: off }).criterion(
        'localizer-final',
      ).verdict;
    expect(cut(0.8, 0.04)).toBe('not-met');
    expect(cut(0.8, 0.06)).toBe('not-assessed');
  });

  it('takes a joining inside the fix for what it surely was', () => {
    const joining = (localizerOff: number) =>
      judged({
        fromNm: 4.6,
        localizerFullScale: ({ timeS }) => Math.max(0, 0.95 - timeS * 0.03),
        localizerOff,
      }).criterion('localizer-final');
    expect(joining(0.02).verdict).toBe('not-met');
    expect(joining(0.3).verdict).toBe('unclear');
  });
});

describe('stability of needles that may be off', () => {
  const stability = (peak: number, localizerOff: number) =>
    judged({ localizerFullScale: swing(285, 8, peak), localizerOff });

  it.each([
    ['lost by more than that', 0.9, 0.1, 'not-met'],
    ['lost by less', 0.9, 0.2, 'unclear'],
    ['held by less', 0.7, 0.1, 'unclear'],
    ['held by more', 0.6, 0.1, 'met'],
  ])('%s: %d ± %d is %s', (_, peak, off, verdict) => {
    const found = stability(peak, off);
    expect(found.gate('gate-500').verdict).toBe('met');
    expect(found.criterion('stability').verdict).toBe(verdict);
  });

  it('tells what was lost apart from what may have been', () => {
    expect(stability(0.9, 0.1).gate('gate-500').lostAfter).toMatchObject([
      { item: 'localizer', isProven: true },
    ]);
    expect(stability(0.9, 0.2).gate('gate-500').lostAfter).toMatchObject([
      { item: 'localizer', isProven: false },
    ]);
    expect(stability(0.7, 0.1).gate('gate-500')).toMatchObject({
      lostAfter: [],
      doubtedAfter: ['localizer'],
    });
  });

  it('at the gate itself is as unclear as its needle', () => {
    const at = (fullScale: number, localizerOff: number) =>
      judged({ localizerFullScale: () => fullScale, localizerOff });
    expect(at(0.8, 0.04).gate('gate-500').verdict).toBe('not-met');
    const near = at(0.8, 0.06);
    expect(near.gate('gate-500')).toMatchObject({ verdict: 'unclear' });
    expect(near.gate('gate-500').why).toContain('localizer 0.80 of full scale');
    expect(near.criterion('stability').verdict).toBe('unclear');
  });

  it('doubts a sink rate that a wandering height may have made', () => {
    const sink = (sinkFpm: number, heightOffFt: number) =>
      judged({
        heightFt: ({ timeS }) =>
          Math.abs(timeS - 263.3) < 5 ? 540 - ((timeS - 263.3) * sinkFpm) / 60 : null,
        standard: 'light-aircraft',
        heightOffFt,
      })
        .gate('gate-500')
        .items.find(({ item }) => item === 'sink')!.verdict;
    // ± 50 ft with 300 s: 50 × √(6 ÷ (5 × 300 × 5)) × 60 = 85 ft/min.
    expect(sink(1010, 0)).toBe('not-met');
    expect(sink(1010, 50)).toBe('unclear');
    expect(sink(990, 50)).toBe('unclear');
    expect(sink(900, 50)).toBe('met');
  });
});

it('a sink rate lost after a gate is proven only beyond what the recorded one may be off', () => {
  // 8 s at 1,030 ft/min, of which 1,000 are allowed.
  const lost = (sinkOffFpm: number) =>
    judged({
      recorded: { verticalSpeedFpm: (timeS) => (timeS > 280 && timeS < 288 ? -1030 : -480) },
      standard: 'light-aircraft',
      sinkOffFpm,
    }).gate('gate-500').lostAfter;
  expect(lost(20)).toMatchObject([{ item: 'sink', isProven: true }]);
  expect(lost(40)).toMatchObject([{ item: 'sink', isProven: false }]);
});

describe('safety limits', () => {
  const onTheStop = (fullScale: number, localizerOff: number) =>
    judged({ localizerFullScale: swing(200, 10, fullScale), localizerOff }).safety;

  it('are crossed only where the error leaves no doubt', () => {
    expect(onTheStop(1.1, 0)).toEqual([
      expect.stringMatching(/^full scale right of the localizer for \d+ s on final, without going around$/),
    ]);
    expect(onTheStop(1.1, 0.05)).toEqual([
      expect.stringMatching(/^full scale right of the localizer for at least \d+ s/),
    ]);
    expect(onTheStop(1.1, 0.15)).toEqual([]);
  });

  it("are each needle's by its own error", () => {
    const high = (off: object) => judged({ glidepathFullScale: swing(200, 10, 1.1), ...off }).safety;
    expect(high({ localizerOff: 0.15 })).toHaveLength(1);
    expect(high({ glidepathOff: 0.15 })).toEqual([]);
  });
});

describe('minimums by heights that may be off', () => {
  const missed = (heightFt: number, heightOffFt: number, standard = 'skill-test') =>
    judged({ heightFt: goAroundAt(heightFt), standard, heightOffFt, toNm: -1, stated: NOT_SEEN }).criterion(
      'minimums',
    );
  const NOT_SEEN = { visualReferenceAtMinimums: 'not-seen' } as const;
  const goAroundAt = (heightFt: number) => {
    const away = goAroundFrom(heightFt, 30);
    return (moment: { readonly timeS: number; readonly distanceNm: number }) =>
      away(moment) ?? levelIntercept(moment) ?? pathFt(moment.distanceNm);
  };

  it.each([
    [265, 10, 'met'],
    [265, 40, 'unclear'],
    [225, 40, 'unclear'],
    [225, 5, 'not-met'],
  ])('begun at %d ft, decision altitude 240, give or take %d ft, is %s', (heightFt, off, verdict) => {
    expect(missed(heightFt, off).verdict).toBe(verdict);
  });

  it('say how far the heights may be off', () => {
    expect(missed(225, 40).why).toContain('by heights that may be off by 40 ft');
  });

  it.each([
    // 8 ft/s on the path: 25 ft are 3 s.
    [240, 10, 'met'],
    [240, 40, 'unclear'],
    [270, 40, 'met'],
    [200, 10, 'not-met'],
  ])('with 3 s after it, begun at %d ft, give or take %d ft, is %s', (heightFt, off, verdict) => {
    expect(missed(heightFt, off, 'instrument-rating').verdict).toBe(verdict);
  });
});

describe('what is only crossed if the heights are right', () => {
  const NOT_SEEN = { visualReferenceAtMinimums: 'not-seen' } as const;

  it('is no blind descent while decision altitude may not have been passed', () => {
    // The path sinks 8 ft/s; the descent is stopped from 40 ft below decision altitude on, 5 s late.
    const away = goAroundFrom(200, 30);
    const blind = (heightOffFt: number) =>
      judged({
        heightFt: (moment) => away(moment) ?? levelIntercept(moment) ?? pathFt(moment.distanceNm),
        toNm: -1,
        stated: NOT_SEEN,
        heightOffFt,
      });
    expect(blind(0).safety).toEqual([
      'descended for 5 s below decision altitude with the runway not in sight',
    ]);
    // 8 ft are a second, and 24 are three.
    expect(blind(8).safety).toEqual([
      'descended for 4 s below decision altitude with the runway not in sight',
    ]);
    expect(blind(24).safety).toEqual([]);
    expect(blind(24).criterion('minimums').verdict).toBe('unclear');
  });

  it('is surely descended on after a landing', () => {
    const landed = judged({ stated: NOT_SEEN, heightOffFt: 40 });
    expect(landed.criterion('minimums').verdict).toBe('not-met');
    expect(landed.safety).toHaveLength(1);
  });

  it('is no continuing through 300 ft by less than the heights may be off', () => {
    // From 330 ft, 290 above the touchdown zone of 40, with 10 ft of sag.
    const low = (heightOffFt: number) =>
      judged({
        localizerFullScale: swing(257, 14, 0.9),
        heightFt: goAroundFrom(330, 10),
        heightOffFt,
      }).safety;
    expect(low(0)).toEqual(['localizer outside at 500 ft, and continued through 300 ft']);
    expect(low(30)).toEqual([]);
  });

  it('is told with how far off it may be, in its own unit', () => {
    const begun = (standard: string, heightOffFt: number) => {
      const away = goAroundFrom(260, 30);
      return judged({
        heightFt: (moment) => away(moment) ?? levelIntercept(moment) ?? pathFt(moment.distanceNm),
        toNm: -1,
        standard,
        heightOffFt,
      }).criterion('minimums').halfWidth;
    };
    expect(begun('skill-test', 40)).toBe(40);
    // 90 kt on 3°: 90 ÷ 3600 × 6076.1 × tan 3° = 7.96 ft/s.
    expect(begun('instrument-rating', 40)!).toBeCloseTo(40 / 7.96, 1);
    expect(begun('skill-test', 0)).toBeNull();
  });
});

describe('an altitude before final by heights that may be off', () => {
  it('is unclear near its limit, and clear with an altimeter', () => {
    const level = (offFt: number, heightOffFt: number) =>
      judged({
        heightFt: ({ distanceNm }) => (distanceNm > 5 ? 1700 + offFt : null),
        heightOffFt,
      }).criterion('altitude-before-final').verdict;
    expect(level(90, 5)).toBe('met');
    expect(level(90, 15)).toBe('unclear');
    expect(level(-115, 10)).toBe('not-met');
  });
});

describe('an airspeed estimated from groundspeed and a stated wind', () => {
  /** 90 kt over the ground into 12 kt on the nose (Petrelholm 07 points to 69.9° true): 102 kt true, 100.8 indicated. */
  const speed = (targetAirspeedKt: number, recorded = {}) =>
    judged({ stated: { targetAirspeedKt, wind: { fromTrueDeg: 69.9, speedKt: 12 } }, recorded });
  const item = (found: ReturnType<typeof speed>) =>
    found.gate('gate-500').items.find(({ item: name }) => name === 'airspeed')!;

  it('is judged, marked, and clear only where 10 kt to either side make no difference', () => {
    const near = speed(100).criterion('airspeed-final');
    expect(near).toMatchObject({ verdict: 'unclear', halfWidth: 10 });
    expect(near.why).toMatch(/of the target of 100 kt, estimated from groundspeed and the stated wind/);
    expect(speed(125).criterion('airspeed-final').verdict).toBe('not-met');
    expect(item(speed(125))).toMatchObject({ verdict: 'not-met' });
    expect(item(speed(100))).toMatchObject({ verdict: 'unclear' });
  });

  it('gives way to one that was logged', () => {
    const logged = speed(100, { airspeedIndicatedKt: () => 100 });
    expect(logged.criterion('airspeed-final')).toMatchObject({ verdict: 'met', halfWidth: null });
    expect(item(logged)).toMatchObject({ verdict: 'met' });
  });

  it('leaves stability unclear where the estimate is', () => {
    expect(speed(100).criterion('stability').verdict).toBe('unclear');
    expect(speed(125).criterion('stability').verdict).toBe('not-met');
  });
});
