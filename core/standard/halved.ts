import type { Limit } from './standard.ts';

type Sides = Pick<Limit, 'lower' | 'upper'>;

/**
 * Half of a limit to each side of its target, never below `floor`; of a band beside the target, the middle half. A
 * limit of one side that does not hold the target (at least 60 kt) has no half, and stands for itself.
 */
export function halved({ lower, upper }: Sides, floor: number): Sides {
  if (lower !== null && upper !== null && !(lower < 0 && upper > 0)) {
    const width = upper - lower;
    const cut = Math.max(0, Math.min(width / 4, width / 2 - floor));
    return { lower: lower + cut, upper: upper - cut };
  }
  return {
    lower: lower === null || lower >= 0 ? lower : Math.min(lower / 2, -floor),
    upper: upper === null || upper <= 0 ? upper : Math.max(upper / 2, floor),
  };
}
