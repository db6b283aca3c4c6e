/** Coefficients for g = 7 and nine terms, of P. Godfrey (from memory). */
const LANCZOS: readonly number[] = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** The logarithm of the gamma function, for x of 0.5 and more, by the approximation of C. Lanczos (1964). */
export function logGamma(x: number): number {
  const base = x + 6.5;
  const sum = LANCZOS.reduce((sum, coefficient, i) => sum + coefficient / (x - 1 + i));
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(base) - base + Math.log(sum);
}
