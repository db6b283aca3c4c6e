import { trueOverIndicated } from '../earth/atmosphere.ts';
import { RADIANS_PER_DEGREE } from '../units/units.ts';
import type { Track } from '../track/track.ts';
import type { Flown } from './flown.ts';

/** A wind as it is told: where it comes from, and how fast. */
export interface StatedWind {
  readonly fromTrueDeg: number;
  readonly speedKt: number;
}

/** 95 % half-width of the estimate: a wind that somebody states is seldom nearer all the way down. Ours. */
export const ESTIMATED_AIRSPEED_ERROR_KT = 10;

/**
 * Indicated airspeed at every fix, in knots, as groundspeed and a stated wind make it: the air vector is the ground
 * vector less the wind's, and a true airspeed becomes an indicated one by the standard atmosphere at the beam's
 * height. NaN where the ground vector is not known, as while standing still.
 */
export function estimatedAirspeed({ track }: Pick<Flown, 'track'>, wind: StatedWind): Float64Array {
  const last = LAST.get(track);
  if (last && last.fromTrueDeg === wind.fromTrueDeg && last.speedKt === wind.speedKt) return last.airspeedKt;
  const airspeedKt = estimated(track, wind);
  LAST.set(track, { ...wind, airspeedKt });
  return airspeedKt;
}

/** The last of each flight: every approach of it is asked about again and again, with one wind. */
const LAST = new WeakMap<Track, StatedWind & { readonly airspeedKt: Float64Array }>();

function estimated(track: Track, { fromTrueDeg, speedKt }: StatedWind): Float64Array {
  const from = fromTrueDeg * RADIANS_PER_DEGREE;
  // The wind blows to where it does not come from, so that taking it away adds this.
  const northKt = speedKt * Math.cos(from);
  const eastKt = speedKt * Math.sin(from);
  const { groundspeedKt, trackTrueDeg, altitudeFt } = track;
  return groundspeedKt.map((groundKt, i) => {
    const course = trackTrueDeg[i]! * RADIANS_PER_DEGREE;
    const north = groundKt * Math.cos(course) + northKt;
    const east = groundKt * Math.sin(course) + eastKt;
    return Math.sqrt(north * north + east * east) / trueOverIndicated(altitudeFt[i]!);
  });
}
