import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { LazyColumn } from '../numeric/lazy-column.ts';
import type { PositionError } from '../track/position-error.ts';
import { DEGREES_PER_RADIAN, FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { Deviations } from './deviations.ts';

/** 95 % half-widths of both needles at each fix, fractions of full scale; also where the needle itself is not known. */
export interface NeedleError {
  readonly localizer: LazyColumn;
  readonly glidepath: LazyColumn;
}

/**
 * How far a position's error turns each needle: the feet that it is off across the beam, over the feet to the antenna.
 * Along the beam it only matters as far as the glidepath rises.
 */
export function needleError(
  error: PositionError,
  deviations: Deviations,
  facility: FacilityGeometry,
): NeedleError {
  const { alongCourseNm, acrossCourseNm, distanceToThresholdNm, centrelineOffsetFt } = deviations;
  const { localizerFullScaleDeg, glidepathFullScaleDeg, thresholdCrossingHeightFt } = facility;
  const slope = Math.tan(facility.glidepathAngleDeg * RADIANS_PER_DEGREE);
  const originFt = thresholdCrossingHeightFt / slope;
  const turns = (feet: number, distanceFt: number, fullScaleDeg: number) =>
    (Math.atan2(feet, distanceFt) * DEGREES_PER_RADIAN) / fullScaleDeg;
  const { length } = alongCourseNm;
  // Loops of their own and no callback for each fix: these are asked for at every fix of every approach.
  return {
    localizer: new LazyColumn(length, (block, first) => {
      for (let k = 0; k < block.length; k++) {
        const i = first + k;
        const distanceFt = rootOfSquares(alongCourseNm[i]!, acrossCourseNm[i]!) * FEET_PER_NM;
        block[k] = turns(error.sideFt(i), distanceFt, localizerFullScaleDeg);
      }
    }),
    glidepath: new LazyColumn(length, (block, first) => {
      for (let k = 0; k < block.length; k++) {
        const i = first + k;
        const alongFt = distanceToThresholdNm[i]! * FEET_PER_NM + originFt;
        const distanceFt = rootOfSquares(alongFt, centrelineOffsetFt[i]!);
        const offFt = rootOfSquares(error.heightFt(i), slope * error.sideFt(i));
        block[k] = turns(offFt, distanceFt, glidepathFullScaleDeg);
      }
    }),
  };
}

/** Not Math.hypot, which guards against overflow and costs five times as much. */
function rootOfSquares(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}
