import { metresPerDegree } from '../earth/frame.ts';
import { DEGREES_PER_RADIAN, KNOTS_PER_METRE_PER_SECOND, wrap180, wrap360 } from '../units/units.ts';
import type { Gap } from './track.ts';

/** Half of the 5 s over which track and groundspeed are taken (design, section 7). */
const HALF_WINDOW_S = 2.5;
/** Below this a direction is noise. */
const STANDING_KT = 0.5;

interface Motion {
  readonly groundspeedKt: Float64Array;
  readonly trackTrueDeg: Float64Array;
}

/** The stretches between gaps, as first and last fix. */
export function stretches(count: number, gaps: readonly Gap[]): { first: number; last: number }[] {
  const starts = [0, ...gaps.map((gap) => gap.beforeIndex + 1)];
  return starts.map((first, k) => ({ first, last: (starts[k + 1] ?? count) - 1 }));
}

/**
 * Groundspeed and true track from positions over 5 s centred on each fix, cut at a gap's edge, with straight
 * lines between fixes. A fix alone between two gaps has neither (NaN).
 *
 * Takes a degree's length at the fix's own latitude: over 5 s that is exact to a millimetre.
 */
export function motionFromPositions(
  timeS: Float64Array,
  latDeg: Float64Array,
  lonDeg: Float64Array,
  gaps: readonly Gap[],
): Motion {
  const groundspeedKt = new Float64Array(timeS.length).fill(NaN);
  const trackTrueDeg = new Float64Array(timeS.length).fill(NaN);
  for (const { first, last } of stretches(timeS.length, gaps)) {
    if (first === last) continue;
    let from = first;
    let to = first;
    for (let i = first; i <= last; i++) {
      const startS = Math.max(timeS[first]!, timeS[i]! - HALF_WINDOW_S);
      const endS = Math.min(timeS[last]!, timeS[i]! + HALF_WINDOW_S);
      while (from + 1 < last && timeS[from + 1]! <= startS) from++;
      while (to + 1 < last && timeS[to + 1]! <= endS) to++;
      const fromShare = (startS - timeS[from]!) / (timeS[from + 1]! - timeS[from]!);
      const toShare = (endS - timeS[to]!) / (timeS[to + 1]! - timeS[to]!);
      const degree = metresPerDegree(latDeg[i]!);
      const northM = (between(latDeg, to, toShare) - between(latDeg, from, fromShare)) * degree.latM;
      const eastM = lonStep(lonDeg, from, fromShare, to, toShare) * degree.lonM;
      groundspeedKt[i] = (Math.hypot(eastM, northM) / (endS - startS)) * KNOTS_PER_METRE_PER_SECOND;
      if (groundspeedKt[i]! >= STANDING_KT)
        trackTrueDeg[i] = wrap360(Math.atan2(eastM, northM) * DEGREES_PER_RADIAN);
    }
  }
  return { groundspeedKt, trackTrueDeg };
}

function between(values: Float64Array, at: number, share: number): number {
  return values[at]! + share * (values[at + 1]! - values[at]!);
}

/** Difference of two interpolated longitudes, the short way round. */
function lonStep(lonDeg: Float64Array, from: number, fromShare: number, to: number, toShare: number): number {
  const fromDeg = lonDeg[from]! + fromShare * wrap180(lonDeg[from + 1]! - lonDeg[from]!);
  const toDeg = lonDeg[to]! + toShare * wrap180(lonDeg[to + 1]! - lonDeg[to]!);
  return wrap180(toDeg - fromDeg);
}
