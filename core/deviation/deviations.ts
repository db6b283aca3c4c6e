/**
 * Where each fix stands against the localizer and the glidepath, in columns as long as the track. Signs: right
 * of course and above the path are positive, distance is positive before the threshold. Never clamped. NaN
 * where the fix has no height and the value needs one.
 */
export interface Deviations {
  /** Off the localizer course, −180 ≤ angle < 180, over the angle of its full scale; the same of the glidepath. */
  readonly localizerFullScale: Float64Array;
  readonly glidepathFullScale: Float64Array;
  readonly heightAboveGlidepathFt: Float64Array;
  /** Along the runway's bearing. */
  readonly distanceToThresholdNm: Float64Array;
  /** Right of the runway's centreline, looking along its bearing. */
  readonly centrelineOffsetFt: Float64Array;
  readonly heightAboveThresholdFt: Float64Array;
  /** In the localizer antenna's frame: outward along the course, and right of it. */
  readonly alongCourseNm: Float64Array;
  readonly acrossCourseNm: Float64Array;
}
