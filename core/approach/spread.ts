import { durationS, type Polyline } from '../numeric/polyline.ts';

/** How a value was spread over time: all integrals over the straight lines between fixes (design, section 8). */
export interface Spread {
  readonly durationS: number;
  readonly mean: number;
  readonly rms: number;
  readonly standardDeviation: number;
  /** The value farthest from zero, with its sign, and its first moment. */
  readonly peak: number;
  readonly peakS: number;
  readonly lowest: number;
  readonly highest: number;
}

/** The spread of a value over its recorded parts; null when nothing of it was recorded. */
export function spreadOf(parts: readonly Polyline[]): Spread | null {
  const duration = durationS(parts);
  if (duration === 0) return null;
  let sum = 0;
  let squares = 0;
  let peak = parts[0]!.value[0]!;
  let peakS = parts[0]!.timeS[0]!;
  let lowest = Infinity;
  let highest = -Infinity;
  for (const { timeS, value } of parts)
    for (let i = 0; i < timeS.length; i++) {
      if (Math.abs(value[i]!) > Math.abs(peak)) {
        peak = value[i]!;
        peakS = timeS[i]!;
      }
      lowest = Math.min(lowest, value[i]!);
      highest = Math.max(highest, value[i]!);
      if (i === 0) continue;
      const stepS = timeS[i]! - timeS[i - 1]!;
      const a = value[i - 1]!;
      const b = value[i]!;
      sum += (stepS * (a + b)) / 2;
      squares += (stepS * (a * a + a * b + b * b)) / 3;
    }
  const mean = sum / duration;
  return {
    durationS: duration,
    mean,
    rms: Math.sqrt(squares / duration),
    // Rounding can leave a hair below zero when the value is constant.
    standardDeviation: Math.sqrt(Math.max(0, squares / duration - mean * mean)),
    peak,
    peakS,
    lowest,
    highest,
  };
}
