import { describe, expect, it } from 'vitest';
import { judged, swing } from './judged.ts';

describe('a final whose decision altitude was passed while nothing was recorded', () => {
  // Decision altitude is passed at 300.7 s.
  const gaps = [[290, 308]] as const;

  it('ends with the last fix before, and is not said to have stopped above it', () => {
    const found = judged({ gaps, stated: { visualReferenceAtMinimums: 'seen' } });
    const final = found.approach.segments.find(({ kind }) => kind === 'final')!;
    expect(final.endS - found.beganS).toBe(290);
    expect(found.criterion('minimums').why).toBe('decision altitude was passed while nothing was recorded');
    for (const id of ['localizer-final', 'glidepath-final'])
      expect(found.criterion(id)).toMatchObject({
        verdict: 'not-assessed',
        why: 'within ¾ scale, but decision altitude was passed while nothing was recorded',
      });
    expect(found.criterion('stability').why).toBe(
      'stable at 500 ft, but decision altitude was passed while nothing was recorded',
    );
  });

  it('has lost nothing by what the angle does afterwards', () => {
    const found = judged({
      gaps,
      glidepathFullScale: ({ timeS }) => (timeS > 305 ? 1.5 : 0),
      glidepathOff: 0.1,
    });
    expect(found.criterion('glidepath-final').excursions).toEqual([]);
    expect(found.gate('gate-500')).toMatchObject({ lostAfter: [], doubtedAfter: [] });
  });

  it('is not met when beyond already', () => {
    const found = judged({ gaps, localizerFullScale: swing(150, 20, 0.9) });
    expect(found.criterion('localizer-final').verdict).toBe('not-met');
  });
});
