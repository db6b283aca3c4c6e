import { median } from './median.ts';
import { normalQuantile } from './normal-quantile.ts';

export interface RobustSlope {
  /** The median of the slopes of all pairs, y a unit of x. */
  readonly slope: number;
  /** Null where so few pairs, or so many equal values, hold no interval of that confidence. */
  readonly interval: { readonly low: number; readonly high: number } | null;
}

/**
 * The slope of Theil and Sen through points of which no two have the same x, with its interval of a confidence between
 * 0 and 1: the slopes of two ranks, by the normal approximation of Kendall's S (P. K. Sen 1968, Estimates of the
 * regression coefficient based on Kendall's tau, equations 2.5 and 2.6 with equal values of y). A rank outside of the
 * slopes is not brought in, as is often done: the smallest of few slopes holds less than the confidence says.
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence: number): RobustSlope {
  const slopes = pairSlopes(x, y);
  const { low, high } = ranksOf(slopes.length, varianceOfS(y), confidence);
  const isInside = low >= 0 && high < slopes.length;
  return { slope: median(slopes), interval: isInside ? { low: slopes[low]!, high: slopes[high]! } : null };
}

/**
 * On which side of 0 the slope is, by Kendall's S of the points in the order of x with its continuity correction: 1, −1,
 * or 0 where that is not as sure as the confidence says. It is asked where many values are equal, of which the interval's
 * ends may then be 0 though no later value is on the other side of an earlier one (M. G. Kendall 1970, Rank correlation
 * methods, 4th edition, sections 3.5 and 4.8, from memory).
 */
export function kendallSide(y: readonly number[], confidence: number): number {
  let s = 0;
  for (let i = 0; i < y.length; i++) for (let j = i + 1; j < y.length; j++) s += Math.sign(y[j]! - y[i]!);
  const z = (Math.abs(s) - 1) / Math.sqrt(varianceOfS(y));
  return z > normalQuantile((1 + confidence) / 2) ? Math.sign(s) : 0;
}

/** How many points an interval of that confidence takes at least, with no two values equal. */
export function fewestForInterval(confidence: number): number {
  for (let count = 3; ; count++) {
    const distinct = Array.from({ length: count }, (_, i) => i);
    if (ranksOf((count * (count - 1)) / 2, varianceOfS(distinct), confidence).low >= 0) return count;
  }
}

function pairSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const slopes = new Float64Array((x.length * (x.length - 1)) / 2);
  let k = 0;
  for (let i = 0; i < x.length; i++)
    for (let j = i + 1; j < x.length; j++) slopes[k++] = (y[j]! - y[i]!) / (x[j]! - x[i]!);
  return slopes.sort();
}

function varianceOfS(y: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of y) counts.set(value, (counts.get(value) ?? 0) + 1);
  const part = (n: number) => n * (n - 1) * (2 * n + 5);
  const tied = [...counts.values()].reduce((sum, n) => sum + part(n), 0);
  return (part(y.length) - tied) / 18;
}

/** The places of the interval's ends among so many slopes in order, counted from 0. */
function ranksOf(slopes: number, varianceOfS: number, confidence: number): { low: number; high: number } {
  const reach = normalQuantile((1 + confidence) / 2) * Math.sqrt(varianceOfS);
  return { low: Math.round((slopes - reach) / 2) - 1, high: Math.round((slopes + reach) / 2) };
}
