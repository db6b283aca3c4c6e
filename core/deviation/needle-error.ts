import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { PositionError } from '../track/position-error.ts';
import { DEGREES_PER_RADIAN, FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { Deviations } from './deviations.ts';

/** 95 % half-widths of both needles at each fix, fractions of full scale. */
export interface NeedleError {
  readonly localizer: (i: number) => number;
  readonly glidepath: (i: number) => number;
}

/**
 * How far a position's error turns each needle: the feet that it is off across the beam, over the feet to the antenna.
 * Along the beam it only matters as far as the glidepath rises.
 */
export function needleError(
  error: PositionError,
  { alongCourseNm, acrossCourseNm, distanceToThresholdNm, centrelineOffsetFt }: Deviations,
  facility: FacilityGeometry,
): NeedleError {
  const { glidepathAngleDeg, localizerFullScaleDeg, glidepathFullScaleDeg, thresholdCrossingHeightFt } =
    facility;
  const slope = Math.tan(glidepathAngleDeg * RADIANS_PER_DEGREE);
  const originFt = thresholdCrossingHeightFt / slope;
  const turns = (feet: number, distanceFt: number, fullScaleDeg: number) =>
    (Math.atan2(feet, distanceFt) * DEGREES_PER_RADIAN) / fullScaleDeg;
  const { length } = distanceToThresholdNm;
  return {
    localizer: remembered(length, (i) => {
      const distanceFt = rootOfSquares(alongCourseNm[i]!, acrossCourseNm[i]!) * FEET_PER_NM;
      return turns(error.sideFt(i), distanceFt, localizerFullScaleDeg);
    }),
    glidepath: remembered(length, (i) => {
      const alongFt = distanceToThresholdNm[i]! * FEET_PER_NM + originFt;
      const distanceFt = rootOfSquares(alongFt, centrelineOffsetFt[i]!);
      return turns(
        rootOfSquares(error.heightFt(i), slope * error.sideFt(i)),
        distanceFt,
        glidepathFullScaleDeg,
      );
    }),
  };
}

/** The same values, each worked out once: a final is asked about by its criterion, its gates and its segments. */
function remembered(count: number, valueOf: (i: number) => number): (i: number) => number {
  let values: Float64Array | null = null;
  return (i) => {
    values ??= new Float64Array(count).fill(NaN);
    const known = values[i]!;
    return Number.isNaN(known) ? (values[i] = valueOf(i)) : known;
  };
}

/** Not Math.hypot, which guards against overflow and costs five times as much. */
function rootOfSquares(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}
