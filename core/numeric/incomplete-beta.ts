import { logGamma } from './log-gamma.ts';

/** More terms than any arguments need of which the fraction converges. */
const MOST_TERMS = 1000;

/**
 * The regularized incomplete beta function I_x(a, b), for a and b of 0.5 and more and x from 0 to 1: the continued
 * fraction 8.17.22 of the Digital Library of Mathematical Functions (from memory), from the side on which it converges
 * fast, by the algorithm of Lentz.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  return Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta) / (a * fraction(x, a, b));
}

/** 1 + d₁ / (1 + d₂ / (1 + …)), from its beginning: each step brings one term in. */
function fraction(x: number, a: number, b: number): number {
  let value = 1;
  let above = 1;
  let below = 0;
  for (let k = 1; k <= MOST_TERMS; k++) {
    const term = termAt(k, x, a, b);
    above = 1 + term / above;
    below = 1 / (1 + term * below);
    value *= above * below;
    if (Math.abs(above * below - 1) < 1e-16) break;
  }
  return value;
}

function termAt(k: number, x: number, a: number, b: number): number {
  const m = k >> 1;
  const divisor = (a + k - 1) * (a + k);
  return (k % 2 === 0 ? m * (b - m) * x : -(a + m) * (a + b + m) * x) / divisor;
}
