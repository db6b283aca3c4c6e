import { describe, expect, it } from 'vitest';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import { deriveGeometry } from '../../../core/facility/derive-geometry.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import cases from '../../reference/geometry-cases.json' with { type: 'json' };

const DEGREES = 1e-6;
const FEET = 0.01;

function geometryOf(facility: unknown) {
  const outcome = parseFacility(JSON.stringify(facility), 'facility.json');
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return deriveGeometry(outcome.value);
}

/** Expected values computed with pyproj (PROJ, GeographicLib): the table's own words (computed). */
describe('deviations, against PROJ and GeographicLib', () => {
  it('checks every fix of every case', () => {
    expect(cases.cases.map(({ fixes }) => fixes.length)).toEqual(Array(14).fill(60));
  });

  it.each(cases.cases)('$facility.name: every fix within 1e-6° and 0.01 ft', ({ facility, fixes }) => {
    const geometry = geometryOf(facility);
    const column = (name: 'latDeg' | 'lonDeg' | 'altitudeFt') => Float64Array.from(fixes, (fix) => fix[name]);
    const positions = {
      latDeg: column('latDeg'),
      lonDeg: column('lonDeg'),
      altitudeFt: column('altitudeFt'),
    };
    const projected = projectTrack(positions, geometry);
    const found = {
      ...projected,
      localizerDeg: projected.localizerFullScale.map((share) => share * geometry.localizerFullScaleDeg),
      glidepathDeg: projected.glidepathFullScale.map((share) => share * geometry.glidepathFullScaleDeg),
    };
    fixes.forEach(({ expect: wanted }, i) => {
      const off = (name: keyof typeof wanted) => Math.abs(found[name][i]! - wanted[name]);
      expect(off('localizerDeg')).toBeLessThan(DEGREES);
      expect(off('glidepathDeg')).toBeLessThan(DEGREES);
      expect(off('localizerFullScale')).toBeLessThan(DEGREES);
      expect(off('glidepathFullScale')).toBeLessThan(2 * DEGREES);
      expect(off('centrelineOffsetFt')).toBeLessThan(FEET);
      expect(off('heightAboveGlidepathFt')).toBeLessThan(FEET);
      expect(off('heightAboveThresholdFt')).toBeLessThan(FEET);
      expect(off('distanceToThresholdNm') * 6076.1155).toBeLessThan(FEET);
    });
  });
});
