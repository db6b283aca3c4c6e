import type { Limit } from './standard.ts';

/**
 * Whether a measured value passes: exactly at the limit does, and a side without a limit never fails. NaN, which is
 * no measurement, is not to be asked about.
 */
export function within({ lower, upper }: Pick<Limit, 'lower' | 'upper'>, value: number): boolean {
  return (lower === null || value >= lower) && (upper === null || value <= upper);
}
