import { readClock } from './clock-text.ts';
import type { HeadRow } from './csv-header.ts';
import { dayOf, decideOrder } from './date-order.ts';
import { readDate } from './date-text.ts';
import { wordsOf } from './header-tokens.ts';
import type { LogSettings } from './log.ts';
import { utcOfLocal, zoneOffset } from './time-zone.ts';

/** What the lines before the header say about when the log began. */
export interface StatedStart {
  /** Days since 1970; null when no date is stated. */
  readonly day: number | null;
  /** When the log began; null when no date with a time is stated. */
  readonly start: Start | null;
}

export interface Start {
  /** Seconds since 1970. */
  readonly atS: number;
  /** Neither the file nor the user said how far it is from UTC: taken as UTC. */
  readonly isLocal: boolean;
}

/** Only a line that says so is believed: a file has other dates, such as that of its software. */
const START_WORDS = new Set([
  'date',
  'datum',
  'fecha',
  'start',
  'started',
  'begin',
  'beginn',
  'debut',
  'inicio',
  'flight',
  'flug',
  'vol',
  'vuelo',
  'recorded',
  'recording',
]);
const OTHER_WORDS = new Set([
  'export',
  'exported',
  'version',
  'software',
  'database',
  'build',
  'end',
  'birth',
  'expires',
  'created',
]);
const DATE = /(?<!\d)\d{1,4}([-./])\d{1,2}\1\d{2,4}(?!\d)/;

/** Looks for the start in the lines before the header. */
export function statedStart(preamble: readonly HeadRow[], settings: LogSettings): StatedStart {
  for (const { cells } of preamble) {
    const text = cells.join(' ').replaceAll('"', ' ');
    const at = DATE.exec(text)?.index;
    if (at === undefined) continue;
    const words = wordsOf(text);
    if (!words.some((word) => START_WORDS.has(word)) || words.some((word) => OTHER_WORDS.has(word))) continue;
    const date = readDate(text.slice(at));
    if (date === null) continue;
    const after = text.slice(at + date.length);
    const isTwelveHour = /[ap]m/i.test(TIME_AFTER.exec(after)?.[1] ?? '');
    const day = dayOf(date, decideOrder([date], settings.dateOrder, isTwelveHour).order);
    if (Number.isNaN(day)) continue;
    return { day, start: timeAfter(after, day, settings.timeZone) };
  }
  return { day: null, start: null };
}

const TIME_AFTER =
  /^[T\s,;]*(\d{1,2}:\d\d(?::\d\d(?:[.,]\d+)?)?\s*(?:[ap]m)?\s*(?:z|utc|gmt)?(?:[+-]\d\d:?\d\d)?)/i;

/** The moment of a day at the time that a text begins with; null when it begins with none. */
function timeAfter(text: string, day: number, timeZone: string | undefined): Start | null {
  const clock = { secondsOfDay: 0, offsetS: NaN };
  const time = TIME_AFTER.exec(text)?.[1];
  if (time === undefined || !readClock(time.trim(), 0, clock)) return null;
  const atS = day * 86_400 + clock.secondsOfDay;
  if (!Number.isNaN(clock.offsetS)) return { atS: atS - clock.offsetS, isLocal: false };
  const zone = timeZone === undefined ? null : zoneOffset(timeZone);
  return zone === null ? { atS, isLocal: true } : { atS: utcOfLocal(atS, zone, -Infinity), isLocal: false };
}
