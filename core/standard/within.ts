import type { Limit } from './standard.ts';

/** Whether a value keeps to a limit: exactly at it is inside, and a side that is null is never left. */
export function within({ lower, upper }: Pick<Limit, 'lower' | 'upper'>, value: number): boolean {
  return (lower === null || value >= lower) && (upper === null || value <= upper);
}
