import { describe, expect, it } from 'vitest';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import * as flown from '../../support/scenarios/approaches.ts';
import { debriefTruth } from './drawn.ts';

const LANDING = fly(flown.straightInLanding(PETRELHOLM));

/** The landing with an altimeter that shows what `indicated` makes of what it truly showed; without one for null. */
const debriefShowing = (indicated: ((ft: number) => number) | null) =>
  debriefTruth(LANDING, {
    columns: ({ columns }, tenths) =>
      indicated === null
        ? {}
        : { altitudeIndicatedFt: tenths.map((t) => indicated(Math.round(columns.indicatedFt[t]!))) },
  });
const codes = ({ log }: ReturnType<typeof debriefTruth>) => log.issues.map(({ code }) => code);

describe('an altimeter set 10 hPa wrong', () => {
  it('is told by the roll, among what is to be checked', () => {
    const debrief = debriefShowing((ft) => ft + 273);
    expect(codes(debrief)).toEqual(['altimeter-off-on-roll']);
    expect(debriefText(debrief)).toMatch(
      /To be checked: On the roll after landing the indicated altitude was 2[67]\d ft\s+too\s+high/,
    );
  });

  it('is what its pilot flew by: moments and verdicts stay those of what it showed', () => {
    const debrief = debriefShowing((ft) => ft + 90);
    const moment = debrief.approaches[0]!.events.find(({ kind }) => kind === 'decision-altitude')!;
    expect(codes(debrief)).toEqual(['altimeter-off-on-roll']);
    expect(moment).toMatchObject({ altitudeSource: 'indicated' });
    expect(moment.altitudeFt).toBeCloseTo(240, 6);
  });

  it('is not asked about where it was set right', () => {
    expect(codes(debriefShowing((ft) => ft))).toEqual([]);
  });
});

describe('an altimeter that is stuck', () => {
  it('is told, and the flight is judged as one without', () => {
    const debrief = debriefShowing(() => 1700);
    expect(codes(debrief)).toEqual(['altitude-frozen']);
    expect(debrief.approaches).toEqual(debriefShowing(null).approaches);
  });
});
