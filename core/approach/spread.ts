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
  let lowest = Infinity;
  let lowestS = 0;
  let highest = -Infinity;
  let highestS = 0;
  for (const { timeS, value } of parts) {
    let a = NaN;
    let fromS = NaN;
    for (let i = 0; i < timeS.length; i++) {
      const b = value[i]!;
      const toS = timeS[i]!;
      if (b < lowest) {
        lowest = b;
        lowestS = toS;
      }
      if (b > highest) {
        highest = b;
        highestS = toS;
      }
      if (i > 0) {
        sum += ((toS - fromS) * (a + b)) / 2;
        squares += ((toS - fromS) * (a * a + a * b + b * b)) / 3;
      }
      a = b;
      fromS = toS;
    }
  }
  const isLowFarther = -lowest > highest || (-lowest === highest && lowestS < highestS);
  const mean = sum / duration;
  return {
    durationS: duration,
    mean,
    rms: Math.sqrt(squares / duration),
    // Rounding can leave a hair below zero when the value is constant.
    standardDeviation: Math.sqrt(Math.max(0, squares / duration - mean * mean)),
    peak: isLowFarther ? lowest : highest,
    peakS: isLowFarther ? lowestS : highestS,
    lowest,
    highest,
  };
}
