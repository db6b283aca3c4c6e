/** More steps than any probability needs whose quantile a double can tell. */
const MOST_STEPS = 100;

/**
 * The value below which a normal variable (mean 0, standard deviation 1) lies with this probability, above 0 and below
 * 1; to about 1e-14 for what lies within 6 standard deviations. Newton's steps on the series of G. Marsaglia (2004),
 * Evaluating the normal distribution: from 0 outward the curve bends away from its tangents, so that no step goes too
 * far.
 */
export function normalQuantile(probability: number): number {
  let z = 0;
  for (let i = 0; i < MOST_STEPS; i++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const step = (probability - 0.5 - density * seriesAt(z)) / density;
    z += step;
    if (Math.abs(step) < 1e-15) break;
  }
  return z;
}

/** z + z³/3 + z⁵/(3·5) + …, which times the density at z is the probability between 0 and z. */
function seriesAt(z: number): number {
  let sum = 0;
  let term = z;
  for (let k = 3; sum + term !== sum; k += 2) {
    sum += term;
    term *= (z * z) / k;
  }
  return sum;
}
