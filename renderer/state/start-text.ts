import { utcText } from '../../core/units/utc.ts';

const START = /^(\d{4}-\d\d-\d\d)[T ]+(\d\d:\d\d(?::\d\d(?:\.\d+)?)?)\s*(Z|UTC|[+-]\d\d:\d\d)?$/i;

/** What is wrong with a start as it is typed; null where nothing is. */
export function startProblem(text: string): string | null {
  return startFrom(text) === null ? 'Write day and time, as 2026-05-01 09:00.' : null;
}

/** Seconds since 1970 of "2026-05-01 09:00", which is UTC unless it names its offset; null of what is no time. */
export function startFrom(text: string): number | null {
  const [, day, time, zone = 'Z'] = START.exec(text) ?? [];
  if (day === undefined) return null;
  const startS = Date.parse(`${day}T${time}${zone.toUpperCase().replace('UTC', 'Z')}`) / 1000;
  // A thirtieth of February is some other day to the language.
  const isDay = utcText(Date.parse(`${day}T00:00Z`) / 1000)?.startsWith(day);
  return Number.isFinite(startS) && isDay ? startS : null;
}

export function startWords(startS: number | undefined): string {
  return startS === undefined ? '' : (utcText(startS) ?? '').replace('T', ' ').replace(/(?::00)?Z$/, '');
}
