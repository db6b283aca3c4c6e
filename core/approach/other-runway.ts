import type { Flown } from './flown.ts';
import { median } from '../numeric/median.ts';
import { POSITION_ERROR_FT } from './position-error.ts';
import { isInbound, type Pass } from './passes.ts';

/** A pass that ends below this, this far beside the centreline, was flown to another runway (design, section 7). */
const ENDS_BELOW_FT = 500;
const BESIDE_FT = 400;
/** … when its offset kept within this of one value while it was within full scale. */
const STEADY_FT = 400;
/** Looked at from here in: before, an intercept still changes the offset. Ours. */
const STEADY_INSIDE_NM = 6;
/** How long after the localizer's scale was left the threshold may be passed. Ours. */
const FOLLOWED_S = 180;

/**
 * The offset in feet (right positive) of the runway that a pass was flown to, when it was not this one; null when it
 * was, or when it cannot be told.
 */
export function otherRunwayFt(flown: Flown, pass: Pass): number | null {
  const { deviations, facility } = flown;
  const offsets: number[] = [];
  for (let i = pass.first; i <= pass.last; i++) {
    const onScale = Math.abs(deviations.localizerFullScale[i]!) <= 1;
    const closeIn = deviations.distanceToThresholdNm[i]! <= STEADY_INSIDE_NM;
    if (onScale && closeIn && isInbound(flown, i)) offsets.push(deviations.centrelineOffsetFt[i]!);
  }
  if (offsets.length === 0) return null;
  const offsetFt = median(offsets);
  const isSteady = offsets.every((offset) => Math.abs(offset - offsetFt) <= STEADY_FT);
  const end = endOf(flown, pass);
  if (!isSteady || end === null) return null;
  const endOffsetFt = Math.abs(deviations.centrelineOffsetFt[end]!);
  const isBeside = endOffsetFt > BESIDE_FT && endOffsetFt > facility.widthFt / 2 + POSITION_ERROR_FT;
  const isLow = deviations.heightAboveThresholdFt[end]! < ENDS_BELOW_FT;
  return isBeside && isLow ? offsetFt : null;
}

/** The first fix past the threshold, within a few minutes of the pass, or its last one; null without a height there. */
function endOf({ track, deviations }: Flown, pass: Pass): number | null {
  let i = pass.last;
  while (i < pass.until && deviations.distanceToThresholdNm[i]! > 0) i++;
  const end = track.timeS[i]! - track.timeS[pass.last]! <= FOLLOWED_S ? i : pass.last;
  return Number.isNaN(deviations.heightAboveThresholdFt[end]!) ? null : end;
}
