/**
 * Earth-centred coordinates of the WGS84 ellipsoid and local frames, written for the tests alone: the truth that
 * the product is checked against shares no line with it.
 * a and 1/f: NGA.STND.0036 (WGS84), table 3.1; from memory.
 */
const SEMI_MAJOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
const RADIANS = Math.PI / 180;

export interface GeodeticPoint {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly heightM: number;
}

export type Vector = readonly [number, number, number];

/** A place with its east, north and up axes. */
export interface LocalFrame {
  readonly origin: Vector;
  readonly east: Vector;
  readonly north: Vector;
  readonly up: Vector;
}

/** Radii of curvature along the meridian and across it, in metres. */
export function radiiM(latDeg: number): { meridianM: number; primeVerticalM: number } {
  const sin = Math.sin(latDeg * RADIANS);
  const w = 1 - ECCENTRICITY_SQUARED * sin * sin;
  const primeVerticalM = SEMI_MAJOR_M / Math.sqrt(w);
  return { primeVerticalM, meridianM: (primeVerticalM * (1 - ECCENTRICITY_SQUARED)) / w };
}

export function earthCentred({ latDeg, lonDeg, heightM }: GeodeticPoint): Vector {
  const { primeVerticalM } = radiiM(latDeg);
  const [lat, lon] = [latDeg * RADIANS, lonDeg * RADIANS];
  const equatorial = (primeVerticalM + heightM) * Math.cos(lat);
  return [
    equatorial * Math.cos(lon),
    equatorial * Math.sin(lon),
    (primeVerticalM * (1 - ECCENTRICITY_SQUARED) + heightM) * Math.sin(lat),
  ];
}

/** Inverse of earthCentred by plain iteration; below a micrometre after a handful of rounds near the surface. */
export function geodetic([x, y, z]: Vector): GeodeticPoint {
  const equatorial = Math.hypot(x, y);
  let lat = Math.atan2(z, equatorial * (1 - ECCENTRICITY_SQUARED));
  let heightM = 0;
  for (let round = 0; round < 8; round++) {
    const { primeVerticalM } = radiiM(lat / RADIANS);
    heightM = equatorial * Math.cos(lat) + z * Math.sin(lat) - SEMI_MAJOR_M ** 2 / primeVerticalM;
    const flattened = 1 - (ECCENTRICITY_SQUARED * primeVerticalM) / (primeVerticalM + heightM);
    lat = Math.atan2(z, equatorial * flattened);
  }
  return { latDeg: lat / RADIANS, lonDeg: Math.atan2(y, x) / RADIANS, heightM };
}

export function frameAt(point: GeodeticPoint): LocalFrame {
  const [lat, lon] = [point.latDeg * RADIANS, point.lonDeg * RADIANS];
  const [sinLat, cosLat, sinLon, cosLon] = [Math.sin(lat), Math.cos(lat), Math.sin(lon), Math.cos(lon)];
  return {
    origin: earthCentred(point),
    east: [-sinLon, cosLon, 0],
    north: [-sinLat * cosLon, -sinLat * sinLon, cosLat],
    up: [cosLat * cosLon, cosLat * sinLon, sinLat],
  };
}

/** East, north and up of an earth-centred point, in metres, as seen in a frame. */
export function seenFrom(frame: LocalFrame, point: Vector): { eastM: number; northM: number; upM: number } {
  const d: Vector = [point[0] - frame.origin[0], point[1] - frame.origin[1], point[2] - frame.origin[2]];
  return { eastM: dot(d, frame.east), northM: dot(d, frame.north), upM: dot(d, frame.up) };
}

/** The earth-centred point at so many metres east, north and up in a frame. */
export function pointAt(frame: LocalFrame, eastM: number, northM: number, upM: number): Vector {
  const along = (axis: 0 | 1 | 2): number =>
    frame.origin[axis] + eastM * frame.east[axis] + northM * frame.north[axis] + upM * frame.up[axis];
  return [along(0), along(1), along(2)];
}

/** −180 ≤ longitude < 180; one that is so already stays as it is, to the last bit. */
export function longitudeInRange(lonDeg: number): number {
  if (lonDeg >= 180) return lonDeg - 360;
  return lonDeg < -180 ? lonDeg + 360 : lonDeg;
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
