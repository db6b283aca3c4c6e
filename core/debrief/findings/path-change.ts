import type { Flown } from '../../approach/flown.ts';
import { FEET_PER_NM, RADIANS_PER_DEGREE } from '../../units/units.ts';
import { fixAt, valueAtMoment, type Asked } from './asked.ts';

/**
 * How far off a change of height over some seconds may be, 95 %, feet: only what departs in flight is in it. What a
 * height is off by all along, which is most of it, is in both of its ends.
 */
export function changeHalfWidthFt(flown: Flown, s: number, lastsS: number): number {
  return flown.error.driftFt(fixAt(flown, s)) * Math.sqrt(1 - Math.exp(-lastsS / flown.error.timeConstantS));
}

/** Half of the glidepath's scale in feet, where the aircraft was. */
export function halfScaleFt(asked: Asked, s: number): number {
  const { facility, deviations } = asked.sitting.flown;
  const { glidepathFullScaleDeg, glidepathAngleDeg, thresholdCrossingHeightFt } = facility;
  const slope = Math.tan(glidepathAngleDeg * RADIANS_PER_DEGREE);
  const awayFt =
    valueAtMoment(asked, deviations.distanceToThresholdNm, s) * FEET_PER_NM +
    thresholdCrossingHeightFt / slope;
  return (awayFt * glidepathFullScaleDeg * RADIANS_PER_DEGREE) / 2;
}
