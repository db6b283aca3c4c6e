import { median } from '../numeric/median.ts';
import type { Gap } from './track.ts';

export interface Timing {
  readonly medianIntervalS: number;
  readonly gapLimitS: number;
  readonly gaps: readonly Gap[];
}

/** Shortest interval that can be a gap (design, section 5). */
const SHORTEST_GAP_S = 5;
const MEDIAN_INTERVALS_IN_A_GAP = 3;

/** Median interval of increasing times, and the intervals longer than max(5 s, 3 × the median). */
export function findGaps(timeS: Float64Array): Timing {
  const intervals = new Float64Array(Math.max(0, timeS.length - 1));
  for (let i = 0; i < intervals.length; i++) intervals[i] = timeS[i + 1]! - timeS[i]!;
  const medianIntervalS = median(intervals);
  const gapLimitS = Math.max(SHORTEST_GAP_S, MEDIAN_INTERVALS_IN_A_GAP * medianIntervalS);
  return { medianIntervalS, gapLimitS, gaps: gapsLongerThan(timeS, gapLimitS) };
}

export function gapsLongerThan(timeS: Float64Array, limitS: number): Gap[] {
  const gaps: Gap[] = [];
  for (let i = 0; i + 1 < timeS.length; i++)
    if (timeS[i + 1]! - timeS[i]! > limitS)
      gaps.push({ beforeIndex: i, startS: timeS[i]!, endS: timeS[i + 1]! });
  return gaps;
}
