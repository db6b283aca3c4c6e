import { describe, expect, it } from 'vitest';
import { judged } from './judged.ts';

/** Beyond full scale until 130 s (4.75 NM), and a half at 170 s. */
const joining = ({ timeS }: { readonly timeS: number }) =>
  timeS < 120 ? 2 : Math.max(0, 1 - (timeS - 130) / 80);

describe('a log that begins inside the fix, on the localizer', () => {
  /** Beyond ¾ of the scale until 160 s, and established at 170 s. */
  const settling = ({ timeS }: { readonly timeS: number }) =>
    Math.max(0, Math.min(0.9, 1 - (timeS - 144) / 64));
  const whole = judged({ localizerFullScale: settling });
  /** From 4.5 NM on: 140 s into the whole flight. */
  const cut = judged({ fromNm: 4.5, localizerFullScale: ({ timeS }) => settling({ timeS: timeS + 140 }) });

  it('was joined nobody knows where, and is beyond its limit for as long as the whole log from there on', () => {
    expect(cut.approach.insideFix).toBe('log-begins');
    const { excursions, outsideS, why } = cut.criterion('localizer-final');
    expect(outsideS).toBeCloseTo(20, 0);
    expect(why).toBe('beyond ¾ scale for 20 s');
    const [one] = whole.criterion('localizer-final').excursions;
    expect(excursions[0]!.endS - cut.beganS).toBeCloseTo(one!.endS - whole.beganS - 140, 1);
  });

  it('has nothing before final to judge, and says why', () => {
    const why = 'the log begins inside the final approach fix';
    expect(cut.criterion('localizer-before-final').why).toBe(why);
    expect(cut.criterion('altitude-before-final').why).toBe(why);
  });

  it('does not tell from where the glidepath was met', () => {
    const intercept = cut.approach.events.find(({ kind }) => kind === 'glidepath-intercept')!;
    expect(intercept.timeS).toBe(cut.approach.startS);
    expect(intercept.remark).toBeNull();
  });

  it('takes the user’s word for having been vectored so', () => {
    const vectored = judged({
      fromNm: 4.5,
      localizerFullScale: () => 0,
      stated: { vectoredInsideFix: true },
    });
    expect(vectored.ceiling).toEqual({ level: 4, why: 'vectored onto final inside the fix' });
  });

  it('is one that goes on after a gap as well', () => {
    // Beyond full scale at 125 s, within it at 140 s.
    const found = judged({ localizerFullScale: joining, gaps: [[125, 140]] });
    expect(found.approach.insideFix).toBe('log-resumes');
    expect(found.criterion('localizer-before-final').why).toBe(
      'the log goes on after a gap inside the final approach fix',
    );
    expect(found.criterion('localizer-final').why).toMatch(/^beyond ¾ scale for 10 s/);
  });

  it('is one that goes on after a gap in which the fix was passed, and is judged from there', () => {
    const found = judged({ localizerFullScale: () => 0, gaps: [[110, 130]] });
    expect(found.approach.insideFix).toBe('log-resumes');
    expect(found.approach.kind).toBe('approach');
    expect(found.approach.events.some(({ kind }) => kind === 'final-approach-fix')).toBe(false);
    expect(found.criterion('localizer-final').verdict).toBe('met');
    expect(found.criterion('localizer-before-final').why).toBe(
      'the log goes on after a gap inside the final approach fix',
    );
  });

  it('is none where the gap over the fix ends off the localizer, which is joined later', () => {
    const late = ({ timeS }: { readonly timeS: number }) =>
      timeS < 40 ? 0 : Math.max(0, Math.min(2.5, 2.5 - (timeS - 125) / 12.8));
    const found = judged({ localizerFullScale: late, gaps: [[40, 125]] });
    expect(found.approach.insideFix).toBe('joined');
    expect(found.safety).toEqual([]);
  });

  it('is none where it was seen to come onto the localizer, however soon', () => {
    const joined = judged({ fromNm: 4.7, localizerFullScale: ({ timeS }) => Math.max(0, 1.1 - timeS / 20) });
    expect(joined.approach.insideFix).toBe('joined');
  });
});
