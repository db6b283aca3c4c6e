import type { StatedWind } from '../approach/estimated-airspeed.ts';
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from '../units/units.ts';

export interface WindOnCourse {
  /** Against the aircraft; a tailwind is negative. */
  readonly headwindKt: number;
  readonly crosswindFromRightKt: number;
}

/** A wind, told by where it comes from, along and across a true course. */
export function windOnCourse(courseTrueDeg: number, { fromTrueDeg, speedKt }: StatedWind): WindOnCourse {
  const aside = (fromTrueDeg - courseTrueDeg) * RADIANS_PER_DEGREE;
  return { headwindKt: speedKt * Math.cos(aside), crosswindFromRightKt: speedKt * Math.sin(aside) };
}

/**
 * How far the nose has to point into the wind for a course to be held at a true airspeed (right positive), and the
 * groundspeed then. Null where the wind carries the aircraft off, or back.
 */
export function holdingCourse(
  trueAirspeedKt: number,
  { headwindKt, crosswindFromRightKt }: WindOnCourse,
): { readonly correctionDeg: number; readonly groundspeedKt: number } | null {
  const correction = Math.asin(crosswindFromRightKt / trueAirspeedKt);
  const groundspeedKt = trueAirspeedKt * Math.cos(correction) - headwindKt;
  return groundspeedKt > 0 ? { correctionDeg: correction * DEGREES_PER_RADIAN, groundspeedKt } : null;
}
