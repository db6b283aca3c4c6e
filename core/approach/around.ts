import { median } from '../numeric/median.ts';
import { firstAfter, firstAtOrAfter } from '../numeric/polyline.ts';
import type { Flown } from './flown.ts';

/** At a height crossed, values are medians of the fixes within this (design, section 7). */
const AROUND_S = 2;

/** The median of a column's fixes within ± 2 s of a moment; NaN where there are none. */
export function medianAround({ track }: Flown, column: Float64Array, momentS: number): number {
  const first = firstAtOrAfter(track.timeS, momentS - AROUND_S);
  return median(column.subarray(first, firstAfter(track.timeS, momentS + AROUND_S)));
}
