import { describe, expect, it } from 'vitest';
import { CORRECTIONS_TOO_LARGE } from '../../../../core/debrief/findings/corrections.ts';
import { debriefText } from '../../../../core/report/debrief-text.ts';
import type { Stated } from '../../../../core/standard/stated.ts';
import { secondsOf } from '../../../../core/units/utc.ts';
import type { Drawing } from '../../../support/flight/drawn-flight.ts';
import { fly } from '../../../support/flight/fly.ts';
import { PETRELHOLM } from '../../../support/samples/petrelholm.ts';
import { straightInLanding } from '../../../support/scenarios/approaches.ts';
import { debriefOf, debriefTruth } from '../drawn.ts';

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
const bumpFrom =
  (fromS: number): NonNullable<Drawing['glidepathFullScale']> =>
  ({ timeS }) =>
    timeS > fromS && timeS < 275 ? 0.9 : 0;
const highAt500 = bumpFrom(220);

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

  it('name the gate that counts before 500 ft, where that one failed as well', () => {
    const told = (conditions: Stated['conditions'], fromS: number) =>
      findingsOf({ glidepathFullScale: bumpFrom(fromS) }, { conditions }).find(
        ({ id }) => id === 'unstable-and-continued',
      )!.text;
    const both =
      /^Not stable at 1,000 ft, which counts here, nor at 500 ft: you passed 500 ft .* Not stable at 1,000 ft means going around/;
    expect(told('simulated', 190)).toMatch(both);
    for (const text of [told('simulated', 220), told('vmc', 190), told('not-stated', 190)])
      expect(text).toMatch(/^You passed 500 ft .* Not stable at 500 ft means going around there and then\.$/);
  });

  it('tell a cut with its unit', () => {
    const text = CORRECTIONS_TOO_LARGE.text({ cutDeg: -14, lastsS: 7, heightFt: 800, allowedDeg: 5 });
    expect(text).toContain('by up to 14 degrees');
    expect(text).toContain('There, 5 degrees is the most that you can take out again in time.');
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

  const restless: Drawing['localizerFullScale'] = ({ timeS, distanceNm }) =>
    distanceNm < 5 && distanceNm > 2 ? 0.3 * Math.sin((2 * Math.PI * timeS) / 20) : 0;

  it('say that a needle was hunted, also well within its tolerance', () => {
    expect(faultsOf({ localizerFullScale: restless })[0]).toBe('hunting-localizer');
  });

  it('say nothing of the hand of a pilot who did not fly', () => {
    expect(faultsOf({ localizerFullScale: restless }, { flown: 'coupled' })).toEqual([]);
    expect(faultsOf({ glidepathFullScale: highAt500 }, { flown: 'coupled' })).toEqual([
      'unstable-and-continued',
    ]);
  });

  it('say nothing by a log with a fix every five seconds', () => {
    const everyFive = { keep: (tenth: number) => tenth % 50 === 0 };
    const [approach] = debriefOf({ localizerFullScale: through }, everyFive).approaches;
    expect(approach!.findings).toEqual([]);
  });

  it('say nothing while the landing contradicts the facility', () => {
    const landing = fly(straightInLanding(PETRELHOLM));
    const [approach] = debriefTruth(landing, { highByFt: 100 }).approaches;
    expect(approach!.issues.map(({ code }) => code)).toContain('facility-elevation');
    expect(approach!.findings).toEqual([]);
  });

  it('hold a needle that may be off by more than the question to be where it may have been', () => {
    const high: Drawing['glidepathFullScale'] = ({ distanceNm }) =>
      0.7 * Math.max(0, Math.min(1, (3.4 - distanceNm) / 0.5, (distanceNm - 2) / 0.5));
    expect(faultsOf({ glidepathFullScale: high })).toContain('rate-not-held');
    const asPhone = debriefOf({ glidepathFullScale: high }, { receiver: 'phone' });
    expect(asPhone.approaches[0]!.findings.filter(({ kind }) => kind === 'fault')).toEqual([]);
  });
});
