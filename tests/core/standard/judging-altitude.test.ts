import { describe, expect, it } from 'vitest';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { judged, levelIntercept, pathFt, type Flying } from './judged.ts';

const { finalApproachFix } = PETRELHOLM;
const level = (heightFt: number) => (moment: { distanceNm: number }) =>
  pathFt(moment.distanceNm) > heightFt ? heightFt : null;
const altitude = (heightFt: number, flying: Flying = {}) =>
  judged({ heightFt: level(heightFt), ...flying }).criterion('altitude-before-final');

/** ±100 ft (FAA-S-ACS-8C and Part-FCL Appendix 7, published). */
describe('the altitude before final', () => {
  it.each([
    [1799, 'met'],
    [1801, 'not-met'],
    [1601, 'met'],
    [1599, 'not-met'],
  ])('of %i ft against the 1,700 ft of the fix is %s', (heightFt, verdict) => {
    expect(altitude(heightFt)).toMatchObject({ verdict, unit: 'ft' });
  });

  it('is looked at over the last 2 NM before the descent', () => {
    const found = judged({ heightFt: levelIntercept });
    const [span] = found.criterion('altitude-before-final').counted;
    const interceptS = found.approach.events.find(({ kind }) => kind === 'glidepath-intercept')!.timeS;
    expect(span!.endS).toBe(interceptS);
    // 2 NM are 80 s.
    expect(span!.endS - span!.startS).toBeCloseTo(80, 0);
    expect(found.criterion('altitude-before-final')).toMatchObject({ measured: 0, insideHalfShare: 1 });
  });

  it('is held against the altitude assigned rather than the fix', () => {
    expect(altitude(2000, { stated: { assignedAltitudeFt: 2000 } })).toMatchObject({
      verdict: 'met',
      why: 'within ±100 ft of 2,000 ft',
    });
    expect(altitude(1700, { stated: { assignedAltitudeFt: 2000 } }).verdict).toBe('not-met');
  });

  it('far above the fix is not held against it: the log does not know what was assigned', () => {
    // 2,100 ft meet the path more than 1 NM before the fix.
    expect(altitude(2100)).toMatchObject({
      verdict: 'not-assessed',
      why: 'the descent began well before the fix, and no altitude was assigned',
    });
  });

  it('is not assessed without an altitude of the fix, from above, and without a descent', () => {
    const { altitudeFt: _, ...fix } = finalApproachFix;
    const noAltitude = { ...PETRELHOLM, finalApproachFix: fix as typeof finalApproachFix };
    expect(altitude(1700, { facility: noAltitude }).why).toBe(
      'no altitude was assigned, and the fix has none',
    );
    const fromAbove = ({ timeS }: { timeS: number }) =>
      timeS < 110 ? 0.9 : Math.max(0, 0.9 - (timeS - 110) / 30);
    expect(judged({ glidepathFullScale: fromAbove }).criterion('altitude-before-final').why).toBe(
      'the glidepath was met from above, and no altitude was assigned',
    );
    expect(judged({ glidepathFullScale: () => 1.2 }).criterion('altitude-before-final').why).toBe(
      'no descent on the glidepath to be level before',
    );
  });

  it('is not assessed where the recording begins on the glidepath', () => {
    expect(judged().criterion('altitude-before-final').why).toBe(
      'too little level flight before the descent to judge',
    );
  });

  it('is not assessed on a localizer that came alive with the descent under way', () => {
    const joining = ({ timeS }: { timeS: number }) => Math.max(0, 2 - timeS / 100);
    expect(judged({ localizerFullScale: joining }).criterion('altitude-before-final').verdict).toBe(
      'not-assessed',
    );
  });

  it('may be off for 5 s by half as much again, and no more', () => {
    const off = (lastsS: number, byFt: number) =>
      judged({
        heightFt: ({ timeS, distanceNm }) =>
          timeS > 80.05 && timeS < 80.05 + lastsS ? 1700 + byFt : levelIntercept({ distanceNm }),
        everyS: 0.1,
      }).criterion('altitude-before-final');
    // 5 % of the 80 s are 4 s.
    expect(off(3.9, 149).verdict).toBe('met');
    expect(off(4.3, 149).verdict).toBe('not-met');
    expect(off(3.9, 151).verdict).toBe('not-met');
  });

  it('shows the room allowed beside the plain verdict', () => {
    const stated = (by: number) => ({
      allowances: [{ criterion: 'altitude-before-final', by, reason: 'gusts' }],
    });
    expect(altitude(1850, { stated: stated(60) })).toMatchObject({
      verdict: 'not-met',
      allowed: { by: 60, reason: 'gusts', verdict: 'met' },
    });
    expect(altitude(1850, { stated: stated(40) }).allowed!.verdict).toBe('not-met');
  });

  it('leaves out what the instructor flew', () => {
    expect(altitude(1850, { stated: { instructorFlew: [{ startS: 0, endS: 130 }] } }).verdict).toBe(
      'not-assessed',
    );
  });
});
