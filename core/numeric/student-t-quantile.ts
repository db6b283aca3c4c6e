import { incompleteBeta } from './incomplete-beta.ts';
import { logGamma } from './log-gamma.ts';

/** More steps than any probability needs whose quantile a double can tell. */
const MOST_STEPS = 200;

/**
 * The value below which Student's t with so many degrees of freedom (1 and more, whole or not) lies with this
 * probability, above 0 and below 1. Newton's steps from 0 outward: there the curve bends away from its tangents, so
 * that no step goes too far, and the first that does not go on is the rounding.
 */
export function studentTQuantile(probability: number, df: number): number {
  if (probability < 0.5) return -studentTQuantile(1 - probability, df);
  const above = 1 - probability;
  const atZero = Math.exp(logGamma((df + 1) / 2) - logGamma(df / 2)) / Math.sqrt(df * Math.PI);
  let t = 0;
  for (let i = 0; i < MOST_STEPS; i++) {
    const density = atZero * Math.exp((-(df + 1) / 2) * Math.log1p((t * t) / df));
    const step = (tailOf(t, df) - above) / density;
    if (step <= 1e-15 * t) break;
    t += step;
  }
  return t;
}

/** The probability of a value beyond t, for t from 0 on. */
function tailOf(t: number, df: number): number {
  return incompleteBeta(df / (df + t * t), df / 2, 0.5) / 2;
}
