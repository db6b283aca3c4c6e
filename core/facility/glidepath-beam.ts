import type { Place } from '../earth/frame.ts';
import { geodesicFrom } from '../earth/geodesic.ts';
import { METRES_PER_FOOT, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { Facility } from './facility-schema.ts';
import { placeOnAxis, type RunwayAxis } from './runway-axis.ts';

/** ICAO Annex 10 Vol I 3.1.5.6 (second-hand): full scale, 0.175 DDM, lies 0.24 of the angle off the path. */
const FULL_SCALE_SHARE_OF_ANGLE = 0.24;
/** Farther apart than this, the antenna's place and the crossing height contradict each other (our own choice). */
export const CROSSING_HEIGHT_SLACK_FT = 5;

export interface GlidepathBeam {
  /** Where the beam's line starts on the ground. */
  readonly origin: Place;
  readonly fullScaleDeg: number;
  /** Threshold crossing height that the given antenna implies; null when none is given. */
  readonly impliedCrossingHeightFt: number | null;
}

/**
 * The glidepath of a facility: from the antenna as given, or from the point on the centreline that the crossing
 * height asks for. An antenna that contradicts the crossing height is not used.
 */
export function glidepathBeam(facility: Facility, axis: RunwayAxis): GlidepathBeam {
  const { angleDeg, thresholdCrossingHeightFt, antenna } = facility.glidepath;
  const fullScaleDeg = facility.glidepath.fullScaleDeg ?? FULL_SCALE_SHARE_OF_ANGLE * angleDeg;
  const impliedCrossingHeightFt = antenna ? impliedHeightFt(facility, antenna, axis) : null;
  const agrees =
    impliedCrossingHeightFt !== null &&
    Math.abs(impliedCrossingHeightFt - thresholdCrossingHeightFt) <= CROSSING_HEIGHT_SLACK_FT;
  const origin = antenna && agrees ? antenna : crossingHeightPoint(facility, axis);
  return { origin, fullScaleDeg, impliedCrossingHeightFt };
}

/**
 * An antenna beside the runway implies two crossing heights a few feet apart: that of the cone it radiates, by
 * its distance to the threshold, and that of the path's straight part drawn on to the threshold, by its distance
 * along the runway (ICAO Annex 10, reference datum; FAA records fit this one). The nearer to the given one counts.
 */
function impliedHeightFt({ runway, glidepath }: Facility, antenna: Place, axis: RunwayAxis): number {
  const { alongFt, rightFt } = placeOnAxis(axis, antenna);
  const baseFt = antenna.elevationFt - runway.threshold.elevationFt;
  const slope = Math.tan(glidepath.angleDeg * RADIANS_PER_DEGREE);
  const straightFt = baseFt + alongFt * slope;
  const coneFt = baseFt + Math.hypot(alongFt, rightFt) * slope;
  const givenFt = glidepath.thresholdCrossingHeightFt;
  return Math.abs(straightFt - givenFt) < Math.abs(coneFt - givenFt) ? straightFt : coneFt;
}

function crossingHeightPoint({ runway, glidepath }: Facility, axis: RunwayAxis): Place {
  const distanceFt = glidepathInterceptFt(glidepath.thresholdCrossingHeightFt, glidepath.angleDeg);
  const point = geodesicFrom(axis.threshold, axis.trueBearingDeg, distanceFt * METRES_PER_FOOT);
  return { latDeg: point.latDeg, lonDeg: point.lonDeg, elevationFt: runway.threshold.elevationFt };
}

/** Ground point of intercept: feet past the threshold at which a path of that crossing height meets its level. */
export function glidepathInterceptFt(thresholdCrossingHeightFt: number, angleDeg: number): number {
  return thresholdCrossingHeightFt / Math.tan(angleDeg * RADIANS_PER_DEGREE);
}
