import type { Flown } from './flown.ts';
import { firstAfter, firstAtOrAfter } from '../numeric/polyline.ts';
import { unseenPassage, type ApproachSegment } from './flown-approach.ts';
import type { Moments } from './approach-events.ts';
import { firstPassage } from './heights-passed.ts';

/** A missed approach is followed to this height above its lowest point, or to the level-off (design, section 7). */
const MISSED_TO_FT = 1500;
/** Climbing less than this is level. Ours, as is how long it must last. */
const LEVEL_FPM = 100;
const LEVEL_S = 10;

export interface Limits {
  /** When final began; null when it never did. */
  readonly beganS: number | null;
  /** When the approach ended. */
  readonly endS: number;
}

/**
 * Where final ended: the earliest of decision altitude, the start of a missed approach, the threshold, and the
 * approach's end. Passed within a gap, each of them ends it with the last fix before.
 */
function finalEndS(flown: Flown, moments: Moments, beganS: number, endS: number): number {
  const decisionS = moments.decision?.timeS ?? unseenPassage(moments, 'decision-altitude')?.startS;
  return Math.min(
    decisionS ?? Infinity,
    moments.missedStartS ?? Infinity,
    thresholdS(flown, beganS, endS) ?? Infinity,
    endS,
  );
}

/** Beyond the threshold a needle's angle says nothing any more. */
function thresholdS({ track, deviations }: Flown, beganS: number, endS: number): number | null {
  const stretch = {
    first: Math.max(0, firstAtOrAfter(track.timeS, beganS) - 1),
    last: Math.min(firstAtOrAfter(track.timeS, endS), track.count - 1),
  };
  return firstPassage(track, stretch, deviations.distanceToThresholdNm, 0, beganS)?.startS ?? null;
}

/** The segments that an approach has: limits come from geometry, never from how well it was flown. */
export function segmentsOf(
  flown: Flown,
  moments: Moments,
  limits: Limits,
  untilS: number,
): ApproachSegment[] {
  const { aliveS, decision, missedStartS, ending } = moments;
  const { beganS, endS } = limits;
  const segments: ApproachSegment[] = [{ kind: 'intercept', startS: aliveS, endS: beganS ?? endS }];
  if (beganS !== null) {
    segments.push({ kind: 'final', startS: beganS, endS: finalEndS(flown, moments, beganS, endS) });
    const visualEndS = Math.min(
      ending.landing?.touchdownS ?? ending.passage?.timeS ?? endS,
      missedStartS ?? Infinity,
      endS,
    );
    // Of a gap in which decision altitude was passed nobody knows how much was final.
    const visualS = decision?.timeS ?? unseenPassage(moments, 'decision-altitude')?.endS ?? Infinity;
    segments.push({ kind: 'visual', startS: visualS, endS: visualEndS });
    if (missedStartS !== null)
      segments.push({ kind: 'missed', startS: missedStartS, endS: missedEndS(flown, moments, untilS) });
  }
  return segments.filter(({ startS, endS }) => endS > startS);
}

/** 1,500 ft above the lowest point, or the level-off, or the end of what was recorded. */
function missedEndS({ track }: Flown, { ending }: Moments, untilS: number): number {
  const { lowestFt, clearS } = ending.climb!;
  const { timeS, altitudeFt } = track;
  let levelSinceS: number | null = null;
  for (let i = firstAfter(timeS, clearS); i < track.count && timeS[i]! <= untilS; i++) {
    if (altitudeFt[i]! >= lowestFt + MISSED_TO_FT) return timeS[i]!;
    const isLevel = track.verticalSpeedFpm[i]! < LEVEL_FPM;
    levelSinceS = isLevel ? (levelSinceS ?? timeS[i]!) : null;
    if (levelSinceS !== null && timeS[i]! - levelSinceS >= LEVEL_S) return levelSinceS;
  }
  return untilS;
}
