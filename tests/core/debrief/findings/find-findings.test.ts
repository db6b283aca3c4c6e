import { describe, expect, it } from 'vitest';
import { debriefText } from '../../../../core/report/debrief-text.ts';
import type { Stated } from '../../../../core/standard/stated.ts';
import { secondsOf } from '../../../../core/units/utc.ts';
import type { Drawing } from '../../../support/flight/drawn-flight.ts';
import { debriefOf } from '../drawn.ts';

/** 40 s a mile from 8 NM: the fix is passed after 120 s, 500 ft above the touchdown zone after about 260 s. */
const findingsOf = (drawing: Partial<Drawing>, stated: Partial<Stated> = {}) =>
  debriefOf(drawing, {}, stated).approaches[0]!.findings;
const faultsOf = (...of: Parameters<typeof findingsOf>) =>
  findingsOf(...of)
    .filter(({ kind }) => kind === 'fault')
    .map(({ id }) => id);

/** From left of the course through it to 0.8 of full scale right of it at 60 s, and back by 100 s. */
const through: Drawing['localizerFullScale'] = ({ timeS }) => {
  if (timeS < 60) return -1.6 + (2.4 * timeS) / 60;
  return Math.max(0, 0.8 - (0.8 * (timeS - 60)) / 40);
};
const highAt500: Drawing['glidepathFullScale'] = ({ timeS }) => (timeS > 220 && timeS < 275 ? 0.9 : 0);

describe('the findings of a flight that is drawn', () => {
  it('are none where both needles stay in the middle', () => expect(faultsOf({})).toEqual([]));

  it('say that the localizer was flown through, with how far and when', () => {
    const [finding] = findingsOf({ localizerFullScale: through });
    expect(finding).toMatchObject({ id: 'late-on-localizer', kind: 'fault', rank: 1 });
    expect(finding!.evidence['overshootFullScale']).toBeCloseTo(0.8, 1);
    const startS = Date.parse('2026-03-14T09:00:00Z') / 1000;
    expect(secondsOf(finding!.fromUtc) - startS).toBeGreaterThanOrEqual(40);
    expect(secondsOf(finding!.toUtc) - startS).toBeCloseTo(88, 0);
    expect(finding!.text).toContain('0.8 of full scale right of it');
  });

  it('say nothing of half as much', () => {
    const half: Drawing['localizerFullScale'] = (moment) => Math.min(0.4, through(moment));
    expect(faultsOf({ localizerFullScale: half })).toEqual([]);
  });

  it('put what was not stable and continued before the path and the localizer', () => {
    const faults = faultsOf({ localizerFullScale: through, glidepathFullScale: highAt500 });
    expect(faults[0]).toBe('unstable-and-continued');
    expect(faults).toContain('late-on-localizer');
  });

  it('are none of what the instructor flew', () => {
    const startS = Date.parse('2026-03-14T09:00:00Z') / 1000;
    const instructorFlew = [{ startS, endS: startS + 110 }];
    expect(faultsOf({ localizerFullScale: through }, { instructorFlew })).toEqual([]);
  });

  it('stand in the text after its first sentence, each with its clock and an exercise', () => {
    const text = debriefText(debriefOf({ localizerFullScale: through }));
    const [, block] = text.split('\n\n');
    expect(block).toMatch(/^To work on\n {2}1\. 09:00:\d\d {2}Turned late onto the localizer/);
    expect(block).toContain('Practise: Fly five intercepts');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});
