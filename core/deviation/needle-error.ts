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
  return {
    localizer: (i) => {
      const distanceFt = rootOfSquares(alongCourseNm[i]!, acrossCourseNm[i]!) * FEET_PER_NM;
      return turns(error.sideFt(i), distanceFt, localizerFullScaleDeg);
    },
    glidepath: (i) => {
      const alongFt = distanceToThresholdNm[i]! * FEET_PER_NM + originFt;
      const distanceFt = rootOfSquares(alongFt, centrelineOffsetFt[i]!);
      return turns(
        rootOfSquares(error.heightFt(i), slope * error.sideFt(i)),
        distanceFt,
        glidepathFullScaleDeg,
      );
    },
  };
}

/** Not Math.hypot, which guards against overflow and costs five times as much. */
function rootOfSquares(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}
