import { issue, type Issue } from '../issue/issue.ts';
import { airacCycle, standingOn } from './airac.ts';
import type { Facility } from './facility-schema.ts';

/**
 * A caution where a day lies outside of the cycle that the records of a facility are of: what they say may have changed
 * by then, or not have been so yet.
 *
 * @param onDate decimal year, of the flight or today; null when no day is known, and then nothing is said
 */
export function cycleCautions({ origin }: Facility, onDate: number | null): Issue[] {
  const cycle = origin?.cycle;
  if (cycle === undefined) return [];
  const days = airacCycle(cycle);
  const tip =
    'Compare the facility with the chart of that day, or make it anew of the records of that cycle.';
  if (days === null) {
    const message = `The facility is from records of cycle ${cycle}, which is none: nobody can say whether they are current`;
    return [issue('caution', 'facility-cycle-unknown', `${message}.`, { tip })];
  }
  if (onDate === null) return [];
  const day = dayIn(onDate);
  const standing = standingOn(days, day);
  if (standing === null) return [];
  const message = `The facility is from records of cycle ${cycle}, ${days.firstDay} to ${days.lastDay}: on ${day} they are ${standing}`;
  return [issue('caution', 'facility-cycle', `${message}.`, { tip })];
}

/** A decimal year holds a moment to some microseconds: so much more, and no midnight falls back into the day before. */
const ROUNDING_MS = 1;

/** The UTC day of a decimal year, as an ISO date. */
function dayIn(decimalYear: number): string {
  const year = Math.floor(decimalYear);
  const startMs = Date.UTC(year, 0, 1);
  const yearMs = Date.UTC(year + 1, 0, 1) - startMs;
  return new Date(startMs + (decimalYear - year) * yearMs + ROUNDING_MS).toISOString().slice(0, 10);
}
