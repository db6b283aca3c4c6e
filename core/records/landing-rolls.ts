import { median } from '../numeric/median.ts';
import { stretches } from '../track/window.ts';
import { verticalSpeedFromHeights } from '../track/vertical-speed.ts';
import type { Track } from '../track/track.ts';

/** Fixes of a track from about the touchdown to the last before it is slow: on the ground, or in the flare. */
export interface LandingRoll {
  readonly first: number;
  readonly last: number;
}

/** Slower than this an aircraft taxies, and may be turning off (as `core/approach/rollout.ts`). */
const TAXI_KT = 25;
/** Level enough to be on the ground, ft/min (as `core/approach/on-ground.ts`): a slope of 2 % at 60 kt is 120. */
const LEVEL_FPM = 150;
/** A phone's heights wander: 20 ft in ten seconds are 120 ft/min (ours). */
const PHONE_LEVEL_FPM = 220;
/** It came from the air if it was so high above the roll within so long before it (ours). */
const FLOWN_FT = 100;
const FLOWN_S = 90;

/** Every roll of a track that begins in the air and ends at a walk, with no gap in it, in their order. */
export function landingRolls(track: Track): LandingRoll[] {
  const sinkFpm = verticalSpeedFromHeights(track.timeS, track.altitudeFt, track.gaps);
  return stretches(track.count, track.gaps).flatMap(({ first, last }) => {
    const rolls: LandingRoll[] = [];
    let wasFast = false;
    for (let i = first; i <= last; i++) {
      const isTaxiing = track.groundspeedKt[i]! < TAXI_KT;
      const roll = wasFast && isTaxiing ? rollBefore(track, sinkFpm, first, i) : null;
      if (roll !== null) rolls.push(roll);
      wasFast = !isTaxiing;
    }
    return rolls;
  });
}

/** The roll that ends before fix `end`; null where what came before was no landing. */
function rollBefore(track: Track, sinkFpm: Float64Array, earliest: number, end: number): LandingRoll | null {
  const levelFpm = track.receiver.kind === 'phone' ? PHONE_LEVEL_FPM : LEVEL_FPM;
  const isRolling = (i: number) => track.groundspeedKt[i]! >= TAXI_KT && Math.abs(sinkFpm[i]!) <= levelFpm;
  let first = end;
  while (first > earliest && isRolling(first - 1)) first--;
  if (end - first < 2) return null;
  const roll = { first, last: end - 1 };
  return wasFlown(track, earliest, roll) ? roll : null;
}

function wasFlown({ timeS, altitudeFt }: Track, earliest: number, { first, last }: LandingRoll): boolean {
  const groundFt = median(altitudeFt.subarray(first, last + 1));
  for (let i = first; i >= earliest && timeS[first]! - timeS[i]! <= FLOWN_S; i--)
    if (altitudeFt[i]! - groundFt >= FLOWN_FT) return true;
  return false;
}

/** So much higher before and after, and an aircraft came down and climbed away (ours). */
const CAME_DOWN_FT = 300;

/** Whether a track comes down to its lowest point and climbs away from it again. */
export function climbsAway({ altitudeFt }: Track): boolean {
  let lowest = 0;
  for (let i = 1; i < altitudeFt.length; i++) if (!(altitudeFt[i]! >= altitudeFt[lowest]!)) lowest = i;
  const rises = (heights: Float64Array) => heights.some((ft) => ft - altitudeFt[lowest]! >= CAME_DOWN_FT);
  return rises(altitudeFt.subarray(0, lowest)) && rises(altitudeFt.subarray(lowest));
}
