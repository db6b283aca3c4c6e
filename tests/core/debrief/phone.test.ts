import { describe, expect, it } from 'vitest';
import { debriefText } from '../../../core/report/debrief-text.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import * as flown from '../../support/scenarios/approaches.ts';
import { randomPlan } from '../../support/scenarios/random-plan.ts';
import { debriefTruth } from './drawn.ts';

const LANDING = fly(flown.straightInLanding(PETRELHOLM));
const MISSED = fly(flown.missedStraightAhead(PETRELHOLM));
const phone = (truth: FlightTruth, highByFt: number, ofFix?: (tenth: number) => number) =>
  debriefTruth(truth, {
    receiver: 'phone',
    heights: null,
    highByFt,
    ...(ofFix && {
      columns: ({ columns }, tenths) => ({
        altitudeGeometricFt: tenths.map((t) => columns.heightFt[t]! + ofFix(t)),
      }),
    }),
  });
const verdicts = ({ approaches }: ReturnType<typeof phone>) =>
  approaches.flatMap(({ criteria, stability }) => [
    ...criteria.map(({ id, verdict }) => [id, verdict]),
    ...stability.map(({ gate, verdict }) => [gate, verdict]),
  ]);

describe("a phone's log with heights 40 ft too high", () => {
  it('and a landing gets the verdicts of the unbiased one, and says what was taken off', () => {
    const debrief = phone(LANDING, 40);
    expect(verdicts(debrief)).toEqual(verdicts(phone(LANDING, 0)));
    expect(Math.abs(debrief.log.heightCorrectionFt - 40)).toBeLessThan(5);
    expect(debrief.log.positionError).toMatchObject({ receiver: 'phone', heightFrom: 'roll' });
    const text = debriefText(debrief).replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/\d+ ft were taken off every height of the log, as the roll after landing shows/);
  });

  it('and a landing gets the verdicts of the unbiased one on flights of chance too', () => {
    for (let seed = 0; seed < 12; seed++) {
      const truth = fly(randomPlan(seed));
      const [biased, truly] = [phone(truth, 40), phone(truth, 0)];
      if (biased.log.heightCorrectionFt === 0) continue;
      expect(verdicts(biased), truth.plan.name).toEqual(verdicts(truly));
    }
  });

  it('and no landing is unclear where the 40 ft could matter, and says that nothing was taken off', () => {
    const debrief = phone(MISSED, 40);
    expect(debrief.log.heightCorrectionFt).toBe(0);
    const found = new Map(debrief.approaches[0]!.criteria.map(({ id, verdict }) => [id, verdict]));
    expect(found.get('glidepath-final')).toBe('unclear');
    // To the side a phone is good enough.
    expect(found.get('localizer-final')).toBe('met');
    expect(debrief.log.issues.map(({ code }) => code)).toContain('heights-without-rollout');
    const { grade } = debrief.approaches[0]!;
    expect(grade!.levelLow).toBeLessThan(grade!.levelHigh);
    expect(grade!.scoreLow).toBeLessThan(grade!.scoreHigh);
  });

  it('that drift by 30 ft in the five minutes before the landing are still within the band', () => {
    const landedS = LANDING.columns.timeS.length / 10;
    const drift = (tenth: number) => 40 + Math.min(30, Math.max(0, ((landedS - tenth / 10) * 30) / 300));
    const debrief = phone(LANDING, 0, drift);
    const [approach] = debrief.approaches;
    const [truly] = debriefTruth(LANDING).approaches;
    for (const { kind, glidepathFullScale, glidepathHalfWidth } of approach!.events) {
      if (glidepathFullScale === null || !['gate-1000', 'gate-500', 'decision-altitude'].includes(kind))
        continue;
      const true_ = truly!.events.find((event) => event.kind === kind)!;
      expect(Math.abs(glidepathFullScale - true_.glidepathFullScale!)).toBeLessThan(glidepathHalfWidth!);
    }
    const wrong = approach!.criteria.filter(({ id, verdict }) => {
      const right = truly!.criteria.find((one) => one.id === id)!.verdict;
      return (verdict === 'met' || verdict === 'not-met') && verdict !== right;
    });
    expect(wrong).toEqual([]);
  });
});

describe('a better log than a phone has', () => {
  it('keeps its heights unless it is asked to correct them', () => {
    expect(debriefTruth(LANDING, { receiver: 'augmented', heights: null, highByFt: 10 }).log).toMatchObject({
      heightCorrectionFt: 0,
      positionError: { heightFrom: 'class' },
    });
  });

  const columns = (_: FlightTruth, tenths: readonly number[]) => ({
    verticalAccuracyM: tenths.map(() => 2),
  });

  it('that says itself how good its heights are, and is wrong by its roll, is corrected if it is a phone', () => {
    const debrief = debriefTruth(LANDING, { receiver: 'phone', heights: null, highByFt: 40, columns });
    expect(Math.abs(debrief.log.heightCorrectionFt - 40)).toBeLessThan(5);
    expect(verdicts(debrief)).toEqual(
      verdicts(debriefTruth(LANDING, { receiver: 'phone', heights: 'from-rollout', columns })),
    );
  });

  it('whose heights its roll contradicts is as far off as that, corrected or not', () => {
    // The tidy landing would be at full scale with heights 60 ft high by an error of 6 ft.
    const debrief = debriefTruth(LANDING, { receiver: 'augmented', heights: null, highByFt: 60 });
    expect(debrief.log.heightCorrectionFt).toBe(0);
    expect(debrief.log.positionError.heightFt.largest).toBeGreaterThan(55);
    expect(debrief.log.issues.map(({ code }) => code)).toContain('heights-contradicted');
    const wrong = debrief.approaches[0]!.criteria.filter(({ verdict }) => verdict === 'not-met');
    expect(wrong).toEqual([]);
  });

  it('that says itself how good its heights are keeps them', () => {
    expect(
      debriefTruth(LANDING, { receiver: 'phone', heights: null, highByFt: 10, columns }).log,
    ).toMatchObject({
      heightCorrectionFt: 0,
      positionError: { heightFrom: 'accuracy' },
    });
  });
});
