import { utcText } from '../units/utc.ts';

const START = /^(\d{4}-\d\d-\d\d)[T ]+(\d\d:\d\d(?::\d\d(?:\.\d+)?)?)\s*(Z|UTC|[+-]\d\d:\d\d)?$/i;

/**
 * Seconds since 1970 of a log's start as it is stated, "2026-05-01 09:00" or "2026-05-01T09:00:00Z": UTC unless it
 * names its offset, wherever the machine stands. Null of what is no time.
 */
export function startFrom(text: string): number | null {
  const [, day, time, zone = 'Z'] = START.exec(text) ?? [];
  if (day === undefined) return null;
  const startS = Date.parse(`${day}T${time}${zone.toUpperCase().replace('UTC', 'Z')}`) / 1000;
  // A thirtieth of February is some other day to the language.
  const isDay = utcText(Date.parse(`${day}T00:00Z`) / 1000)?.startsWith(day);
  return Number.isFinite(startS) && isDay ? startS : null;
}
