import { median } from '../numeric/median.ts';
import { DEGREES_PER_RADIAN, FEET_PER_NM } from '../units/units.ts';
import type { Flown } from './flown.ts';
import type { FlownApproach } from './flown-approach.ts';
import type { Stretch } from './hold.ts';
import { heightAboveRunwayFt } from './on-ground.ts';

/** A roll after a touchdown: there the aircraft's height and line are known, and the log and the facility can be held to them. */
export interface Rollout {
  /** What the log's heights are high by, as they were logged: less the runway there and the antenna above it. Null with too few fixes. */
  readonly heightBiasFt: number | null;
  /** The middle of the straight part, right of the centreline. Null where none was straight. */
  readonly offsetFt: number | null;
  /** Direction of the straight part to the runway's, right positive; null where it is too short to have one. */
  readonly askewDeg: number | null;
  /** How far the straight part led to the right. Null where none was straight. */
  readonly asideFt: number | null;
}

/** No receiver and no altimeter is so far off (ours): then it is the facility, or the kind of the column. */
export const OFF_HEIGHT_FT = 80;
/** Slow enough to have settled (design, section 10). */
const SLOW_RATIO = 1.25;
const SLOW_MARGIN_KT = 1;
const LEAST_FIXES = 3;
/** Slower, or pointing farther aside, the aircraft may be turning off (ours). */
const STRAIGHT_KT = 25;
const STRAIGHT_DEG = 10;
/** Shorter than this a roll has no direction to tell a degree by (ours). */
const LEAST_FT = 800;

/** The roll that ended an approach; null where none did. */
export function rolloutOf(flown: Flown, { roll }: Pick<FlownApproach, 'roll'>): Rollout | null {
  if (roll === null) return null;
  const straight = straightPart(flown, roll);
  return { heightBiasFt: heightBiasFt(flown, roll), ...lineOf(flown, straight) };
}

function heightBiasFt(flown: Flown, roll: Stretch): number | null {
  const heightFt = settledFt(flown, roll, (i) => heightAboveRunwayFt(flown, i));
  return heightFt === null ? null : heightFt + flown.heightCorrectionFt - flown.antennaHeightFt;
}

/** The middle of a height over the slow end of a roll, where the aircraft has settled; null with too few fixes. */
export function settledFt(
  { track }: Flown,
  { first, last }: Stretch,
  heightFt: (i: number) => number,
): number | null {
  const speeds = track.groundspeedKt.subarray(first, last + 1);
  const slowKt = SLOW_RATIO * speeds.reduce((least, kt) => Math.min(least, kt), Infinity) + SLOW_MARGIN_KT;
  const heights: number[] = [];
  for (let i = first; i <= last; i++) if (track.groundspeedKt[i]! < slowKt) heights.push(heightFt(i));
  const middleFt = heights.length < LEAST_FIXES ? NaN : median(heights);
  return Number.isNaN(middleFt) ? null : middleFt;
}

/** The fixes on the ground from the first fast and straight one to before the first that is neither. */
function straightPart({ track, courseAngleDeg, facility }: Flown, { first, last }: Stretch): number[] {
  const fixes: number[] = [];
  for (let i = first; i <= last; i++) {
    const alongRunwayDeg = courseAngleDeg.at(i) + facility.courseTrueDeg - facility.trueBearingDeg;
    const isStraight = track.groundspeedKt[i]! >= STRAIGHT_KT && Math.abs(alongRunwayDeg) <= STRAIGHT_DEG;
    if (!isStraight) break;
    fixes.push(i);
  }
  return fixes;
}

function lineOf({ deviations }: Flown, fixes: readonly number[]): Omit<Rollout, 'heightBiasFt'> {
  if (fixes.length < LEAST_FIXES) return { offsetFt: null, askewDeg: null, asideFt: null };
  const { centrelineOffsetFt, distanceToThresholdNm } = deviations;
  const [from, to] = [fixes[0]!, fixes.at(-1)!];
  const alongFt = (distanceToThresholdNm[from]! - distanceToThresholdNm[to]!) * FEET_PER_NM;
  const acrossFt = centrelineOffsetFt[to]! - centrelineOffsetFt[from]!;
  return {
    offsetFt: median(fixes.map((i) => centrelineOffsetFt[i]!)),
    askewDeg: alongFt < LEAST_FT ? null : Math.atan2(acrossFt, alongFt) * DEGREES_PER_RADIAN,
    asideFt: acrossFt,
  };
}
