import type { Verdict } from './judgement.ts';
import type { Limit } from './standard.ts';

/**
 * Whether a measured value passes: exactly at the limit does, and a side without a limit never fails. NaN, which is
 * no measurement, is not to be asked about.
 */
export function within({ lower, upper }: Pick<Limit, 'lower' | 'upper'>, value: number): boolean {
  return (lower === null || value >= lower) && (upper === null || value <= upper);
}

/** The same of a value that may be off by a half-width: sure either way, else unclear. */
export function verdictWithin(
  limit: Pick<Limit, 'lower' | 'upper'>,
  value: number,
  halfWidth: number,
): Verdict {
  const { lower, upper } = limit;
  if (within(limit, value - halfWidth) && within(limit, value + halfWidth)) return 'met';
  const isBeyond =
    (upper !== null && value - halfWidth > upper) || (lower !== null && value + halfWidth < lower);
  return isBeyond ? 'not-met' : 'unclear';
}
