/**
 * Exact conversion factors. 1 NM = 1852 m and 1 ft = 0.3048 m are definitions (ICAO Annex 5; from memory),
 * as are 1 inHg = 33.8639 hPa (conventional) and 1 mi = 1609.344 m.
 */
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_NM = 1852;
export const FEET_PER_METRE = 1 / METRES_PER_FOOT;
export const FEET_PER_NM = METRES_PER_NM / METRES_PER_FOOT;
export const KNOTS_PER_METRE_PER_SECOND = 3600 / METRES_PER_NM;
export const FPM_PER_METRE_PER_SECOND = 60 / METRES_PER_FOOT;
export const HECTOPASCALS_PER_INCH_OF_MERCURY = 33.8639;

export const RADIANS_PER_DEGREE = Math.PI / 180;
export const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Wraps an angle in degrees to −180 ≤ angle < 180, as longitudes and differences of bearings are kept. */
export function wrap180(angleDeg: number): number {
  // An angle in range comes back to the last digit: adding and taking away 180 would blur it.
  if (angleDeg >= -180 && angleDeg < 180) return angleDeg;
  return ((((angleDeg + 180) % 360) + 360) % 360) - 180;
}

/** Wraps an angle in degrees to 0 ≤ angle < 360, as bearings are kept. */
export function wrap360(angleDeg: number): number {
  if (angleDeg >= 0 && angleDeg < 360) return angleDeg;
  const wrapped = ((angleDeg % 360) + 360) % 360;
  return wrapped === 360 ? 0 : wrapped;
}
