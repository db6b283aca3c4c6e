import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { valueAt } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import { courseAngles } from './course-angle.ts';

/** A track at a facility: everything that the search for approaches looks at, in columns of one length. */
export interface Flown {
  readonly track: Track;
  readonly deviations: Deviations;
  readonly facility: FacilityGeometry;
  /** Of the ground track to the course, right positive (`courseAngles`). */
  readonly courseAngleDeg: Float64Array;
  /** What gates and decision altitude are judged by: indicated where it was logged, else the beam's height. */
  readonly decidingAltitudeFt: Float64Array;
  readonly altitudeSource: 'indicated' | 'geometric';
  /** Of the receiver's antenna above the ground, on wheels. */
  readonly antennaHeightFt: number;
}

/** Of a receiver's antenna above the ground where nobody says (design, section 10). */
export const USUAL_ANTENNA_FT = 6;

export function flownAt(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
  antennaHeightFt: number = USUAL_ANTENNA_FT,
): Flown {
  const indicatedFt = track.altitudeIndicatedFt;
  return {
    track,
    deviations,
    facility,
    courseAngleDeg: courseAngles(track, deviations),
    decidingAltitudeFt: indicatedFt ?? track.altitudeFt,
    altitudeSource: indicatedFt ? 'indicated' : 'geometric',
    antennaHeightFt,
  };
}

/** A column's value at a moment; NaN where it was not recorded. */
export function at({ track }: Flown, values: Float64Array, momentS: number): number {
  return valueAt(track.timeS, values, momentS, track.gapLimitS);
}
