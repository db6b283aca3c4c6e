/**
 * Days from 1970-01-01 to a date of the Gregorian calendar; NaN when there is no such day (31 February).
 * `Date.UTC` carries such a date over into the next month: what comes back then is another day of the month.
 */
export function epochDay(year: number, month: number, day: number): number {
  if (month < 1 || month > 12 || day < 1 || day > 31) return NaN;
  const days = Date.UTC(year, month - 1, day) / 86_400_000;
  return new Date(days * 86_400_000).getUTCDate() === day ? days : NaN;
}

/** A year of two digits is of 1970 to 2069, since logs are. */
export function fullYear(year: number): number {
  if (year >= 100) return year;
  return year < 70 ? 2000 + year : 1900 + year;
}
