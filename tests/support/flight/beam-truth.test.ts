import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import { beamTruth, placeAlong, pointFromThreshold, readBeam, type BeamReading } from './beam-truth.ts';
import type { FacilityFile } from './facility-file.ts';

interface GeometryCase {
  readonly facility: FacilityFile & {
    readonly runway: { readonly trueBearingDeg: number; readonly lengthFt: number };
  };
  readonly derived: { readonly courseTrueDeg: number; readonly localizerFullScaleDeg: number };
  readonly fixes: readonly {
    readonly latDeg: number;
    readonly lonDeg: number;
    readonly altitudeFt: number;
    readonly expect: BeamReading;
  }[];
}

// Expected values: PROJ and GeographicLib, in tests/reference/geometry-cases.json (computed).
const cases = (
  JSON.parse(readFileSync(new URL('../../reference/geometry-cases.json', import.meta.url), 'utf8')) as {
    cases: readonly GeometryCase[];
  }
).cases;

/** The cases give bearing and length in place of the far end. */
function withFarEnd({ facility }: GeometryCase): FacilityFile {
  const { threshold, trueBearingDeg, lengthFt } = facility.runway;
  const farEnd = { ...threshold, ...placeAlong(threshold, trueBearingDeg, lengthFt) };
  return { ...facility, runway: { ...facility.runway, farEnd } };
}

describe('the independent beam', () => {
  it('agrees with PROJ on every needle within 2e-6 degrees and every length within 0.001 ft', () => {
    let fixes = 0;
    for (const geometryCase of cases) {
      const beam = beamTruth(withFarEnd(geometryCase));
      expect(beam.courseTrueDeg).toBeCloseTo(geometryCase.derived.courseTrueDeg, 6);
      expect(beam.localizerFullScaleDeg).toBeCloseTo(geometryCase.derived.localizerFullScaleDeg, 6);
      for (const fix of geometryCase.fixes) {
        const reading = readBeam(beam, fix.latDeg, fix.lonDeg, fix.altitudeFt);
        expect(Math.abs(reading.localizerDeg - fix.expect.localizerDeg)).toBeLessThan(2e-6);
        expect(Math.abs(reading.localizerFullScale - fix.expect.localizerFullScale)).toBeLessThan(2e-6);
        expect(Math.abs(reading.glidepathFullScale - fix.expect.glidepathFullScale)).toBeLessThan(2e-6);
        expect(Math.abs(reading.glidepathDeg - fix.expect.glidepathDeg)).toBeLessThan(2e-6);
        expect(Math.abs(reading.centrelineOffsetFt - fix.expect.centrelineOffsetFt)).toBeLessThan(0.001);
        expect(Math.abs(reading.heightAboveGlidepathFt - fix.expect.heightAboveGlidepathFt)).toBeLessThan(
          0.001,
        );
        expect(Math.abs(reading.distanceToThresholdNm - fix.expect.distanceToThresholdNm)).toBeLessThan(1e-7);
        fixes++;
      }
    }
    expect(fixes).toBeGreaterThan(300);
  });

  it('is right of course positive, above the path positive, before the threshold positive', () => {
    const beam = beamTruth(PETRELHOLM);
    const place = pointFromThreshold(beam, 4, 500, 2500);
    const reading = readBeam(beam, place.latDeg, place.lonDeg, 2500);
    expect(reading.localizerDeg).toBeGreaterThan(0);
    expect(reading.glidepathDeg).toBeGreaterThan(0);
    expect(reading.distanceToThresholdNm).toBeCloseTo(4, 6);
    expect(reading.centrelineOffsetFt).toBeCloseTo(500, 4);
  });

  it('stands 88 ft above a flat line ten miles out, as d²/2R says', () => {
    const beam = beamTruth(PETRELHOLM);
    const flatFt = 34 + 52 + 10 * 318.44;
    const place = pointFromThreshold(beam, 10, 0, flatFt);
    const below = readBeam(beam, place.latDeg, place.lonDeg, flatFt).heightAboveGlidepathFt;
    // 88 ft at 10 NM from the path's origin: common curvature formula, R = 6371 km (computed); 3 % for the origin beyond
    expect(-below).toBeGreaterThan(86);
    expect(-below).toBeLessThan(92);
  });

  it('lets an offset course cross the centreline where it was built to', () => {
    const beam = beamTruth(WHIMBRELNESS);
    const place = pointFromThreshold(beam, 2600 / 6076.1155, 0, 300);
    expect(Math.abs(readBeam(beam, place.latDeg, place.lonDeg, 300).localizerDeg)).toBeLessThan(0.01);
  });

  it('keeps a short runway at three degrees of full scale', () => {
    expect(beamTruth(WHIMBRELNESS).localizerFullScaleDeg).toBe(3);
  });
});
