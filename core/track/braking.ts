import { valueAt } from '../numeric/polyline.ts';
import type { Track } from './track.ts';

/** Slowing down on the ground, kt/s over ± 2 s. */
const BRAKING_KT_PER_S = 1;
const BRAKING_HALF_S = 2;

/** The first of some fixes at which the groundspeed falls by 1 kt/s or more over ± 2 s; null where none is. */
export function firstBraking(
  { timeS, groundspeedKt, gapLimitS }: Pick<Track, 'timeS' | 'groundspeedKt' | 'gapLimitS'>,
  first: number,
  last: number,
): number | null {
  const kt = (s: number) => valueAt(timeS, groundspeedKt, s, gapLimitS);
  for (let i = first; i <= last; i++) {
    const lostKt = kt(timeS[i]! - BRAKING_HALF_S) - kt(timeS[i]! + BRAKING_HALF_S);
    if (lostKt >= BRAKING_KT_PER_S * 2 * BRAKING_HALF_S) return i;
  }
  return null;
}
