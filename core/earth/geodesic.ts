import * as library from 'geographiclib-geodesic';

// The library is CommonJS: its exports arrive as the namespace's default, which its types do not say.
const { Geodesic } = (library as unknown as { default: typeof library }).default;
const wgs84 = Geodesic.WGS84;

/** A point on the WGS84 ellipsoid, degrees, north and east positive. */
export interface Position {
  readonly latDeg: number;
  readonly lonDeg: number;
}

/** The shortest line between two points of the ellipsoid. Bearings are true, 0 to 360, both looking forward. */
export interface GeodesicLine {
  readonly distanceM: number;
  readonly startBearingDeg: number;
  readonly endBearingDeg: number;
}

/**
 * Distance and bearings from one point to another (Karney 2013, J. Geodesy 87:43; the library is the author's).
 * Never fails, near antipodes included; two equal points give distance 0.
 */
export function geodesicBetween(from: Position, to: Position): GeodesicLine {
  const line = wgs84.Inverse(from.latDeg, from.lonDeg, to.latDeg, to.lonDeg);
  return {
    distanceM: line.s12!,
    startBearingDeg: bearingOf(line.azi1!),
    endBearingDeg: bearingOf(line.azi2!),
  };
}

/** The point a distance away on a bearing, and the line's own bearing on arrival there. */
export function geodesicFrom(
  from: Position,
  bearingDeg: number,
  distanceM: number,
): Position & { readonly endBearingDeg: number } {
  const line = wgs84.Direct(from.latDeg, from.lonDeg, bearingDeg, distanceM);
  const lonDeg = line.lon2!;
  return {
    latDeg: line.lat2!,
    lonDeg: lonDeg === 180 ? -180 : lonDeg,
    endBearingDeg: bearingOf(line.azi2!),
  };
}

/** The library's −180 to 180 as a bearing; not by a remainder, which would blur the last digits. */
function bearingOf(azimuthDeg: number): number {
  return azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg;
}
