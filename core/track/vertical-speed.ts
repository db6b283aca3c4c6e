import { stretches } from './window.ts';
import type { Gap, Track } from './track.ts';

/** Half of the window of the straight-line fit (design, section 8). */
export const FIT_HALF_WINDOW_S = 3;
/**
 * A height farther from the first line than this many times the root mean square of all residuals leaves the
 * second fit. Ours: at 1 Hz (7 heights) it drops one wrong height even at the window's end, where it pulls most.
 */
const OUTLIER_RATIO = 1.8;

/**
 * Vertical speed in ft/min: a straight line through the heights of ± `halfWindowS`, fitted once more without
 * outliers. NaN where fewer than two heights stand in the window. The window ends at a gap.
 */
export function verticalSpeedFromHeights(
  timeS: Float64Array,
  heightFt: Float64Array,
  gaps: readonly Gap[],
  halfWindowS: number = FIT_HALF_WINDOW_S,
): Float64Array {
  const verticalSpeedFpm = new Float64Array(timeS.length);
  for (const { first, last } of stretches(timeS.length, gaps)) {
    let from = first;
    let to = first;
    for (let i = first; i <= last; i++) {
      while (timeS[from]! < timeS[i]! - halfWindowS) from++;
      while (to < last && timeS[to + 1]! <= timeS[i]! + halfWindowS) to++;
      verticalSpeedFpm[i] = 60 * slope(timeS, heightFt, from, to);
    }
  }
  return verticalSpeedFpm;
}

/**
 * The same fit around one moment of the recorded time, which is at a fix or between it and the next: for who needs few
 * of a log's fits. No gap can stand in the window, since it is longer than half of that.
 */
export function verticalSpeedAt(
  { timeS, altitudeFt }: Pick<Track, 'timeS' | 'altitudeFt'>,
  momentS: number,
  fix: number,
): number {
  const [startS, endS] = [momentS - FIT_HALF_WINDOW_S, momentS + FIT_HALF_WINDOW_S];
  let from = timeS[fix]! >= startS ? fix : fix + 1;
  while (from > 0 && timeS[from - 1]! >= startS) from--;
  let to = fix;
  while (to + 1 < timeS.length && timeS[to + 1]! <= endS) to++;
  return 60 * slope(timeS, altitudeFt, from, to);
}

/** Least-squares slope of `y` over `x` from index `from` to `to`, refitted once without outliers; y may be NaN. */
function slope(x: Float64Array, y: Float64Array, from: number, to: number): number {
  const line = { intercept: 0, slope: 0 };
  if (!fitLine(x, y, from, to, Infinity, line)) return NaN;
  fitLine(x, y, from, to, outlierLimit(x, y, from, to, line), line);
  return line.slope;
}

interface Line {
  /** Value at the window's first x. */
  intercept: number;
  slope: number;
}

/**
 * Fits the values no farther than `limit` from `line` and writes the result into it; false, and `line` untouched,
 * where they do not make a line.
 */
function fitLine(
  x: Float64Array,
  y: Float64Array,
  from: number,
  to: number,
  limit: number,
  line: Line,
): boolean {
  // Sums about the window's first x keep their digits: times are 1e9 s and differ by one.
  const x0 = x[from]!;
  const { intercept, slope } = line;
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  for (let i = from; i <= to; i++) {
    const dx = x[i]! - x0;
    // NaN is not within any limit, so a missing height drops out here too.
    if (!(Math.abs(y[i]! - intercept - slope * dx) <= limit)) continue;
    n++;
    sx += dx;
    sy += y[i]!;
    sxx += dx * dx;
    sxy += dx * y[i]!;
  }
  const spread = n * sxx - sx * sx;
  if (!(spread > 0)) return false;
  line.slope = (n * sxy - sx * sy) / spread;
  line.intercept = (sy - line.slope * sx) / n;
  return true;
}

function outlierLimit(
  x: Float64Array,
  y: Float64Array,
  from: number,
  to: number,
  { intercept, slope }: Line,
): number {
  const x0 = x[from]!;
  let n = 0;
  let sum = 0;
  for (let i = from; i <= to; i++) {
    const residual = y[i]! - intercept - slope * (x[i]! - x0);
    if (Number.isNaN(residual)) continue;
    n++;
    sum += residual * residual;
  }
  // The floor keeps rounding noise on an exact line from throwing away half of it.
  return Math.max(OUTLIER_RATIO * Math.sqrt(sum / n), 1e-6);
}
