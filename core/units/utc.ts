/** ISO 8601 in UTC of seconds since 1970, with milliseconds only where there are any; null for what is no time. */
export function utcText(timeS: number): string | null {
  if (!Number.isFinite(timeS) || Math.abs(timeS) > LAST_DATE_S) return null;
  const text = new Date(Math.round(timeS * 1000)).toISOString();
  return text.endsWith('.000Z') ? `${text.slice(0, -5)}Z` : text;
}

/** The last second that a date of the language can hold (ECMA-262, 21.4.1.1). */
const LAST_DATE_S = 8.64e12;

/** Seconds since 1970 of what `utcText` wrote. */
export function secondsOf(utc: string): number {
  return Date.parse(utc) / 1000;
}
