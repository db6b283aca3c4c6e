import { describe, expect, it } from 'vitest';
import { earthCentred, eastNorthUp, localFrame } from '../../../core/earth/frame.ts';
import { geodesicFrom } from '../../../core/earth/geodesic.ts';
import {
  beamAltitudeFt,
  beamDistanceFt,
  distanceAtGlidepathAltitudeNm,
  glidepathAltitudeFt,
} from '../../../core/facility/path-altitude.ts';
import { METRES_PER_FOOT, METRES_PER_NM, RADIANS_PER_DEGREE } from '../../../core/units/units.ts';
import { FULL, geometryOf, LEAST, withValue } from './full-facility.ts';

const atLatitude = (latDeg: number, trueBearingDeg: number) =>
  geometryOf(
    withValue(withValue(LEAST, 'runway.threshold.latDeg', latDeg), 'runway.trueBearingDeg', trueBearingDeg),
  );

describe('the path’s altitude is that of a straight beam over the ellipsoid', () => {
  it.each([
    [0, 0],
    [0, 90],
    [47.2, 71],
    [-60, 200],
    [80, 315],
  ])(
    'a point at that altitude is on the path in the origin’s own frame (latitude %i, bearing %i)',
    (latDeg, bearing) => {
      const geometry = atLatitude(latDeg, bearing);
      const point = new Float64Array(3);
      const enu = new Float64Array(3);
      const origin = localFrame(geometry.glidepathOrigin);
      const threshold = localFrame(geometry.threshold);
      for (const surfaceNm of [0, 1, 5, 10]) {
        const place = geodesicFrom(geometry.threshold, bearing + 180, surfaceNm * METRES_PER_NM);
        // The same plumb line is farther out in the threshold's frame the higher the point: two rounds settle it.
        let distanceNm = surfaceNm;
        for (let round = 0; round < 3; round++) {
          const heightM = glidepathAltitudeFt(geometry, distanceNm) * METRES_PER_FOOT;
          earthCentred(place.latDeg, place.lonDeg, heightM, point);
          eastNorthUp(threshold, point, enu);
          distanceNm = Math.hypot(enu[0]!, enu[1]!) / METRES_PER_NM;
        }
        eastNorthUp(origin, point, enu);
        const pathM = Math.hypot(enu[0]!, enu[1]!) * Math.tan(3 * RADIANS_PER_DEGREE);
        expect(Math.abs(enu[2]! - pathM) / METRES_PER_FOOT).toBeLessThan(0.05);
      }
    },
  );

  it('at the threshold it is the crossing height, and a few hundredths for the earth’s curve', () => {
    expect(glidepathAltitudeFt(geometryOf(LEAST), 0)).toBeCloseTo(155.03, 2);
  });

  it('past the threshold it goes on down', () => {
    expect(glidepathAltitudeFt(geometryOf(LEAST), -0.1)).toBeCloseTo(155.03 - 31.86, 1);
  });

  it('a mast beside the runway carries its cone to the centreline', () => {
    const geometry = geometryOf(FULL);
    const slope = Math.tan(3 * RADIANS_PER_DEGREE);
    expect(glidepathAltitudeFt(geometry, 0)).toBeCloseTo(103 + Math.hypot(1000, 350) * slope, 1);
    const flatFt = 103 + Math.hypot(1000 + 5.2 * (METRES_PER_NM / METRES_PER_FOOT), 350) * slope;
    expect(glidepathAltitudeFt(geometry, 5.2) - flatFt).toBeCloseTo(25.4, 0);
  });

  it('more earth lies under a path along the meridian of the equator, where it curves most', () => {
    const along = glidepathAltitudeFt(atLatitude(0, 0), 10);
    const across = glidepathAltitudeFt(atLatitude(0, 90), 10);
    expect(along - across).toBeCloseTo(91.3 * 0.0067, 1);
  });
});

describe('the distance for an altitude undoes the altitude for a distance', () => {
  it.each([-0.1, 0, 0.47, 3, 5.2, 10, 25])('at %f NM', (distanceNm) => {
    for (const geometry of [geometryOf(LEAST), geometryOf(FULL)]) {
      const altitudeFt = glidepathAltitudeFt(geometry, distanceNm);
      expect(distanceAtGlidepathAltitudeNm(geometry, altitudeFt)).toBeCloseTo(distanceNm, 6);
    }
  });

  it('below the path’s origin there is no path', () => {
    expect(distanceAtGlidepathAltitudeNm(geometryOf(LEAST), 99)).toBeNaN();
  });
});

/** d²/2R, R = 6371 km; status computed. */
describe('a level beam stands above the sea by d²/2R', () => {
  const radiusFt = 6_371_000 / METRES_PER_FOOT;
  it.each([
    [1, 0.88, 0.1],
    [3, 7.9, 0.1],
    [5, 22.1, 0.1],
    [6, 31.8, 0.1],
    [10, 88, 0.5],
  ])('after %i NM by %f ft', (distanceNm, expectedFt, toleranceFt) => {
    const distanceFt = (distanceNm * METRES_PER_NM) / METRES_PER_FOOT;
    expect(Math.abs(beamAltitudeFt(0, 0, distanceFt, radiusFt) - expectedFt)).toBeLessThanOrEqual(
      toleranceFt,
    );
    expect(beamDistanceFt(0, 0, beamAltitudeFt(0, 0, distanceFt, radiusFt), radiusFt)).toBeCloseTo(
      distanceFt,
      0,
    );
  });
});
