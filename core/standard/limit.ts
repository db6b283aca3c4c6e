import type { Limit } from './standard.ts';

/** Where a limit was read, and how surely. */
export type Provenance = Pick<Limit, 'code' | 'source' | 'status'>;

/** A band; null is no limit on that side. */
export function limit(lower: number | null, upper: number | null, from: Provenance): Limit {
  return { lower, upper, ...from };
}

/** As far to one side as to the other. */
export function symmetric(by: number, from: Provenance): Limit {
  return limit(-by, by, from);
}
