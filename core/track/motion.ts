import { metresPerDegree } from '../earth/frame.ts';
import { DEGREES_PER_RADIAN, KNOTS_PER_METRE_PER_SECOND, wrap180, wrap360 } from '../units/units.ts';
import type { Gap } from './track.ts';
import { changeOver, forEachWindow, stretches, type Window } from './window.ts';

/** Below this a direction is noise. */
const STANDING_KT = 0.5;

interface Motion {
  readonly groundspeedKt: Float64Array;
  readonly trackTrueDeg: Float64Array;
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
  const all = { first: 0, last: timeS.length - 1 };
  forEachWindow(timeS, stretches(timeS.length, gaps), all, (window) => {
    const i = window.centre;
    const degree = metresPerDegree(latDeg[i]!);
    const northM = changeOver(latDeg, window) * degree.latM;
    const eastM = lonChangeOver(lonDeg, window) * degree.lonM;
    groundspeedKt[i] =
      (Math.sqrt(eastM * eastM + northM * northM) / window.durationS) * KNOTS_PER_METRE_PER_SECOND;
    if (groundspeedKt[i]! >= STANDING_KT)
      trackTrueDeg[i] = wrap360(Math.atan2(eastM, northM) * DEGREES_PER_RADIAN);
  });
  return { groundspeedKt, trackTrueDeg };
}

/** As `changeOver`, the short way round the earth. */
function lonChangeOver(lonDeg: Float64Array, { from, fromShare, to, toShare }: Readonly<Window>): number {
  const fromDeg = lonDeg[from]! + fromShare * wrap180(lonDeg[from + 1]! - lonDeg[from]!);
  const toDeg = lonDeg[to]! + toShare * wrap180(lonDeg[to + 1]! - lonDeg[to]!);
  return wrap180(toDeg - fromDeg);
}
