/**
 * When data of one cycle are in force: 28 days from a Thursday, 0901 UTC in the United States, 0000 elsewhere (from
 * memory); days are all that is told here.
 */
export interface AiracCycle {
  /** As `2609`: year and number in the year. */
  readonly cycle: string;
  /** ISO dates, the last one included. */
  readonly firstDay: string;
  readonly lastDay: string;
}

const DAY_MS = 86_400_000;
const CYCLE_DAYS = 28;
/**
 * Cycle 2001 began on 2 January 2020 (ICAO's table of AIRAC dates, as national services print it; second-hand); so
 * 2020 had fourteen, the last from 31 December. Held in the tests to the FAA's own 2609, 3 September 2026.
 */
const EPOCH_DAY = Date.UTC(2020, 0, 2) / DAY_MS;

/** The days of a cycle of this century; null for what is none, as a fourteenth cycle in a year of thirteen. */
export function airacCycle(cycle: string): AiracCycle | null {
  if (!/^\d{4}$/.test(cycle)) return null;
  const year = 2000 + Number(cycle.slice(0, 2));
  const number = Number(cycle.slice(2));
  const newYear = Date.UTC(year, 0, 1) / DAY_MS;
  const before = Math.ceil((newYear - EPOCH_DAY) / CYCLE_DAYS);
  const first = EPOCH_DAY + (before + number - 1) * CYCLE_DAYS;
  if (number < 1 || new Date(first * DAY_MS).getUTCFullYear() !== year) return null;
  return { cycle, firstDay: dayText(first), lastDay: dayText(first + CYCLE_DAYS - 1) };
}

/** How data of a cycle stand on a day (ISO date), as the end of a sentence; null on a day of the cycle. */
export function standingOn(
  { firstDay, lastDay }: AiracCycle,
  day: string,
): 'not yet in force' | 'no longer in force' | null {
  if (day < firstDay) return 'not yet in force';
  return day > lastDay ? 'no longer in force' : null;
}

function dayText(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}
