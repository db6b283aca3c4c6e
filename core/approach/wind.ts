import type { Span } from '../numeric/polyline.ts';
import { firstAfter } from '../numeric/polyline.ts';
import { DEGREES_PER_RADIAN, FEET_PER_METRE, RADIANS_PER_DEGREE, wrap360 } from '../units/units.ts';
import type { Flown } from './flown.ts';

/** The wind over a stretch, as flown through. */
export interface Wind {
  readonly fromTrueDeg: number;
  readonly speedKt: number;
  /** Against the course flown; a tailwind is negative. */
  readonly headwindKt: number;
  /** From the right is positive. */
  readonly crosswindFromRightKt: number;
}

/**
 * Mean wind over a span: the mean difference of the ground vector and the air vector. Needs an airspeed and a
 * heading; an indicated airspeed is taken to true by the standard atmosphere's density at the altitude (ISA, ICAO Doc
 * 7488; second-hand), which a warm day makes 2 % too small for each 12 °C. Null where the log lacks one of the four.
 */
export function windOver(flown: Flown, { startS, endS }: Span, variationDeg: number | null): Wind | null {
  const { track, facility } = flown;
  const { airspeedTrueKt, airspeedIndicatedKt, headingTrueDeg, headingMagneticDeg } = track.recorded;
  const trueHeading = (i: number) =>
    headingTrueDeg ? headingTrueDeg[i]! : (headingMagneticDeg?.[i] ?? NaN) + (variationDeg ?? NaN);
  const trueAirspeed = (i: number) =>
    airspeedTrueKt
      ? airspeedTrueKt[i]!
      : (airspeedIndicatedKt?.[i] ?? NaN) * densityFactor(track.altitudeFt[i]!);
  let north = 0;
  let east = 0;
  let count = 0;
  for (let i = firstAfter(track.timeS, startS); i < track.count && track.timeS[i]! <= endS; i++) {
    const air = vector(trueAirspeed(i), trueHeading(i));
    const ground = vector(track.groundspeedKt[i]!, track.trackTrueDeg[i]!);
    if (Number.isNaN(air.north + ground.north)) continue;
    // The air moves the way that the ground vector lacks.
    north += ground.north - air.north;
    east += ground.east - air.east;
    count++;
  }
  if (count === 0) return null;
  const fromNorth = -north / count;
  const fromEast = -east / count;
  const fromTrueDeg = wrap360(Math.atan2(fromEast, fromNorth) * DEGREES_PER_RADIAN);
  const speedKt = Math.hypot(fromNorth, fromEast);
  const off = (fromTrueDeg - facility.courseTrueDeg) * RADIANS_PER_DEGREE;
  return {
    fromTrueDeg,
    speedKt,
    headwindKt: speedKt * Math.cos(off),
    crosswindFromRightKt: speedKt * Math.sin(off),
  };
}

function vector(speed: number, directionDeg: number) {
  const direction = directionDeg * RADIANS_PER_DEGREE;
  return { north: speed * Math.cos(direction), east: speed * Math.sin(direction) };
}

/** True over indicated airspeed at an altitude in the standard atmosphere: one over the root of relative density. */
function densityFactor(altitudeFt: number): number {
  const temperatureRatio = 1 - (0.0065 * (altitudeFt / FEET_PER_METRE)) / 288.15;
  return temperatureRatio ** (-4.25588 / 2);
}
