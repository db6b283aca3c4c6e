import type { Drafted, DraftedLanding } from './drafted.ts';
import type { Leaf } from './leaves.ts';
import { isOfCycle } from './record-words.ts';

/** A draft, and what of it was chosen. */
export interface Taken {
  readonly draft: Drafted;
  readonly leaves: readonly Leaf[];
}

/**
 * Of which records and which landing the values are that were chosen of two drafts. Of two cycles the older one: so far
 * back some of the values go. A value that nobody had confirmed is no surer beside others, and the log of a landing is
 * never forgotten.
 */
export function mergedOrigin(taken: readonly Taken[]): Pick<Drafted, 'cycle' | 'landing'> {
  const cycles = taken.flatMap(cycleOf).toSorted();
  const [landing] = taken.flatMap(landingOf).toSorted((a, b) => b.unconfirmed.length - a.unconfirmed.length);
  return { ...(cycles[0] !== undefined && { cycle: cycles[0] }), ...(landing && { landing }) };
}

function cycleOf({ draft: { cycle }, leaves }: Taken): string[] {
  if (cycle === undefined) return [];
  return leaves.some(({ origin }) => isOfCycle(origin, cycle)) ? [cycle] : [];
}

function landingOf({ draft: { landing }, leaves }: Taken): DraftedLanding[] {
  if (landing === undefined) return [];
  const paths = new Set(leaves.map(({ path }) => path));
  return [{ ...landing, unconfirmed: landing.unconfirmed.filter((path) => paths.has(path)) }];
}
