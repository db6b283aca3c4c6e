import { firstAfter } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import { verticalSpeedAt } from '../track/vertical-speed.ts';
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

/**
 * When a missed approach began: searching back from its lowest point, the last moment at which the sink rate was at
 * least half its mean over the 10 s before, that mean being a descent; the lowest point itself when none was.
 */
export function missedApproachStartS({ track }: Flown, climb: Climb, earliestS: number): number {
  const { timeS, gapLimitS } = track;
  const speedFpm = fittedSpeed(track);
  // Zero or more while it sinks at half of the mean or faster; NaN where the mean is no descent.
  const sinking = (i: number): number => {
    const meanFpm = meanBefore(timeS, speedFpm, i);
    return meanFpm < 0 ? SHARE_OF_SINK * meanFpm - speedFpm(i) : NaN;
  };
  const last = firstAfter(timeS, climb.lowestS) - 1;
  let next = last + 1 < timeS.length ? sinking(last + 1) : NaN;
  for (let i = last; i >= 0 && timeS[i]! >= earliestS; i--) {
    const here = sinking(i);
    if (here >= 0) {
      const joined = timeS[i + 1]! - timeS[i]! <= gapLimitS;
      return joined && next < 0 ? Math.min(climb.lowestS, lineZeroS(timeS, i, here, next)) : timeS[i]!;
    }
    next = here;
  }
  return climb.lowestS;
}

/** When the straight line from a value at one fix to a value at the next is zero. */
function lineZeroS(timeS: Float64Array, i: number, here: number, next: number): number {
  return timeS[i]! + (here / (here - next)) * (timeS[i + 1]! - timeS[i]!);
}

/** The fitted vertical speed at a fix, each worked out when it is first asked for: the search seldom goes far back. */
function fittedSpeed(track: Track): (i: number) => number {
  const known = new Map<number, number>();
  return (i) => {
    const before = known.get(i);
    if (before !== undefined) return before;
    const speedFpm = verticalSpeedAt(track, track.timeS[i]!, i);
    known.set(i, speedFpm);
    return speedFpm;
  };
}

function meanBefore(timeS: Float64Array, valueAt: (i: number) => number, i: number): number {
  let sum = 0;
  let count = 0;
  for (let k = firstAfter(timeS, timeS[i]! - SINK_BEFORE_S); k < i; k++) {
    sum += valueAt(k);
    count++;
  }
  return count === 0 ? NaN : sum / count;
}
