import type { InsideFix } from './flown-approach.ts';
import type { Flown } from './flown.ts';

/**
 * A stretch flown in on the localizer, as fix indices: within full scale and inbound at `first` and at `last`, with no
 * interruption of a minute between them.
 */
export interface Pass {
  readonly first: number;
  readonly last: number;
  /** The last fix before the next pass: what follows up to here tells how it ended. */
  readonly until: number;
}

/** An aircraft flies inbound before the threshold with its track within this of the course (design, section 7). */
export const INBOUND_DEG = 45;
/** Time outside full scale and time outbound, together, that part two approaches (design, section 7). */
const PARTING_S = 60;

export function isInbound({ deviations, courseAngleDeg }: Flown, i: number): boolean {
  return deviations.distanceToThresholdNm[i]! > 0 && Math.abs(courseAngleDeg.at(i)) <= INBOUND_DEG;
}

/** Whether what was recorded begins with a pass, be it with the log or after a gap; null: it was seen to come there. */
export function recordBeginsWith(
  { track: { timeS, gapLimitS } }: Flown,
  { first }: Pick<Pass, 'first'>,
): Exclude<InsideFix, 'joined'> | null {
  if (first === 0) return 'log-begins';
  return timeS[first]! - timeS[first - 1]! > gapLimitS ? 'log-resumes' : null;
}

/** All passes of a track, in order. */
export function findPasses(flown: Flown): Pass[] {
  const { track, deviations } = flown;
  const { timeS, gapLimitS } = track;
  const { localizerFullScale, distanceToThresholdNm } = deviations;
  const found: { first: number; last: number }[] = [];
  let open: { first: number; last: number } | null = null;
  for (let i = 0; i < track.count; i++) {
    // Most of a log is neither: what costs more is asked last.
    if (!(distanceToThresholdNm[i]! > 0) || Math.abs(localizerFullScale[i]!) > 1) continue;
    if (!isInbound(flown, i)) continue;
    // Nearly always it is the next fix.
    const goesOn = open !== null && open.last === i - 1 && timeS[i]! - timeS[i - 1]! <= gapLimitS;
    if (open && (goesOn || awayS(flown, open.last, i) < PARTING_S)) open.last = i;
    else found.push((open = { first: i, last: i }));
  }
  return found.map((pass, k) => ({ ...pass, until: (found[k + 1]?.first ?? track.count) - 1 }));
}

/**
 * Time between two fixes that counts as away from the localizer. A gap counts only when the aircraft was farther out
 * after it: nothing else is known of what it flew meanwhile.
 */
function awayS({ track, deviations }: Flown, from: number, to: number): number {
  const { timeS, gapLimitS } = track;
  const distanceNm = deviations.distanceToThresholdNm;
  let awayS = 0;
  for (let i = from; i < to; i++) {
    const stepS = timeS[i + 1]! - timeS[i]!;
    if (stepS <= gapLimitS || distanceNm[i + 1]! > distanceNm[i]!) awayS += stepS;
  }
  return awayS;
}
