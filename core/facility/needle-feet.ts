import { FEET_PER_METRE, FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import { geodesicBetween, type Position } from '../earth/geodesic.ts';
import type { FacilityGeometry } from './derive-geometry.ts';

/** Feet sideways from the course at which the localizer shows a fraction of full scale, so many NM before the threshold. */
export function localizerFeet(geometry: FacilityGeometry, distanceNm: number, fraction: number): number {
  const { localizerAntenna, threshold, localizerFullScaleDeg } = geometry;
  const angle = fraction * localizerFullScaleDeg * RADIANS_PER_DEGREE;
  return (feetBetween(localizerAntenna, threshold) + distanceNm * FEET_PER_NM) * Math.tan(angle);
}

/** Feet above the path at which the glidepath shows a fraction of full scale, so many NM before the threshold. */
export function glidepathFeet(geometry: FacilityGeometry, distanceNm: number, fraction: number): number {
  const { glidepathOrigin, threshold, glidepathAngleDeg, glidepathFullScaleDeg } = geometry;
  const distanceFt = feetBetween(glidepathOrigin, threshold) + distanceNm * FEET_PER_NM;
  return (
    distanceFt * (tangent(glidepathAngleDeg + fraction * glidepathFullScaleDeg) - tangent(glidepathAngleDeg))
  );
}

function feetBetween(from: Position, to: Position): number {
  return geodesicBetween(from, to).distanceM * FEET_PER_METRE;
}

function tangent(angleDeg: number): number {
  return Math.tan(angleDeg * RADIANS_PER_DEGREE);
}
