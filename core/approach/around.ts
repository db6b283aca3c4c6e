import { median } from '../numeric/median.ts';
import { firstAfter, firstAtOrAfter } from '../numeric/polyline.ts';
import type { Flown } from './flown.ts';

/** At a height crossed, values are medians of the fixes within this (design, section 7). */
const AROUND_S = 2;

/** The median of a column's fixes within ± 2 s of a moment; NaN where there are none. */
export function medianAround(flown: Flown, column: Float64Array, momentS: number): number {
  return mediansAround(flown, momentS)(column);
}

/** The same of several columns. */
export function mediansAround({ track }: Flown, momentS: number): (column: Float64Array) => number {
  const first = firstAtOrAfter(track.timeS, momentS - AROUND_S);
  const end = firstAfter(track.timeS, momentS + AROUND_S);
  return (column) => median(column.subarray(first, end));
}
