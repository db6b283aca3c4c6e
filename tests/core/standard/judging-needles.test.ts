import { describe, expect, it } from 'vitest';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { FIX_S, judged, levelIntercept, swing, swings } from './judged.ts';

const TENTHS = { everyS: 0.1 };
const localizer = (drawn: ReturnType<typeof swing>, more = {}) =>
  judged({ localizerFullScale: drawn, ...TENTHS, ...more }).criterion('localizer-final');

/** Limit ¾ (FAA-S-ACS-8C, published); what is prompt is our own choice. */
describe('a swing beyond the localizer limit on final', () => {
  it.each([
    ['4.9 s at 0.10 beyond, above 500 ft, is promptly corrected', swing(200.05, 4.9, 0.85), 'met'],
    ['5.1 s is not', swing(200.05, 5.1, 0.85), 'not-met'],
    ['0.149 beyond is', swing(200.05, 4, 0.899), 'met'],
    ['0.151 beyond is not', swing(200.05, 4, -0.901), 'not-met'],
    ['five seconds to full scale is not', swing(200.05, 5, 1), 'not-met'],
    ['3.1 s below 500 ft is not', swing(270.05, 3.1, 0.85), 'not-met'],
    ['2.9 s below 500 ft is', swing(270.05, 2.9, 0.85), 'met'],
    ['3.1 s that end just above 500 ft are', swing(260.05, 3.1, 0.85), 'met'],
    ['3.1 s that end just below 500 ft are not', swing(260.65, 3.1, 0.85), 'not-met'],
    [
      'two together within 5 % of final are',
      swings(swing(150.05, 4.4, 0.85), swing(200.05, 4.5, -0.85)),
      'met',
    ],
    [
      'two together beyond 5 % are not',
      swings(swing(150.05, 4.6, 0.85), swing(200.05, 4.5, -0.85)),
      'not-met',
    ],
    [
      'a third makes all of them count',
      swings(swing(150.05, 1, 0.85), swing(180.05, 1, 0.85), swing(210.05, 1, 0.85)),
      'not-met',
    ],
    ['at decision altitude is not', swing(299.05, 2.5, 0.85), 'not-met'],
    ['over just before decision altitude is', swing(297.05, 2.5, 0.85), 'met'],
  ])('%s', (_, drawn, verdict) => {
    expect(localizer(drawn).verdict).toBe(verdict);
  });

  it('is told with its seconds, its depth and its side', () => {
    const found = localizer(swing(200.05, 4.9, -0.85));
    expect(found.outsideS).toBeCloseTo(4.9, 3);
    expect(found.measured).toBeCloseTo(-0.85, 6);
    expect(found.excursions).toHaveLength(1);
    expect(found.excursions[0]).toMatchObject({ side: 'below', prompt: true });
    expect(found.why).toBe('beyond ¾ scale for 5 s, promptly corrected');
    expect(found.assessedS).toBeCloseTo(180.7, 1);
  });

  it('that stays a hair inside is none, and a hair beyond all the way is not met', () => {
    const inside = judged({ localizerFullScale: () => 0.749, glidepathFullScale: () => -0.749 });
    expect(inside.criterion('localizer-final')).toMatchObject({
      verdict: 'met',
      outsideS: 0,
      insideHalfShare: 0,
    });
    expect(inside.criterion('glidepath-final').verdict).toBe('met');
    const beyond = judged({
      localizerFullScale: ({ timeS }) => (timeS < 60 ? 0 : Math.min(0.751, (timeS - 60) / 60)),
    });
    expect(beyond.criterion('localizer-final').verdict).toBe('not-met');
  });

  it('is held to ½ under the skill test and ¼ under the airline transport standard', () => {
    const steady = (fullScale: number, standard: string) =>
      judged({ localizerFullScale: () => fullScale, standard }).criterion('localizer-final').verdict;
    expect([steady(0.49, 'skill-test'), steady(0.24, 'airline-transport')]).toEqual(['met', 'met']);
    expect([steady(0.51, 'skill-test'), steady(0.26, 'airline-transport')]).toEqual(['not-met', 'not-met']);
  });
});

/** Design, section 11: half of a limit, never below 0.20 of full scale; half of ¼ would be less. */
describe('well inside a narrow limit', () => {
  it('is within 0.20 of full scale', () => {
    const share = (fullScale: number) =>
      judged({ localizerFullScale: () => fullScale, standard: 'airline-transport' }).criterion(
        'localizer-final',
      ).insideHalfShare;
    expect([share(0.199), share(0.201)]).toEqual([1, 0]);
  });
});

describe('the localizer before final', () => {
  it('is not judged between alive and established', () => {
    const drawn = ({ timeS }: { timeS: number }) =>
      timeS < 20 ? 0.9 : Math.max(0, 0.9 - (timeS - 20) / 100);
    const found = judged({ localizerFullScale: drawn });
    const before = found.criterion('localizer-before-final');
    // 0.9 is at 0.5 after 0.4 × 100 s.
    expect(before.counted[0]!.startS - found.beganS).toBeCloseTo(60, 1);
    expect(before.counted[0]!.endS - found.beganS).toBeCloseTo(FIX_S, 1);
    expect(before.verdict).toBe('met');
  });

  it('is judged from established to the fix', () => {
    const found = judged({ localizerFullScale: swing(80, 10, 0.9) });
    expect(found.criterion('localizer-before-final').verdict).toBe('not-met');
    expect(found.criterion('localizer-final').verdict).toBe('met');
  });

  it('takes its share from its own stretch: 5 % of 120 s are 6 s', () => {
    const twice = (s: number) => swings(swing(30.05, s, 0.85), swing(70.05, s, 0.85));
    const verdict = (s: number) =>
      judged({ localizerFullScale: twice(s), ...TENTHS }).criterion('localizer-before-final').verdict;
    expect([verdict(2.9), verdict(3.1)]).toEqual(['met', 'not-met']);
  });

  it('is not assessed when it was never established, or not by the fix', () => {
    const late = ({ timeS }: { timeS: number }) => Math.max(0, 0.95 - timeS / 400);
    const found = judged({ localizerFullScale: late });
    expect(found.criterion('localizer-before-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'not yet established at the fix',
    });
    const never = judged({ localizerFullScale: () => 0.7 });
    expect(never.criterion('localizer-before-final').why).toBe('never established on the localizer');
    expect(never.ceiling).toEqual({ level: 2, why: 'the localizer was never established by 3 NM' });
  });
});

/** Alive at 130 s (4.75 NM), a half at 170 s. */
const joining = ({ timeS }: { readonly timeS: number }) =>
  timeS < 120 ? 2 : Math.max(0, 1 - (timeS - 130) / 80);

describe('the localizer joined inside the fix', () => {
  it('is one excursion from where final began to established', () => {
    const found = judged({ localizerFullScale: joining });
    const onFinal = found.criterion('localizer-final');
    expect(found.approach.insideFix).toBe('joined');
    expect(onFinal.verdict).toBe('not-met');
    expect(onFinal.excursions).toHaveLength(1);
    expect(onFinal.outsideS).toBeCloseTo(40, 0);
    expect(onFinal.excursions[0]!.peak).toBeCloseTo(1, 1);
    expect(onFinal.why).toBe('not established for the first 40 s of final');
    expect(found.criterion('localizer-before-final').why).toBe('the localizer was joined inside the fix');
    expect(found.ceiling).toBeNull();
  });

  it('and lost again is told in two times', () => {
    const again = swing(220.05, 20, 0.95);
    const localizerFullScale = (moment: { readonly timeS: number }) => joining(moment) || again(moment);
    expect(judged({ localizerFullScale }).criterion('localizer-final').why).toBe(
      'not established for the first 40 s of final, then beyond ¾ scale for 20 s',
    );
  });

  it('to the left is one to the left', () => {
    const found = judged({ localizerFullScale: (moment) => -joining(moment) });
    expect(found.criterion('localizer-final').excursions[0]!.side).toBe('below');
  });

  it('counts from established when it was vectored so, and reaches level 4 at best', () => {
    const found = judged({ localizerFullScale: joining, stated: { vectoredInsideFix: true } });
    const onFinal = found.criterion('localizer-final');
    expect(onFinal.verdict).toBe('met');
    expect(onFinal.counted[0]!.startS - found.beganS).toBeCloseTo(170, 0);
    expect(found.ceiling).toEqual({ level: 4, why: 'vectored onto final inside the fix' });
  });

  it('vectored, counts from 3 NM at the latest', () => {
    const slow = ({ timeS }: { timeS: number }) => (timeS < 120 ? 2 : Math.max(0, 1 - (timeS - 130) / 200));
    const found = judged({ localizerFullScale: slow, stated: { vectoredInsideFix: true } });
    expect(found.criterion('localizer-final').counted[0]!.startS - found.beganS).toBeCloseTo(200, 1);
  });

  it('vectored, counts no earlier than the gate of a standard that has one', () => {
    const found = judged({
      localizerFullScale: joining,
      stated: { vectoredInsideFix: true },
      standard: 'stabilized-approach',
    });
    // 546 ft, 6 ft above the gate over the touchdown zone, which the path passes at 263.3 s.
    expect(found.criterion('localizer-final').counted[0]!.startS - found.beganS).toBeCloseTo(262.5, 1);
  });

  it('is no excursion where the instructor flew it', () => {
    const flew = [{ startS: 125, endS: 175 }];
    const found = judged({ localizerFullScale: joining, stated: { instructorFlew: flew } });
    expect(found.criterion('localizer-final').verdict).toBe('met');
  });

  it('the statement alone changes nothing for an approach that passed the fix', () => {
    const found = judged({ stated: { vectoredInsideFix: true } });
    expect(found.ceiling).toBeNull();
    expect(found.criterion('localizer-final').counted[0]!.startS - found.beganS).toBeCloseTo(FIX_S, 1);
  });
});

describe('the glidepath on final', () => {
  const startOf = (found: ReturnType<typeof judged>) =>
    found.criterion('glidepath-final').counted[0]!.startS - found.beganS;

  it('counts from the fix when it was intercepted 10 s before', () => {
    expect(startOf(judged())).toBeCloseTo(FIX_S, 1);
  });

  it('counts 10 s after an intercept near the fix', () => {
    const found = judged({ heightFt: levelIntercept });
    const interceptS = found.approach.events.find(({ kind }) => kind === 'glidepath-intercept')!.timeS;
    // Mean sink of 10 s is half of what is needed 5 s before the descent: about 4 s before the fix by whole fixes.
    expect(interceptS - found.beganS).toBeGreaterThan(FIX_S - 6);
    expect(startOf(found)).toBeCloseTo(interceptS - found.beganS + 10, 6);
  });

  it('counts from half a mile into final when it was never intercepted, and the stop is a safety limit', () => {
    const found = judged({ glidepathFullScale: () => 1.2 });
    expect(startOf(found)).toBeCloseTo(FIX_S + 20, 1);
    expect(found.criterion('glidepath-final').verdict).toBe('not-met');
    expect(found.safety[0]).toContain('full scale high on the glidepath for');
  });

  it('is judged no more beyond decision altitude', () => {
    const found = judged({ glidepathFullScale: swing(303, 10, 0.95) });
    expect(found.criterion('glidepath-final')).toMatchObject({ verdict: 'met', outsideS: 0 });
  });
});

describe('what was not recorded', () => {
  it.each([
    ['9 s with both ends well inside hide nothing', 209, 0.37, 'met'],
    ['9 s with an end beyond half of the limit may', 209, 0.38, 'unclear'],
    ['10 s are still forgiven', 210, 0, 'met'],
    ['11 s are not', 211, 0, 'unclear'],
  ])('%s', (_, toS, fullScale, verdict) => {
    const found = judged({ localizerFullScale: () => fullScale, gaps: [[200, toS]] });
    expect(found.criterion('localizer-final').verdict).toBe(verdict);
  });

  it('is said, and is neither inside nor outside', () => {
    const found = judged({ gaps: [[200, 220]] }).criterion('localizer-final');
    expect(found.why).toBe('within ¾ scale, but 20 s of it were not recorded');
    expect(found.assessedS).toBeCloseTo(160.7, 1);
    expect(found.outsideS).toBe(0);
    expect(found.outsideRangeS).toMatchObject({ atLeast: 0, atMost: expect.closeTo(20, 9) as number });
  });

  it('saves no approach that was beyond already', () => {
    const found = judged({ gaps: [[200, 220]], localizerFullScale: swing(150, 20, 0.9) });
    expect(found.criterion('localizer-final').verdict).toBe('not-met');
  });
});

describe('a final that was not flown to its end', () => {
  it('is not assessed when within', () => {
    const found = judged({ toNm: 1.5 });
    expect(found.criterion('localizer-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'within ¾ scale, but final was not flown to decision altitude',
    });
    expect(found.criterion('minimums').why).toBe('decision altitude was not reached');
    expect(found.criterion('localizer-before-final').verdict).toBe('met');
  });

  it('is not met when beyond already', () => {
    const found = judged({ toNm: 1.5, localizerFullScale: swing(150, 20, 0.9) });
    expect(found.criterion('localizer-final').verdict).toBe('not-met');
  });

  it('has no share of final that a short excursion could fill', () => {
    // 60 s of final were recorded: 5 % of those are 3 s, of a whole one 9 s.
    const found = judged({ toNm: 3.5, localizerFullScale: swing(140.05, 4, 0.85), ...TENTHS });
    expect(found.criterion('localizer-final').verdict).toBe('not-assessed');
  });

  it('when the fix was not reached leaves all of final open', () => {
    const far = { ...PETRELHOLM, finalApproachFix: { ...PETRELHOLM.finalApproachFix, distanceNm: 3.2 } };
    const found = judged({ facility: far, toNm: 3.6 });
    expect(found.criterion('localizer-before-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'within ¾ scale, but the final approach fix was not reached',
    });
    expect(found.criterion('localizer-final').why).toBe('final was not flown');
    expect(found.criterion('glidepath-final').why).toBe('final was not flown');
  });
});

describe('an instructor who flew', () => {
  it('is left out of what is judged', () => {
    const stated = { instructorFlew: [{ startS: 190, endS: 235 }] };
    const found = judged({ localizerFullScale: swing(200, 20, 0.95), stated }).criterion('localizer-final');
    expect(found.verdict).toBe('met');
    expect(found.counted).toHaveLength(2);
    expect(found.assessedS).toBeCloseTo(180.7 - 45, 1);
  });

  it('over all of final leaves nothing to judge', () => {
    const stated = { instructorFlew: [{ startS: 100, endS: 320 }] };
    expect(judged({ stated }).criterion('localizer-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'the instructor flew all of it',
      outsideS: null,
    });
  });

  it('at another time changes nothing', () => {
    const stated = { instructorFlew: [{ startS: 0, endS: 20 }] };
    expect(judged({ stated }).criterion('localizer-final').assessedS).toBeCloseTo(180.7, 1);
  });
});

describe('room that an instructor allows', () => {
  const stated = { allowances: [{ criterion: 'localizer-final', by: 0.15, reason: 'first lesson' }] };

  it('stands beside the plain verdict', () => {
    const found = localizer(swing(200.05, 20, 0.85), { stated });
    expect(found.verdict).toBe('not-met');
    expect(found.allowed).toEqual({ by: 0.15, reason: 'first lesson', verdict: 'met' });
  });

  it('is not without end, and is for its criterion only', () => {
    // 0.15 more than ¾ is 0.90.
    expect(localizer(swing(200.05, 20, 0.96, 0.9), { stated }).allowed!.verdict).toBe('not-met');
    expect(judged({ stated }).criterion('glidepath-final').allowed).toBeNull();
  });
});
