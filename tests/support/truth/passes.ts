import { firstWhere, type Reach } from './searching.ts';
import { RATE, type ViewedFlight } from './viewed-flight.ts';

/** Off the localizer or not inbound for so long in one go parts two passes. */
const PARTING_S = 60;

/** A stretch inbound on the localizer, from its first moment there to its last, and how far it may be looked after. */
export interface Pass extends Reach {
  /** The moment before the next pass begins, or the flight's last. */
  readonly until: number;
}

export function passesOf(view: ViewedFlight): Pass[] {
  const runs: { first: number; last: number }[] = [];
  for (let i = 0; i < view.count; i++) {
    if (view.onLocalizer[i] === 0) continue;
    const run = runs.at(-1);
    if (run && i - run.last < PARTING_S * RATE && !passedThreshold(view, run.last, i)) run.last = i;
    else runs.push({ first: i, last: i });
  }
  return runs.map((run, k) => ({ ...run, until: (runs[k + 1]?.first ?? view.count) - 1 }));
}

function passedThreshold(view: ViewedFlight, first: number, last: number): boolean {
  return firstWhere({ first, last }, (i) => view.distanceNm[i]! <= 0) !== null;
}
