import { firstAtOrAfter, valueAt, type Polyline, type Span } from '../numeric/polyline.ts';
import { findExcursions } from './excursions.ts';
import type { Flown } from './flown.ts';
import { resample, swingsOf } from './swings.ts';

/** A change of track of this much, after smoothing over 3 s, is a correction (design, section 8). */
const CORRECTION_DEG = 2;
const SMOOTHED_HALF_S = 1.5;
const RESAMPLED_S = 1;
/** Where a deviation asks for a correction. */
const LEAVING_FULL_SCALE = 0.25;

/** How the localizer was steered for over a stretch. */
export interface Corrections {
  readonly count: number;
  readonly meanDeg: number | null;
  readonly largestDeg: number | null;
  /** Each time ¼ scale was left, how long it took until the track had turned 2° back; null when it never had. */
  readonly delays: readonly { readonly leftS: number; readonly delayS: number | null }[];
}

/** Corrections of the ground track against the localizer over a span; null when no track was recorded. */
export function findCorrections(flown: Flown, span: Span): Corrections | null {
  const { courseAngleDeg, lines } = flown;
  const parts = lines.over(courseAngleDeg, span).map(smoothed);
  if (parts.length === 0) return null;
  const swings = parts.flatMap((part) => swingsOf(part, CORRECTION_DEG));
  const sizes = swings.map(({ from, to }) => Math.abs(to - from));
  const needle = lines.over(flown.deviations.localizerFullScale, span);
  const limits = { lower: -LEAVING_FULL_SCALE, upper: LEAVING_FULL_SCALE };
  return {
    count: sizes.length,
    meanDeg: sizes.length === 0 ? null : sizes.reduce((sum, deg) => sum + deg, 0) / sizes.length,
    largestDeg: sizes.length === 0 ? null : Math.max(...sizes),
    delays: findExcursions(needle, limits, 0)
      // Where the span begins outside, nothing was left.
      .filter(({ startS }) => startS > span.startS)
      .map(({ startS, side }) => ({
        leftS: startS,
        delayS: delayS(parts, startS, side === 'above' ? 1 : -1),
      })),
  };
}

/** The track every second, each the mean of three seconds. */
function smoothed(part: Polyline): Polyline {
  const everySecond = resample(part, RESAMPLED_S);
  return { timeS: everySecond.timeS, value: everySecond.timeS.map((s) => meanAround(part, s)) };
}

/** Mean of the values around a moment that are known: five, half of the smoothed time to each side. */
function meanAround({ timeS, value }: Polyline, s: number): number {
  let sum = 0;
  let count = 0;
  for (let step = -1; step <= 1; step += 0.5) {
    const deg = valueAt(timeS, value, s + step * SMOOTHED_HALF_S, Infinity);
    if (Number.isNaN(deg)) continue;
    sum += deg;
    count++;
  }
  return sum / count;
}

/** Time from leaving ¼ scale until the track has turned 2° back from the farthest that it pointed away since. */
function delayS(parts: readonly Polyline[], leftS: number, side: 1 | -1): number | null {
  const part = parts.find(({ timeS }) => timeS[0]! <= leftS && timeS.at(-1)! >= leftS);
  if (part === undefined) return null;
  const { timeS, value } = part;
  let farthestDeg = -Infinity;
  for (let i = firstAtOrAfter(timeS, leftS); i < timeS.length; i++) {
    const awayDeg = side * value[i]!;
    farthestDeg = Math.max(farthestDeg, awayDeg);
    if (farthestDeg - awayDeg >= CORRECTION_DEG) return timeS[i]! - leftS;
  }
  return null;
}
