import { describe, expect, it } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { needleError } from '../../../core/deviation/needle-error.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import { NO_ERROR, type PositionError } from '../../../core/track/position-error.ts';
import { drawFlight } from '../../support/flight/drawn-flight.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { makeFlown } from '../approach/make-flown.ts';
import { STRAIGHT_IN } from '../debrief/drawn.ts';

const METRE_FT = 1 / 0.3048;
/** The published values are of a localizer 5° wide and a path of 3° with 0.7° to its full scale. */
const WIDE = {
  ...PETRELHOLM,
  localizer: { ...PETRELHOLM.localizer, courseWidthDeg: 5 },
  glidepath: { ...PETRELHOLM.glidepath, fullScaleDeg: 0.7 },
};

function needlesAt(distanceNm: number, off: { sideM?: number; heightM?: number }) {
  const defined = defineFacility(JSON.stringify(WIDE), 'wide.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const { geometry } = defined.value;
  const { columns } = drawFlight({ ...STRAIGHT_IN, facility: WIDE });
  const { latDeg, lonDeg, heightFt } = columns;
  const deviations = projectTrack({ latDeg, lonDeg, altitudeFt: heightFt }, geometry);
  const error: PositionError = {
    ...NO_ERROR,
    sideFt: () => (off.sideM ?? 0) * METRE_FT,
    heightFt: () => (off.heightM ?? 0) * METRE_FT,
  };
  const i = deviations.distanceToThresholdNm.findIndex((nm) => nm <= distanceNm);
  const { localizer, glidepath } = needleError(error, deviations, geometry);
  return { localizer: localizer.at(i), glidepath: glidepath.at(i), geometry };
}

/**
 * check-values.md, section 12: "13 m vertical = 0.57 GS FSD at 1 NM, 0.11 at 5 NM; 8 m lateral = 0.075 LOC FSD at THR;
 * WAAS 1.8 m = 0.08 GS FSD at 1 NM" (computed there for the distance to the threshold; the origin of the path lies behind
 * it, from where 42.65 ft ÷ 7,030 ft are 0.348°, 0.50 of full scale).
 */
describe('what a position error does to a needle', () => {
  it.each([
    [13, 1, 0.57],
    [13, 5, 0.11],
    [1.8, 1, 0.08],
  ])('%d m in height at %d NM is %d of full scale, counted from the threshold', (heightM, nm, fullScale) => {
    const { glidepath, geometry } = needlesAt(nm, { heightM });
    const fromThresholdFt = nm * 6076.1155;
    const originFt = geometry.thresholdCrossingHeightFt / Math.tan((3 * Math.PI) / 180);
    const counted = glidepath * ((fromThresholdFt + originFt) / fromThresholdFt);
    expect(Math.abs(counted - fullScale)).toBeLessThan(0.01);
  });

  it('8 m to the side near the threshold is 0.075 of full scale', () => {
    const { localizer, geometry } = needlesAt(0.06, { sideM: 8 });
    // The published figure is for 350 ft to a full scale at the threshold; here the antenna stands elsewhere.
    const baselineFt = geometry.lengthFt + 1000;
    const scaleFt = (baselineFt + 0.06 * 6076) * Math.tan((2.5 * Math.PI) / 180);
    expect((localizer * scaleFt) / 350).toBeCloseTo(0.075, 3);
  });

  it('to the side also moves the glidepath, as far as it rises', () => {
    const sideFt = 100 * METRE_FT;
    const turned = (Math.atan((Math.tan((3 * Math.PI) / 180) * sideFt) / 7030) * 180) / Math.PI / 0.7;
    expect(needlesAt(1, { sideM: 100 }).glidepath).toBeCloseTo(turned, 2);
  });

  it('of no error is none', () => {
    expect(needlesAt(1, {})).toMatchObject({ localizer: 0, glidepath: 0 });
  });

  it('is known of a fix that has no height itself: a gate beside it is judged by its neighbours', () => {
    const flown = makeFlown({
      error: { ...NO_ERROR, sideFt: () => 20, heightFt: () => 30 },
      glidepath: (s) => (s === 50 ? NaN : 0),
    });
    const { localizer, glidepath } = flown.needleError;
    expect(glidepath.at(50)).toBe(glidepath.at(49));
    expect(glidepath.at(50)).toBeGreaterThan(0.05);
    expect(localizer.at(50)).toBeGreaterThan(0);
  });
});
