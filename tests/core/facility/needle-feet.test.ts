import { describe, expect, it } from 'vitest';
import { glidepathFeet, localizerFeet } from '../../../core/facility/needle-feet.ts';
import { FEET_PER_NM, RADIANS_PER_DEGREE } from '../../../core/units/units.ts';
import { geometryOf, LEAST, withValue } from './full-facility.ts';

const runwayOf = (lengthFt: number, setbackFt: number) =>
  geometryOf(
    withValue(withValue(LEAST, 'runway.lengthFt', lengthFt), 'localizer.antennaSetbackFt', setbackFt),
  );

/** Feet off centreline, (baseline + d) × tan of the angle; status computed, printed to 0.1 ft. */
describe('feet off the centreline for a needle', () => {
  const nominal = runwayOf(7016.32, 1000);
  const long = runwayOf(12_000, 1019);
  it.each([
    ['full scale, 5.00 degrees wide', nominal, 1, [350, 615.3, 1145.9, 1676.4, 3002.9]],
    ['half scale, 5.00 degrees wide', nominal, 0.5, [174.9, 307.5, 572.7, 837.8, 1500.7]],
    ['a fifth, 5.00 degrees wide', nominal, 0.2, [70, 123, 229, 335.1, 600.2]],
    ['three quarters, 5.00 degrees wide', nominal, 0.75, [262.4, 461.3, 859.2, 1257, 2251.5]],
    ['full scale, 3.08 degrees wide', long, 1, [350, 513.3, 840, 1166.7, 1983.5]],
  ])('%s', (_, geometry, fraction, expected) => {
    [0, 1, 3, 5, 10].forEach((distanceNm, place) => {
      expect(Math.abs(localizerFeet(geometry, distanceNm, fraction) - expected[place]!)).toBeLessThan(0.15);
    });
  });

  /** AIM 1-1-9 b.2 (published): 700 ft in all. */
  it('a tailored course is 350 ft at the threshold, whatever the runway', () => {
    for (const lengthFt of [6000, 8000, 12_000])
      expect(localizerFeet(runwayOf(lengthFt, 1000), 0, 1)).toBeCloseTo(350, 1);
  });
});

const scaled = (fullScaleDeg: number) => geometryOf(withValue(LEAST, 'glidepath.fullScaleDeg', fullScaleDeg));

const fromOrigin = (nm: number) => nm - 55 / Math.tan(3 * RADIANS_PER_DEGREE) / FEET_PER_NM;

/** Feet from a 3 degree path by distance from the path's origin; status computed. */
describe('feet above the path for a needle', () => {
  it.each([
    ['0.7 degrees above', 0.7, 1, [37.2, 74.5, 223.5, 372.4, 744.9]],
    ['0.7 degrees below', 0.7, -1, [-37.2, -74.4, -223.2, -372, -743.9]],
    ['a fifth of 0.7', 0.7, 0.2, [7.4, 14.9, 44.7, 74.4, 148.9]],
    ['half of 0.7', 0.7, 0.5, [18.6, 37.2, 111.7, 186.2, 372.3]],
    ['half of 0.24 of the angle', 0.72, 0.5, [19.1, 38.3, 114.9, 191.5, 383]],
  ])('%s', (_, fullScaleDeg, fraction, expected) => {
    [0.5, 1, 3, 5, 10].forEach((distanceNm, place) => {
      const feet = glidepathFeet(scaled(fullScaleDeg), fromOrigin(distanceNm), fraction);
      expect(Math.abs(feet - expected[place]!)).toBeLessThan(0.06);
    });
  });

  /** FAA Instrument Flying Handbook, "about 1,500 ft at 10 NM" (second-hand); 1,488.8 ft (computed). */
  it('the whole beam is 1,488.8 ft thick at 10 NM', () => {
    const geometry = scaled(0.7);
    const thickFt = glidepathFeet(geometry, fromOrigin(10), 1) - glidepathFeet(geometry, fromOrigin(10), -1);
    expect(Math.abs(thickFt - 1488.8)).toBeLessThan(1);
  });
});
