import type { Flown } from './flown.ts';
import { besideRunwayFt } from './position-error.ts';
import { isInbound, type Pass } from './passes.ts';
import { FEET_PER_NM } from '../units/units.ts';

/** A pass that ends below this, this far beside the centreline, was flown to another runway (design, section 7). */
const ENDS_BELOW_FT = 500;
const BESIDE_FT = 400;
/** … when its offset kept within this of one value while it was within full scale. */
const STEADY_FT = 400;
/** How long after the localizer's scale was left the threshold may be passed: five miles at 60 kt. Ours. */
const FOLLOWED_S = 300;

/**
 * The offset in feet (right positive) of the runway that a pass was flown to, when it was not this one; null when it
 * was, or when it cannot be told. The offset from the course must be the one it ended with ever since the fix: before,
 * the turn onto the other runway's line still changes it, and one who steps aside later had flown to this one.
 */
export function otherRunwayFt(flown: Flown, pass: Pass): number | null {
  const { deviations, facility } = flown;
  const end = endOf(flown, pass);
  if (end === null) return null;
  const endFt = deviations.centrelineOffsetFt[end]!;
  const isBeside = Math.abs(endFt) > Math.max(BESIDE_FT, facility.widthFt / 2 + besideRunwayFt(flown, end));
  const isLow = deviations.heightAboveThresholdFt[end]! < ENDS_BELOW_FT;
  return isBeside && isLow && keptTo(flown, pass, rightOfCourseFt(flown, end)) ? endFt : null;
}

/** Whether the offset kept near one value on the localizer's scale inside the fix, where it was there at all. */
function keptTo(flown: Flown, pass: Pass, offsetFt: number): boolean {
  const { deviations, facility } = flown;
  let seen = false;
  for (let i = pass.first; i <= pass.last; i++) {
    const onScale = Math.abs(deviations.localizerFullScale[i]!) <= 1;
    const closeIn = deviations.distanceToThresholdNm[i]! <= facility.finalApproachFix.distanceNm;
    if (!onScale || !closeIn || !isInbound(flown, i)) continue;
    if (Math.abs(rightOfCourseFt(flown, i) - offsetFt) > STEADY_FT) return false;
    seen = true;
  }
  return seen;
}

/** Of the course line, wherever it points: an offset course is no line beside the runway. */
function rightOfCourseFt({ deviations }: Flown, i: number): number {
  return deviations.acrossCourseNm[i]! * FEET_PER_NM;
}

/**
 * The first fix past the threshold within a few minutes of the pass, or the log's last one where it ends before; null
 * when the aircraft went elsewhere, or without a height there.
 */
function endOf({ track, deviations }: Flown, pass: Pass): number | null {
  let i = pass.last;
  while (i < pass.until && deviations.distanceToThresholdNm[i]! > 0) i++;
  const isBeside = deviations.distanceToThresholdNm[i]! <= 0 || i === track.count - 1;
  const isSoon = track.timeS[i]! - track.timeS[pass.last]! <= FOLLOWED_S;
  return isBeside && isSoon && !Number.isNaN(deviations.heightAboveThresholdFt[i]!) ? i : null;
}
