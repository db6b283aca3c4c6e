import type { Log, LogSettings } from '../../core/log/log.ts';
import { zoneOffset } from '../../core/log/time-zone.ts';
import { utcText } from '../../core/units/utc.ts';

/** The days on which a log may begin where it was flown, as 2026-05-03. */
export interface FirstDays {
  /** By its own clock, else by UTC; null where it names none. */
  readonly firstDay: string | null;
  /** What else it may be there; empty where the log or whoever stated its zone says how far it is from UTC. */
  readonly otherDays: readonly string[];
}

/** Where a log begins: seconds since 1970 UTC, and degrees east. */
interface Beginning {
  readonly timeS: number;
  readonly lonDeg: number;
}

/** An evening's flight in the west begins on the next day of UTC: whose it is, a school asks by its own calendar. */
export function firstDays(
  { timeReference, utcOffsetS }: Pick<Log, 'timeReference' | 'utcOffsetS'>,
  { timeZone, startS }: LogSettings,
  { timeS, lonDeg }: Beginning,
): FirstDays {
  if (timeReference === 'elapsed' && startS === undefined) return { firstDay: null, otherDays: [] };
  // As they are written: its own clock's, which is only taken for UTC.
  if (timeReference === 'local') return { firstDay: dayAt(timeS), otherDays: [] };
  const statedS = timeZone === undefined ? undefined : zoneOffset(timeZone)?.(timeS);
  const offsetS = utcOffsetS ?? statedS;
  if (offsetS !== undefined) return { firstDay: dayAt(timeS + offsetS), otherDays: [] };
  const firstDay = dayAt(timeS);
  const days = clockRangesS(lonDeg).flatMap(([from, to]) => [dayAt(timeS + from), dayAt(timeS + to)]);
  return { firstDay, otherDays: [...new Set(days)].filter((day) => day !== firstDay) };
}

/** Clocks of the world are at most so many hours behind the sun and ahead of it: a margin beyond the IANA zones. */
const BEHIND_SUN_H = 2;
const AHEAD_OF_SUN_H = 4;
/** Nearer to the date line than this, islands keep the day of either side. */
const DATE_LINE_LON_DEG = 150;

/** How far clocks at a longitude may be ahead of UTC, in seconds, from and to. */
function clockRangesS(lonDeg: number): (readonly [from: number, to: number])[] {
  const sunH = lonDeg / 15;
  const besides = Math.abs(lonDeg) > DATE_LINE_LON_DEG ? [sunH - 24 * Math.sign(lonDeg)] : [];
  return [sunH, ...besides].map((h) => [(h - BEHIND_SUN_H) * 3600, (h + AHEAD_OF_SUN_H) * 3600]);
}

function dayAt(timeS: number): string {
  return utcText(timeS)!.slice(0, 10);
}
