import type { Polyline } from '../numeric/polyline.ts';
import { findExcursions, timesWithinS, type Excursion, type Limits } from './excursions.ts';
import { spreadOf, type Spread } from './spread.ts';
import { resample, swingsOf } from './swings.ts';

/** Spells on one side, parted only by time deeper than the limit less this, are one excursion (design, section 8). */
export const NEAR_FULL_SCALE = 0.05;
/** Time is told within these fractions of full scale. */
export const FRACTIONS = [0.25, 0.5, 0.75, 1] as const;
/** A needle that moves this far from turning point to turning point has turned. */
const REVERSAL_FULL_SCALE = 0.15;
const RESAMPLED_S = 1;

/** How one needle was held over a stretch, in fractions of full scale. */
export interface NeedleMeasures {
  readonly spread: Spread;
  /** Seconds within ¼, ½, ¾ and full scale. */
  readonly insideS: readonly number[];
  /** Turns of the needle a minute, peak to trough 0.15 or more. */
  readonly reversalsPerMinute: number;
}

/** Measures over the recorded parts; null when nothing was recorded. */
export function needleMeasures(parts: readonly Polyline[]): NeedleMeasures | null {
  const spread = spreadOf(parts);
  if (!spread) return null;
  const insideS = timesWithinS(parts, FRACTIONS);
  const turns = parts.reduce(
    (sum, part) => sum + Math.max(0, swingsOf(resample(part, RESAMPLED_S), REVERSAL_FULL_SCALE).length - 1),
    0,
  );
  return { spread, insideS, reversalsPerMinute: turns / (spread.durationS / 60) };
}

/** Excursions of a needle beyond its limits, fractions of full scale. */
export function needleExcursions(parts: readonly Polyline[], limits: Limits): Excursion[] {
  return findExcursions(parts, limits, NEAR_FULL_SCALE);
}
