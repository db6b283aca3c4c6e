import { studentTQuantile } from './student-t-quantile.ts';

/** A part of an estimate's variance, and the degrees of freedom with which it is known. */
export interface VariancePart {
  readonly variance: number;
  readonly df: number;
}

/** Something estimated, with the square of its standard error and the degrees of freedom of that. */
export interface Estimate extends VariancePart {
  readonly value: number;
}

/** The mean of two or more values. */
export function meanOf(values: readonly number[]): Estimate {
  const value = plainMean(values);
  const squares = values.reduce((sum, one) => sum + (one - value) ** 2, 0);
  const df = values.length - 1;
  return { value, variance: squares / df / values.length, df };
}

/** Of one or more values. */
export function plainMean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The difference of two independent means (B. L. Welch 1947), whose variances may differ. */
export function welchDifference(first: readonly number[], second: readonly number[]): Estimate {
  const [one, other] = [meanOf(first), meanOf(second)];
  return withVariance({ ...one, value: one.value - other.value }, other);
}

/** An estimate that is off by something more, independent of the rest (F. E. Satterthwaite 1946). */
export function withVariance({ value, ...known }: Estimate, more: VariancePart): Estimate {
  if (more.variance === 0) return { value, ...known };
  const variance = known.variance + more.variance;
  const df = variance ** 2 / (known.variance ** 2 / known.df + more.variance ** 2 / more.df);
  return { value, variance, df };
}

/** An estimate's interval of a confidence between 0 and 1, by Student's t. */
export function intervalOf(
  { value, variance, df }: Estimate,
  confidence: number,
): { low: number; high: number } {
  const reach = studentTQuantile((1 + confidence) / 2, Math.max(1, df)) * Math.sqrt(variance);
  return { low: value - reach, high: value + reach };
}
