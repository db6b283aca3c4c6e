import { describe, expect, it } from 'vitest';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import * as flown from '../../support/scenarios/approaches.ts';
import { debriefTruth } from './drawn.ts';

const LANDING = fly(flown.straightInLanding(PETRELHOLM));
const BIAS_FT = 40;
const inOneLine = (text: string) => text.replaceAll(/\s+/g, ' ');
const codes = ({ log }: ReturnType<typeof debriefTruth>) => log.issues.map(({ code }) => code);

describe('heights that are off all along', () => {
  it('are as logged when nobody asks, and the roll says what they are off by', () => {
    const debrief = debriefTruth(LANDING, { highByFt: BIAS_FT });
    const { rollout } = debrief.approaches[0]!.measures;
    expect(Math.abs(rollout!.heightBiasFt! - BIAS_FT)).toBeLessThan(5);
    expect(debrief.log.heightCorrectionFt).toBe(0);
    expect(inOneLine(debriefText(debrief))).toMatch(
      /On the roll, for an antenna 6 ft above the ground, the heights of the log were \d+ ft too high/,
    );
  });

  it('taken from the roll give the moments, the needles and the verdicts of true ones', () => {
    const [truly] = debriefTruth(LANDING, { heights: 'from-rollout' }).approaches;
    const debrief = debriefTruth(LANDING, { highByFt: BIAS_FT, heights: 'from-rollout' });
    const [found] = debrief.approaches;
    expect(Math.abs(debrief.log.heightCorrectionFt - BIAS_FT)).toBeLessThan(5);
    expect(found!.criteria.map(({ id, verdict, points }) => [id, verdict, points])).toEqual(
      truly!.criteria.map(({ id, verdict, points }) => [id, verdict, points]),
    );
    expect(found!.events.map(({ kind, utc }) => [kind, utc])).toEqual(
      truly!.events.map(({ kind, utc }) => [kind, utc]),
    );
    expect(found!.grade!.level).toBe(truly!.grade!.level);
    expect(codes(debrief)).toContain('heights-from-rollout');
    expect(inOneLine(debriefText(debrief))).toContain('were taken off every height of the log');
  });

  it('that are too low are raised', () => {
    const debrief = debriefTruth(LANDING, { highByFt: -BIAS_FT, heights: 'from-rollout' });
    expect(Math.abs(debrief.log.heightCorrectionFt + BIAS_FT)).toBeLessThan(5);
    expect(debrief.log.issues.find(({ code }) => code === 'heights-from-rollout')!.message).toMatch(
      /were added to every height/,
    );
  });

  it('are held to the antenna that is stated, which the answer tells', () => {
    const usual = debriefTruth(LANDING, { highByFt: BIAS_FT, heights: 'from-rollout' });
    const high = debriefTruth(LANDING, { highByFt: BIAS_FT, heights: 'from-rollout', antennaHeightFt: 13.5 });
    expect([usual.log.antennaHeightFt, high.log.antennaHeightFt]).toEqual([6, 13.5]);
    expect(usual.log.heightCorrectionFt - high.log.heightCorrectionFt).toBeCloseTo(7.5, 6);
    // The bias is told as logged, also where it was taken off.
    expect(high.approaches[0]!.measures.rollout!.heightBiasFt).toBeCloseTo(high.log.heightCorrectionFt, 3);
    const asLogged = debriefTruth(LANDING, { highByFt: BIAS_FT, antennaHeightFt: 13.5 });
    expect(inOneLine(debriefText(asLogged))).toContain(
      'On the roll, for an antenna 13.5 ft above the ground, the heights',
    );
  });

  it('stay as logged without a landing, and that is said', () => {
    const missed = fly(flown.missedStraightAhead(PETRELHOLM));
    const debrief = debriefTruth(missed, { highByFt: BIAS_FT, heights: 'from-rollout' });
    expect(debrief.log.heightCorrectionFt).toBe(0);
    expect(codes(debrief)).toContain('heights-without-rollout');
    expect(debrief.approaches).toEqual(debriefTruth(missed, { highByFt: BIAS_FT }).approaches);
  });

  it('stay as logged where no receiver is so far off, and the facility is asked about', () => {
    const debrief = debriefTruth(LANDING, { highByFt: -95, heights: 'from-rollout' });
    expect(debrief.log.heightCorrectionFt).toBe(0);
    expect(codes(debrief)).toContain('heights-too-far-off');
    expect(debrief.approaches[0]!.issues.map(({ code }) => code)).toContain('facility-elevation');
  });

  it('of an altimeter are not offered to be corrected', () => {
    const text = (columns?: object) =>
      inOneLine(debriefText(debriefTruth(LANDING, { highByFt: BIAS_FT, ...columns })));
    const offer = 'The roll can be used to correct them.';
    expect(text()).toContain(offer);
    const indicated = text({
      columns: ({ columns }: typeof LANDING, tenths: readonly number[]) => ({
        altitudeGeometricFt: tenths.map(() => NaN),
        altitudeIndicatedFt: tenths.map((t) => columns.heightFt[t]! + BIAS_FT),
      }),
    });
    expect(indicated).toContain('ft too high');
    expect(indicated).not.toContain(offer);
  });

  it('of an altimeter are never touched', () => {
    const indicated = {
      heights: 'from-rollout',
      columns: ({ columns }: typeof LANDING, tenths: readonly number[]) => ({
        altitudeGeometricFt: tenths.map(() => NaN),
        altitudeIndicatedFt: tenths.map((t) => columns.indicatedFt[t]! + BIAS_FT),
      }),
    } as const;
    const debrief = debriefTruth(LANDING, indicated);
    expect(debrief.log).toMatchObject({ altitudeReference: 'indicated', heightCorrectionFt: 0 });
    expect(codes(debrief)).toContain('heights-not-by-satellite');
  });

  it('never move what an altimeter beside them showed', () => {
    const both = {
      highByFt: BIAS_FT,
      heights: 'from-rollout',
      columns: ({ columns }: typeof LANDING, tenths: readonly number[]) => ({
        altitudeIndicatedFt: tenths.map((t) => columns.indicatedFt[t]!),
      }),
    } as const;
    const altitudeAt = (debrief: ReturnType<typeof debriefTruth>) =>
      debrief.approaches[0]!.events.find(({ kind }) => kind === 'decision-altitude')!;
    expect(altitudeAt(debriefTruth(LANDING, both)).utc).toBe(
      altitudeAt(debriefTruth(LANDING, { ...both, heights: 'as-logged' })).utc,
    );
  });
});
