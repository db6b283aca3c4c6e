import { WGS84_FLATTENING, WGS84_SEMI_MAJOR_AXIS_M, type Place } from '../earth/frame.ts';
import { FEET_PER_METRE, FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import { placeOnAxis } from './runway-axis.ts';

/** What the height of a glidepath depends on; any facility's geometry has it. */
export interface GlidepathLine {
  readonly threshold: Place;
  readonly trueBearingDeg: number;
  readonly glidepathOrigin: Place;
  readonly glidepathAngleDeg: number;
}

/**
 * Altitude of the glidepath, feet above mean sea level, on the extended centreline at a distance to the
 * threshold in NM (in the threshold's frame, as deviations have it): a straight beam over a curved earth, on the sphere that fits the ellipsoid in the runway's
 * direction (within 0.05 ft of the ellipsoid itself to 10 NM).
 */
export function glidepathAltitudeFt(line: GlidepathLine, distanceNm: number): number {
  const { alongFt, rightFt } = placeOnAxis(line, line.glidepathOrigin);
  const distanceFt = Math.hypot(distanceNm * FEET_PER_NM + alongFt, rightFt);
  const { elevationFt } = line.glidepathOrigin;
  return beamAltitudeFt(elevationFt, line.glidepathAngleDeg, distanceFt, earthRadiusFt(line));
}

/**
 * Distance to the threshold in NM, on the extended centreline, at which the glidepath stands at an altitude;
 * negative past the threshold, NaN for an altitude below the path's origin.
 */
export function distanceAtGlidepathAltitudeNm(line: GlidepathLine, altitudeFt: number): number {
  const { alongFt, rightFt } = placeOnAxis(line, line.glidepathOrigin);
  const { elevationFt } = line.glidepathOrigin;
  if (altitudeFt < elevationFt) return Number.NaN;
  const distanceFt = beamDistanceFt(elevationFt, line.glidepathAngleDeg, altitudeFt, earthRadiusFt(line));
  return (Math.sqrt(distanceFt ** 2 - rightFt ** 2) - alongFt) / FEET_PER_NM;
}

/**
 * Altitude in feet that a straight line reaches when it leaves a point at an angle to that point's horizontal,
 * after a distance in feet along that horizontal.
 */
export function beamAltitudeFt(
  fromFt: number,
  angleDeg: number,
  distanceFt: number,
  radiusFt: number,
): number {
  const upFt = distanceFt * Math.tan(angleDeg * RADIANS_PER_DEGREE);
  return Math.hypot(radiusFt + fromFt + upFt, distanceFt) - radiusFt;
}

/**
 * The reverse of `beamAltitudeFt`: the distance at which the line reaches an altitude. Law of sines in the
 * triangle of the earth's centre, the line's start and the point sought.
 */
export function beamDistanceFt(fromFt: number, angleDeg: number, toFt: number, radiusFt: number): number {
  const angle = angleDeg * RADIANS_PER_DEGREE;
  const atCentre = Math.acos((Math.cos(angle) * (radiusFt + fromFt)) / (radiusFt + toFt)) - angle;
  return (radiusFt + toFt) * Math.sin(atCentre);
}

/** Radius of curvature of the ellipsoid in the runway's direction (Euler's formula), feet. */
function earthRadiusFt({ threshold, trueBearingDeg }: GlidepathLine): number {
  const eccentricitySquared = WGS84_FLATTENING * (2 - WGS84_FLATTENING);
  const w = 1 - eccentricitySquared * Math.sin(threshold.latDeg * RADIANS_PER_DEGREE) ** 2;
  const eastWestM = WGS84_SEMI_MAJOR_AXIS_M / Math.sqrt(w);
  const northSouthM = (eastWestM * (1 - eccentricitySquared)) / w;
  const northward = Math.cos(trueBearingDeg * RADIANS_PER_DEGREE) ** 2;
  return FEET_PER_METRE / (northward / northSouthM + (1 - northward) / eastWestM);
}
