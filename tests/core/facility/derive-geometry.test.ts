import { describe, expect, it } from 'vitest';
import { deriveGeometry } from '../../../core/facility/derive-geometry.ts';
import { geodesicBetween, geodesicFrom } from '../../../core/earth/geodesic.ts';
import type { Facility } from '../../../core/facility/facility-schema.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { FULL, geometryOf, LEAST, withValue } from './full-facility.ts';
import cases from '../../reference/geometry-cases.json' with { type: 'json' };

/** Source: computed with PROJ and GeographicLib through pyproj (reference/geometry-cases.json); status computed. */
describe('fourteen facilities agree with an independent computation', () => {
  it.each(cases.cases.map((each) => [each.facility.name, each] as const))(
    '%s',
    (_, { facility, derived }) => {
      const parsed = parseFacility(JSON.stringify(facility), 'case.json');
      if (!parsed.ok) throw new Error(parsed.refusal.message);
      const geometry = deriveGeometry(parsed.value);
      const angles = ['courseTrueDeg', 'localizerFullScaleDeg', 'glidepathFullScaleDeg'] as const;
      for (const key of angles) expect(Math.abs(geometry[key] - derived[key])).toBeLessThan(1e-9);
      for (const key of ['localizerAntenna', 'glidepathOrigin'] as const) {
        expect(Math.abs(geometry[key].latDeg - derived[key].latDeg)).toBeLessThan(1e-9);
        expect(Math.abs(geometry[key].lonDeg - derived[key].lonDeg)).toBeLessThan(1e-9);
      }
    },
  );
});

describe('what the file gives is used as it stands', () => {
  const geometry = geometryOf(FULL);

  it('places, angles and altitudes', () => {
    expect(geometry).toMatchObject({
      threshold: FULL.runway.threshold,
      farEnd: FULL.runway.farEnd,
      widthFt: 148,
      touchdownZoneElevationFt: 112,
      airportElevationFt: 130,
      localizerAntenna: FULL.localizer.antenna,
      courseTrueDeg: 71.025,
      localizerFullScaleDeg: 2.225,
      glidepathOrigin: FULL.glidepath.antenna,
      glidepathAngleDeg: 3,
      glidepathFullScaleDeg: 0.7,
      thresholdCrossingHeightFt: 55,
      decisionAltitudeFt: 312,
      finalApproachFix: { name: 'QUENT', distanceNm: 5.2, altitudeFt: 1800 },
    });
    expect(new Set(Object.values(geometry.origins))).toEqual(new Set(['given', 'derived']));
    expect(geometry.origins).toMatchObject({ trueBearingDeg: 'derived', lengthFt: 'derived' });
  });

  it('two ends outrank a bearing and a length', () => {
    const coarse = withValue(withValue(FULL, 'runway.trueBearingDeg', 71.2), 'runway.lengthFt', 8070);
    expect(geometryOf(coarse).trueBearingDeg).toBeCloseTo(71, 4);
    expect(geometryOf(coarse).lengthFt).toBeCloseTo(8000, 1);
  });

  it('a bearing or a course of 360 is north', () => {
    const north = withValue(LEAST, 'runway.trueBearingDeg', 360);
    expect(geometryOf(north).trueBearingDeg).toBe(0);
    expect(geometryOf(withValue(north, 'localizer.courseTrueDeg', 360)).courseTrueDeg).toBe(0);
  });
});

describe('what the file leaves out is filled in', () => {
  const geometry = geometryOf(LEAST);

  it('the antenna stands 1,000 ft past the far end, on the runway’s own line, at threshold elevation', () => {
    const { localizerAntenna, threshold, courseTrueDeg } = geometry;
    const line = geodesicBetween(threshold, localizerAntenna);
    expect(line.distanceM / METRES_PER_FOOT).toBeCloseTo(9000, 6);
    expect(line.startBearingDeg).toBeCloseTo(71, 6);
    expect(courseTrueDeg).toBeCloseTo(line.endBearingDeg, 9);
    expect(localizerAntenna.elevationFt).toBe(100);
    expect(geometry.courseOffsetDeg).toBe(0);
  });

  it('a setback given is used', () => {
    const { localizerAntenna, threshold, origins } = geometryOf(
      withValue(LEAST, 'localizer.antennaSetbackFt', 0),
    );
    expect(geodesicBetween(threshold, localizerAntenna).distanceM / METRES_PER_FOOT).toBeCloseTo(8000, 6);
    expect(origins.localizerAntenna).toBe('derived');
  });

  it('full scale is 350 ft at the threshold, the path’s 0.24 of its angle, the width 150 ft', () => {
    expect(geometry.localizerFullScaleDeg).toBeCloseTo((Math.atan(350 / 9000) * 180) / Math.PI, 9);
    expect(geometry.glidepathFullScaleDeg).toBeCloseTo(0.72, 12);
    expect(geometry.widthFt).toBe(150);
  });

  it('the far end stands where bearing and length say, as high as the threshold', () => {
    const { latDeg, lonDeg } = geodesicFrom(LEAST.runway.threshold, 71, 8000 * METRES_PER_FOOT);
    expect(geometry.farEnd).toEqual({ latDeg, lonDeg, elevationFt: 100 });
    const unknown = geometryOf(withValue(FULL, 'runway.farEnd.elevationFt', undefined));
    expect(unknown.farEnd.elevationFt).toBe(100);
    expect(unknown.origins.farEndElevationFt).toBe('assumed');
  });

  it('the path’s origin is where it would meet the threshold’s level', () => {
    const line = geodesicBetween(geometry.threshold, geometry.glidepathOrigin);
    expect(line.distanceM / METRES_PER_FOOT).toBeCloseTo(55 / Math.tan((3 * Math.PI) / 180), 6);
    expect(line.startBearingDeg).toBeCloseTo(71, 6);
    expect(geometry.glidepathOrigin.elevationFt).toBe(100);
  });

  it('what has no usual value stays unknown', () => {
    expect(geometry.decisionAltitudeFt).toBeNull();
    expect(geometry.airportElevationFt).toBeNull();
    expect(geometry.impliedCrossingHeightFt).toBeNull();
    expect(geometry.finalApproachFix).toMatchObject({ name: null, altitudeFt: null });
  });

  it('the assumed fix is where the path is 1,500 ft above the touchdown zone', () => {
    expect(geometry.origins.finalApproachFix).toBe('assumed');
    expect(geometry.finalApproachFix.distanceNm).toBeCloseTo(4.478, 3);
    const higher = geometryOf(withValue(LEAST, 'runway.touchdownZoneElevationFt', 150));
    expect(higher.finalApproachFix.distanceNm - geometry.finalApproachFix.distanceNm).toBeCloseTo(
      50 / 320,
      2,
    );
  });
});

const zone = (farEnd: object) =>
  geometryOf(
    withValue(withValue(FULL, 'runway.touchdownZoneElevationFt', undefined), 'runway.farEnd', farEnd),
  );

describe('the touchdown zone, when not given, is the highest of the first 3,000 ft', () => {
  const { latDeg, lonDeg } = FULL.runway.farEnd;

  it('of a runway that rises, its height at 3,000 ft', () => {
    const geometry = zone({ latDeg, lonDeg, elevationFt: 180 });
    expect(geometry.touchdownZoneElevationFt).toBeCloseTo(130, 3);
    expect(geometry.origins.touchdownZoneElevationFt).toBe('derived');
  });

  it('of a runway that falls, the threshold', () => {
    expect(zone({ latDeg, lonDeg, elevationFt: 20 }).touchdownZoneElevationFt).toBe(100);
  });

  it('of one whose far end has no elevation, the threshold, assumed', () => {
    const geometry = zone({ latDeg, lonDeg });
    expect(geometry.touchdownZoneElevationFt).toBe(100);
    expect(geometry.origins.touchdownZoneElevationFt).toBe('assumed');
  });

  it('of one shorter than 3,000 ft, the far end', () => {
    const short = geodesicFrom(FULL.runway.threshold, 71, 2000 * METRES_PER_FOOT);
    const runway = {
      ...LEAST.runway,
      farEnd: { latDeg: short.latDeg, lonDeg: short.lonDeg, elevationFt: 140 },
    };
    expect(geometryOf({ ...LEAST, runway }).touchdownZoneElevationFt).toBeCloseTo(140, 9);
  });
});

describe('an antenna given without a course', () => {
  it('takes the runway’s bearing, turned by the longitude difference × sin latitude', () => {
    const given = { ...FULL.localizer, courseTrueDeg: undefined };
    const geometry = geometryOf({ ...FULL, localizer: given });
    const turned = (-35.36576377 + 35.4) * Math.sin((47.2 * Math.PI) / 180);
    expect(geometry.courseTrueDeg).toBeCloseTo(geometry.trueBearingDeg + turned, 5);
    const line = geodesicBetween(geometry.threshold, geometry.localizerAntenna);
    expect(geometry.courseTrueDeg).toBeCloseTo(line.endBearingDeg, 4);
  });

  it('crosses the antimeridian like any other line', () => {
    const threshold = { latDeg: 47.2, lonDeg: 179.99, elevationFt: 100 };
    const reached = geodesicFrom(threshold, 71, 9000 * METRES_PER_FOOT);
    const antenna = { latDeg: reached.latDeg, lonDeg: reached.lonDeg };
    const geometry = geometryOf({ ...LEAST, runway: { ...LEAST.runway, threshold }, localizer: { antenna } });
    expect(antenna.lonDeg).toBeLessThan(-179.97);
    expect(geometry.courseTrueDeg).toBeCloseTo(reached.endBearingDeg, 5);
    expect(geometry.localizerAntenna.elevationFt).toBe(100);
    expect(geometry.farEnd.lonDeg).toBeLessThan(-179.97);
  });
});

const antennaAt = (elevationFt: number) => ({ ...FULL.glidepath.antenna, elevationFt });

describe('a glidepath antenna and the crossing height', () => {
  it('an antenna that implies the crossing height within 5 ft is the origin', () => {
    const { alongFt, asideFt } = { alongFt: 1000, asideFt: 350 };
    const straightFt = 3 + alongFt * Math.tan((3 * Math.PI) / 180);
    const coneFt = 3 + Math.hypot(alongFt, asideFt) * Math.tan((3 * Math.PI) / 180);
    expect(geometryOf(FULL).impliedCrossingHeightFt).toBeCloseTo(straightFt, 2);
    const higher = withValue(FULL, 'glidepath.thresholdCrossingHeightFt', 60);
    expect(geometryOf(higher).impliedCrossingHeightFt).toBeCloseTo(coneFt, 2);
    expect(geometryOf(higher).glidepathOrigin).toEqual(FULL.glidepath.antenna);
  });

  it('one that implies another height is set aside for the crossing-height point', () => {
    const high = geometryOf(withValue(FULL, 'glidepath.antenna', antennaAt(108.5)));
    expect(high.impliedCrossingHeightFt).toBeCloseTo(60.9, 1);
    expect(high.glidepathOrigin.elevationFt).toBe(100);
    expect(high.origins.glidepathOrigin).toBe('derived');
    expect(geometryOf(withValue(FULL, 'glidepath.antenna', antennaAt(107))).origins.glidepathOrigin).toBe(
      'given',
    );
  });
});

describe('only a facility that was checked has a geometry', () => {
  it('a runway without a direction is our own mistake', () => {
    const unchecked = withValue(LEAST, 'runway.lengthFt', undefined) as unknown as Facility;
    expect(() => deriveGeometry(unchecked)).toThrow('not refused');
  });
});
