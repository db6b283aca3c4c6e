import { describe, expect, it } from 'vitest';
import { INSTRUMENT_RATING } from '../../../core/standard/shipped/instrument-rating.ts';
import { STABILIZED_APPROACH } from '../../../core/standard/shipped/stabilized-approach.ts';
import type { Limit, Standard } from '../../../core/standard/standard.ts';
import { goAroundFrom, judged, pathFt, swing } from './judged.ts';

const { final } = INSTRUMENT_RATING;
const oneSided = (lower: number | null, upper: number | null): Limit => ({
  lower,
  upper,
  code: null,
  source: 'made for this test',
  status: 'own choice',
});

describe('a standard that counts from its gate', () => {
  const NOT_PASSED = 'this standard counts from the 500 ft gate, which was not passed on final';

  it('judges nothing of an approach that did not come to the gate', () => {
    const own = [{ id: 'ours', title: 'Ours', quantity: 'bankDeg', limit: oneSided(-15, 15) }] as const;
    const found = judged({
      standard: { ...STABILIZED_APPROACH, own },
      toNm: 2,
      recorded: { airspeedIndicatedKt: () => 90, bankDeg: () => 0 },
      stated: { vrefKt: 80 },
    });
    for (const id of ['localizer-final', 'glidepath-final', 'airspeed-final', 'ours'])
      expect(found.criterion(id)).toMatchObject({ verdict: 'not-assessed', why: NOT_PASSED });
  });

  it('does not mind how the localizer was joined or what was off above it', () => {
    const joining = ({ timeS }: { timeS: number }) => (timeS < 120 ? 2 : Math.max(0, 1 - (timeS - 130) / 80));
    expect(
      judged({ localizerFullScale: joining, standard: STABILIZED_APPROACH }).criterion('localizer-final'),
    ).toMatchObject({ verdict: 'met', excursions: [] });
  });
});

describe('the glidepath', () => {
  it('does not count where final ended before it began to', () => {
    // Never intercepted, and gone around 0.25 NM into final; it counts after 0.5 NM.
    const found = judged({
      glidepathFullScale: () => 0.9,
      heightFt: ({ timeS }) => (timeS > 128 ? 1780 + (timeS - 128) * 25 : timeS > 60 ? 1780 : null),
      localizerFullScale: () => 0,
    });
    expect(found.criterion('glidepath-final')).toMatchObject({
      verdict: 'not-assessed',
      why: 'final ended before the glidepath began to count',
    });
  });

  it('counts from beyond a gap in which the half mile was passed', () => {
    const found = judged({ glidepathFullScale: () => 0.7, gaps: [[130, 142]] });
    const [span] = found.criterion('glidepath-final').counted;
    expect(span!.startS - found.beganS).toBeLessThanOrEqual(142);
  });
});

describe('a standard of a user’s own', () => {
  it('may limit a needle on one side only', () => {
    const standard = (localizer: Limit): Standard => ({
      ...INSTRUMENT_RATING,
      final: { ...final, localizer },
    });
    const verdict = (fullScale: number, limit: Limit) =>
      judged({ localizerFullScale: () => fullScale, standard: standard(limit) }).criterion('localizer-final');
    expect(verdict(0.45, oneSided(null, 0.4)).verdict).toBe('not-met');
    expect(verdict(-0.45, oneSided(null, 0.4))).toMatchObject({ verdict: 'met', why: 'within 0.4 scale' });
    expect(verdict(-0.45, oneSided(-0.4, null))).toMatchObject({ verdict: 'not-met' });
    expect(verdict(0.45, oneSided(-0.4, null))).toMatchObject({ verdict: 'met', why: 'within 0.4 scale' });
  });

  it('may leave limits out, and says so in general words where it gives no reason', () => {
    const standard: Standard = {
      ...INSTRUMENT_RATING,
      final: { ...final, airspeedKt: null, glidepath: null },
      minimums: null,
    };
    const found = judged({ standard });
    for (const id of ['airspeed-final', 'glidepath-final', 'minimums'])
      expect(found.criterion(id)).toMatchObject({
        verdict: 'not-assessed',
        why: 'the standard sets no limit for it here',
        limit: null,
      });
  });

  it('allows room on the one side that it has', () => {
    const own = (limit: Limit) => [{ id: 'ours', title: 'Ours', quantity: 'groundspeedKt', limit }] as const;
    const allowances = [{ criterion: 'ours', by: 3, reason: 'wind' }];
    const allowed = (limit: Limit) =>
      judged({ standard: { ...INSTRUMENT_RATING, own: own(limit) }, stated: { allowances } }).criterion(
        'ours',
      );
    expect([allowed(oneSided(null, 88)).verdict, allowed(oneSided(null, 88)).allowed!.verdict]).toEqual([
      'not-met',
      'met',
    ]);
    expect(allowed(oneSided(92, null)).allowed!.verdict).toBe('met');
    expect(allowed(oneSided(94, null)).allowed!.verdict).toBe('not-met');
  });
});

describe('500 ft, below which corrections have 3 s', () => {
  it('may be passed within a gap', () => {
    const after = (lastsS: number) =>
      judged({
        gaps: [[258, 267]],
        localizerFullScale: swing(280.05, lastsS, 0.85),
        everyS: 0.1,
      }).criterion('localizer-final').verdict;
    expect([after(2.9), after(3.1)]).toEqual(['met', 'not-met']);
  });
});

describe('a gate between two fixes 5 s apart', () => {
  it('has nothing recorded within 2 s, and is not assessed', () => {
    const found = judged({ gaps: [[261, 266]] }).gate('gate-500');
    expect(found.timeS).not.toBeNull();
    expect(found).toMatchObject({ verdict: 'not-assessed', why: 'localizer, glidepath, sink not recorded' });
    expect(found.items.find(({ item }) => item === 'sink')!.limit!.upper).toBe(1000);
  });

  it('with only its bank asked for says that nothing of it was recorded', () => {
    const { gates } = INSTRUMENT_RATING;
    const only = { ...gates, localizer: null, glidepath: null, airspeed: null, sinkFpm: null };
    const found = judged({ standard: { ...INSTRUMENT_RATING, gates: only } });
    expect(found.gate('gate-500')).toMatchObject({
      verdict: 'not-assessed',
      why: 'nothing of it was recorded',
    });
  });
});

describe('minimums at a missed approach exactly on the path', () => {
  it('are told to the foot', () => {
    const found = judged({ heightFt: goAroundFrom(pathFt(1.5), 10), standard: 'skill-test' });
    expect(found.criterion('minimums').why).toMatch(
      /^went around 3\d\d ft above decision altitude, before minimums$/,
    );
  });
});
