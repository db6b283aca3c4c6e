import { METRES_PER_FOOT, RADIANS_PER_DEGREE } from '../units/units.ts';

/** WGS84 defining parameters (NGA.STND.0036, from memory; the same values stand in every geodesic library). */
export const WGS84_SEMI_MAJOR_AXIS_M = 6378137;
export const WGS84_FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = WGS84_FLATTENING * (2 - WGS84_FLATTENING);

/** A place on or above the ellipsoid; heights above mean sea level go in as they are (design, section 4). */
export interface Place {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationFt: number;
}

/** A local frame: origin in earth-centred metres, and the rotation from there to east, north and up. */
export interface LocalFrame {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly sinLat: number;
  readonly cosLat: number;
  readonly sinLon: number;
  readonly cosLon: number;
}

/**
 * Geodetic to earth-centred coordinates, into `out` (length 3, metres): a closed formula, exact to rounding.
 * Writes in place because it runs once per fix.
 */
export function earthCentred(latDeg: number, lonDeg: number, heightM: number, out: Float64Array): void {
  const lat = latDeg * RADIANS_PER_DEGREE;
  const lon = lonDeg * RADIANS_PER_DEGREE;
  const sinLat = Math.sin(lat);
  const cosLat = Math.cos(lat);
  const primeVerticalM = WGS84_SEMI_MAJOR_AXIS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sinLat * sinLat);
  const fromAxisM = (primeVerticalM + heightM) * cosLat;
  out[0] = fromAxisM * Math.cos(lon);
  out[1] = fromAxisM * Math.sin(lon);
  out[2] = (primeVerticalM * (1 - ECCENTRICITY_SQUARED) + heightM) * sinLat;
}

/** The east-north-up frame at a place. */
export function localFrame(place: Place): LocalFrame {
  const origin = new Float64Array(3);
  earthCentred(place.latDeg, place.lonDeg, place.elevationFt * METRES_PER_FOOT, origin);
  const lat = place.latDeg * RADIANS_PER_DEGREE;
  const lon = place.lonDeg * RADIANS_PER_DEGREE;
  return {
    x: origin[0]!,
    y: origin[1]!,
    z: origin[2]!,
    sinLat: Math.sin(lat),
    cosLat: Math.cos(lat),
    sinLon: Math.sin(lon),
    cosLon: Math.cos(lon),
  };
}

/** East, north and up of an earth-centred `point` in `frame`, into `out` (both length 3, metres). */
export function eastNorthUp(frame: LocalFrame, point: Float64Array, out: Float64Array): void {
  const dx = point[0]! - frame.x;
  const dy = point[1]! - frame.y;
  const dz = point[2]! - frame.z;
  const towardsAxis = frame.cosLon * dx + frame.sinLon * dy;
  out[0] = frame.cosLon * dy - frame.sinLon * dx;
  out[1] = frame.cosLat * dz - frame.sinLat * towardsAxis;
  out[2] = frame.cosLat * towardsAxis + frame.sinLat * dz;
}

/**
 * Metres per degree of latitude and of longitude on the ellipsoid at a latitude (meridional and prime-vertical
 * radii of curvature). Good for the few hundred metres between neighbouring fixes, not for distances.
 */
export function metresPerDegree(latDeg: number): { readonly latM: number; readonly lonM: number } {
  const sinLat = Math.sin(latDeg * RADIANS_PER_DEGREE);
  const w = 1 - ECCENTRICITY_SQUARED * sinLat * sinLat;
  const primeVerticalM = WGS84_SEMI_MAJOR_AXIS_M / Math.sqrt(w);
  return {
    latM: ((primeVerticalM * (1 - ECCENTRICITY_SQUARED)) / w) * RADIANS_PER_DEGREE,
    lonM: primeVerticalM * Math.cos(latDeg * RADIANS_PER_DEGREE) * RADIANS_PER_DEGREE,
  };
}
