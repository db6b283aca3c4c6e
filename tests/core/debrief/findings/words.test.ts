import { describe, expect, it } from 'vitest';
import { CORRECTIONS_TOO_LATE } from '../../../../core/debrief/findings/corrections.ts';
import { RATE_NOT_HELD } from '../../../../core/debrief/findings/rate-not-held.ts';

describe('a rate that was not held', () => {
  const said = (heldFpm: number) =>
    RATE_NOT_HELD.text({
      heldFpm,
      neededFpm: 486,
      lastsS: 16,
      toFt: 162,
      groundspeedChangeKt: 0,
      distanceNm: 3.5,
    });

  it('is said as it was flown: a sink, level flight or a climb', () => {
    expect(said(250)).toContain('you sank 250 ft/min for 16 seconds');
    expect(said(20)).toContain('you stayed level for 16 seconds');
    expect(said(-20)).toContain('you stayed level for 16 seconds');
    expect(said(-120)).toContain('you climbed 120 ft/min for 16 seconds');
  });

  it('that was a climb is no matter of the groundspeed', () => {
    expect(said(-120)).toContain('A climb is the attitude');
    expect(said(-120)).not.toContain('rate for your groundspeed');
    expect(said(250)).toContain('rate for your groundspeed');
  });
});

describe('a localizer that was corrected late', () => {
  const said = (turned: 0 | 1, turnedFullScale: number) =>
    CORRECTIONS_TOO_LATE.text({ delayS: 42, turned, turnedFullScale, peakFullScale: 0.9 });

  it('stood where it was at the turn, and went on to where it was farthest', () => {
    expect(said(1, 0.63)).toContain('42 seconds before you turned; by then you were 0.6 of full scale right');
    expect(said(1, 0.63)).toContain('went on to 0.9 of full scale.');
    expect(said(1, 0.9)).not.toContain('went on');
  });

  it('and never turned back to is not said to have been', () => {
    expect(said(0, 0.24)).toContain('for 42 seconds, to 0.9 of full scale right, and no turn back was seen.');
    expect(said(0, 0.24)).not.toContain('you turned');
  });
});
