import { FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';

const MINUTES_PER_HOUR = 60;

/** Feet that a path of an angle goes down in one NM along the ground. */
export function gradientFtPerNm(angleDeg: number): number {
  return FEET_PER_NM * Math.tan(angleDeg * RADIANS_PER_DEGREE);
}

/** Sink rate in ft/min, positive down, that holds a path of an angle at a groundspeed in knots. */
export function descentRateFpm(groundspeedKt: number, angleDeg: number): number {
  return (groundspeedKt / MINUTES_PER_HOUR) * gradientFtPerNm(angleDeg);
}
