import { firstAfter } from '../numeric/polyline.ts';
import { gapsLongerThan } from '../track/gaps.ts';
import { FIT_HALF_WINDOW_S, verticalSpeedFromHeights } from '../track/vertical-speed.ts';
import type { Flown } from './flown.ts';
import { firstCrossing, type Stretch } from './hold.ts';

/** A climb of this height ends an approach (design, section 7). */
const CLIMB_FT = 300;
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

/** Nearly every missed approach began within this of its lowest point; the rest is looked at only when none did. */
const NEAR_LOWEST_S = 60;

/**
 * When a missed approach began: searching back from its lowest point, the last moment at which the sink rate was at
 * least half its mean over the 10 s before, that mean being a descent; the lowest point itself when none was.
 */
export function missedApproachStartS(flown: Flown, climb: Climb, earliestS: number): number {
  const nearS = Math.max(earliestS, climb.lowestS - NEAR_LOWEST_S);
  return lastSinkingS(flown, climb, nearS) ?? lastSinkingS(flown, climb, earliestS) ?? climb.lowestS;
}

function lastSinkingS(flown: Flown, climb: Climb, earliestS: number): number | null {
  const { timeS, speedFpm } = sinkBefore(flown, climb, earliestS);
  // Zero or more while it sinks at half of the mean or faster; NaN where the mean is no descent.
  const sinking = (i: number): number => {
    const meanFpm = meanBefore(timeS, speedFpm, i);
    return meanFpm < 0 ? SHARE_OF_SINK * meanFpm - speedFpm[i]! : NaN;
  };
  for (let i = firstAfter(timeS, climb.lowestS) - 1; i >= 0 && timeS[i]! >= earliestS; i--) {
    const [here, next] = [sinking(i), sinking(i + 1)];
    if (!(here >= 0)) continue;
    const joined = timeS[i + 1]! - timeS[i]! <= flown.track.gapLimitS;
    return joined && next < 0 ? Math.min(climb.lowestS, lineZeroS(timeS, i, here, next)) : timeS[i]!;
  }
  return null;
}

/** When the straight line from a value at one fix to a value at the next is zero. */
function lineZeroS(timeS: Float64Array, i: number, here: number, next: number): number {
  return timeS[i]! + (here / (here - next)) * (timeS[i + 1]! - timeS[i]!);
}

/** Fitted vertical speed from shortly before a moment to the climb's lowest point and what its last fit needs. */
function sinkBefore({ track }: Flown, climb: Climb, earliestS: number) {
  const first = firstAfter(track.timeS, earliestS - SINK_BEFORE_S - FIT_HALF_WINDOW_S);
  const last = firstAfter(track.timeS, climb.lowestS + FIT_HALF_WINDOW_S);
  const timeS = track.timeS.subarray(first, last);
  const gaps = gapsLongerThan(timeS, track.gapLimitS);
  return { timeS, speedFpm: verticalSpeedFromHeights(timeS, track.altitudeFt.subarray(first, last), gaps) };
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
