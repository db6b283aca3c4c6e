import { verticalSpeedFromHeights } from '../track/vertical-speed.ts';
import { firstAfter } from '../numeric/polyline.ts';
import type { Flown } from './flown.ts';
import { firstCrossing, type Stretch } from './hold.ts';

/** A climb of this height ends an approach (design, section 7). */
export const CLIMB_FT = 300;
/** The sink rate before a missed approach is its mean over this long. */
const SINK_BEFORE_S = 10;
const SHARE_OF_SINK = 0.5;

export interface Climb {
  readonly lowestS: number;
  readonly lowestFt: number;
  readonly lowestFix: number;
  /** When it stood 300 ft above the lowest point. */
  readonly clearS: number;
}

/** The first climb of 300 ft above the lowest point before it, by the beam's height; null when there is none. */
export function findClimb({ track }: Flown, { first, last }: Stretch): Climb | null {
  const { timeS, altitudeFt } = track;
  let lowestFix = -1;
  for (let i = first; i <= last; i++) {
    const heightFt = altitudeFt[i]!;
    if (Number.isNaN(heightFt)) continue;
    if (lowestFix < 0 || heightFt <= altitudeFt[lowestFix]!) lowestFix = i;
    else if (heightFt >= altitudeFt[lowestFix]! + CLIMB_FT) {
      const lowestFt = altitudeFt[lowestFix]!;
      const clear = { first: lowestFix, last: i };
      const clearS =
        firstCrossing(track, clear, altitudeFt, lowestFt + CLIMB_FT, { rising: true }) ?? timeS[i]!;
      return { lowestS: timeS[lowestFix]!, lowestFt, lowestFix, clearS };
    }
  }
  return null;
}

/**
 * When a missed approach began: searching back from its lowest point, the last moment at which the sink rate was at
 * least half its mean over the 10 s before, that mean being a descent; the lowest point itself when none was.
 */
export function missedApproachStartS({ track }: Flown, climb: Climb, earliestS: number): number {
  const { timeS, altitudeFt, gaps, verticalSpeedFpm, derived } = track;
  const speedFpm = derived.verticalSpeedFpm
    ? verticalSpeedFpm
    : verticalSpeedFromHeights(timeS, altitudeFt, gaps);
  for (let i = climb.lowestFix; i >= 0 && timeS[i]! >= earliestS; i--) {
    const meanFpm = meanBefore(timeS, speedFpm, i);
    if (meanFpm < 0 && -speedFpm[i]! >= SHARE_OF_SINK * -meanFpm) return timeS[i]!;
  }
  return climb.lowestS;
}

function meanBefore(timeS: Float64Array, values: Float64Array, i: number): number {
  let sum = 0;
  let count = 0;
  for (let k = firstAfter(timeS, timeS[i]! - SINK_BEFORE_S); k < i; k++) {
    sum += values[k]!;
    count++;
  }
  return count === 0 ? NaN : sum / count;
}
