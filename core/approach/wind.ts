import { trueOverIndicated } from '../earth/atmosphere.ts';
import { LineMemory } from '../numeric/line-memory.ts';
import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE, wrap360 } from '../units/units.ts';
import type { StatedWind } from './estimated-airspeed.ts';
import { momentOf, type EventKind, type FlownApproach } from './flown-approach.ts';
import type { Flown } from './flown.ts';
import { spreadOf } from './spread.ts';

/** The wind over a stretch, as flown through. */
export interface Wind extends StatedWind {
  /** Against the course flown; a tailwind is negative. */
  readonly headwindKt: number;
  /** From the right is positive. */
  readonly crosswindFromRightKt: number;
  /** 95 % half-width of its component in whichever direction is known worst. */
  readonly errorKt: number;
}

/**
 * Half-widths at 95 % of what the wind is told from. Those of the instruments and of the air are ours, for light
 * aircraft; that of the ground vector is 0.2 m/s along any axis (GPS SPS Performance Standard, 5th edition 2020,
 * table 3.8-3; second-hand). An instrument is off the same way all along a segment: no mean takes it away.
 */
export const AIRSPEED_ERROR_KT = 3;
const HEADING_ERROR_DEG = 3;
const VARIATION_ERROR_DEG = 1;
const GROUND_VELOCITY_ERROR_KT = 0.4;
/** Air 15 °C from standard puts a true airspeed made of an indicated one off by 2.6 %. */
const DENSITY_ERROR_SHARE = 0.026;

/** The wind at a moment is told from this long before it and after it. Ours. */
const AROUND_S = 10;

/**
 * Mean wind over a span: the difference of the ground vector and the air vector, as an integral over time. Needs an
 * airspeed and a heading; an indicated airspeed is taken to true by the standard atmosphere. Null where the log lacks
 * one of the four. It takes the aircraft to fly where its nose points: a slip hides crosswind.
 */
export function windOver(flown: Flown, span: Span, variationDeg: number | null): Wind | null {
  const { track, facility } = flown;
  const first = Math.max(0, firstAfter(track.timeS, span.startS) - 1);
  const end = Math.min(track.count, firstAtOrAfter(track.timeS, span.endS) + 1);
  const columns = windColumns(flown, variationDeg, first, end);
  const timeS = track.timeS.subarray(first, end);
  const lines = new LineMemory(timeS, track.gapLimitS);
  const mean = (values: Float64Array) => spreadOf(lines.over(values, span))?.mean ?? null;
  const [fromNorth, fromEast] = [mean(columns.fromNorthKt), mean(columns.fromEastKt)];
  const airspeedKt = mean(columns.trueAirspeedKt);
  if (fromNorth === null || fromEast === null || airspeedKt === null) return null;
  const fromTrueDeg = wrap360(Math.atan2(fromEast, fromNorth) * DEGREES_PER_RADIAN);
  const speedKt = Math.hypot(fromNorth, fromEast);
  const off = (fromTrueDeg - facility.courseTrueDeg) * RADIANS_PER_DEGREE;
  return {
    fromTrueDeg,
    speedKt,
    headwindKt: speedKt * Math.cos(off),
    crosswindFromRightKt: speedKt * Math.sin(off),
    errorKt: windErrorKt(flown, airspeedKt),
  };
}

/** Wind from 10 s before an event to 10 s after it, as far as the approach reaches; null without the event. */
export function windAt(
  flown: Flown,
  approach: FlownApproach,
  event: EventKind,
  variationDeg: number | null,
): Wind | null {
  const momentS = momentOf(approach, event);
  if (momentS === null) return null;
  // On the ground, after the end, the tyres hold the heading and not the air.
  const startS = Math.max(approach.startS, momentS - AROUND_S);
  const endS = Math.min(approach.endS, momentS + AROUND_S);
  return windOver(flown, { startS, endS }, variationDeg);
}

/** What the log lacks for a wind; `recorded` when it has all four, be it not everywhere. */
export function windNeeds(
  { track }: Flown,
  variationDeg: number | null,
): 'airspeed' | 'heading' | 'variation' | 'recorded' {
  const { airspeedTrueKt, airspeedIndicatedKt, headingTrueDeg, headingMagneticDeg } = track.recorded;
  if (!airspeedTrueKt && !airspeedIndicatedKt) return 'airspeed';
  if (headingTrueDeg) return 'recorded';
  if (!headingMagneticDeg) return 'heading';
  return variationDeg === null ? 'variation' : 'recorded';
}

/** Where the wind comes from, by components, and the airspeed, at the fixes from `first` to the one before `end`. */
function windColumns({ track }: Flown, variationDeg: number | null, first: number, end: number) {
  const { airspeedTrueKt, airspeedIndicatedKt, headingTrueDeg, headingMagneticDeg } = track.recorded;
  const length = Math.max(0, end - first);
  const fromNorthKt = new Float64Array(length);
  const fromEastKt = new Float64Array(length);
  const trueAirspeedKt = new Float64Array(length);
  for (let k = 0; k < length; k++) {
    const i = first + k;
    const airspeedKt = airspeedTrueKt
      ? airspeedTrueKt[i]!
      : (airspeedIndicatedKt?.[i] ?? NaN) * trueOverIndicated(track.altitudeFt[i]!);
    const headingDeg = headingTrueDeg
      ? headingTrueDeg[i]!
      : (headingMagneticDeg?.[i] ?? NaN) + (variationDeg ?? NaN);
    const heading = headingDeg * RADIANS_PER_DEGREE;
    const course = track.trackTrueDeg[i]! * RADIANS_PER_DEGREE;
    const groundspeedKt = track.groundspeedKt[i]!;
    fromNorthKt[k] = airspeedKt * Math.cos(heading) - groundspeedKt * Math.cos(course);
    fromEastKt[k] = airspeedKt * Math.sin(heading) - groundspeedKt * Math.sin(course);
    // Of the moments that tell no wind the airspeed says nothing of its error either.
    trueAirspeedKt[k] = Number.isNaN(fromNorthKt[k]!) ? NaN : airspeedKt;
  }
  return { fromNorthKt, fromEastKt, trueAirspeedKt };
}

/** Along the nose the airspeed is in doubt, across it the heading, which grows with airspeed: the larger counts. */
function windErrorKt({ track }: Flown, trueAirspeedKt: number): number {
  const { airspeedTrueKt, headingTrueDeg } = track.recorded;
  const densityErrorKt = airspeedTrueKt ? 0 : trueAirspeedKt * DENSITY_ERROR_SHARE;
  const alongKt = Math.hypot(AIRSPEED_ERROR_KT, densityErrorKt);
  const headingErrorDeg = Math.hypot(HEADING_ERROR_DEG, headingTrueDeg ? 0 : VARIATION_ERROR_DEG);
  const acrossKt = trueAirspeedKt * Math.sin(headingErrorDeg * RADIANS_PER_DEGREE);
  return Math.hypot(Math.max(alongKt, acrossKt), GROUND_VELOCITY_ERROR_KT);
}
