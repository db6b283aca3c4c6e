import { readOffset } from './clock-text.ts';

/** How far local time is ahead of UTC, in seconds, at a moment of UTC. */
export type ZoneOffset = (utcS: number) => number;

/** Zones change their offset at full quarters of an hour only, so one answer serves a quarter. */
const QUARTER_S = 900;
/** Far enough from a change of the clocks to stand clear of it, near enough to see but one. */
const CLEAR_S = 15 * 3600;

/** A zone by IANA name or fixed offset (`+02:00`, `UTC`); null when there is none of that name. */
export function zoneOffset(zone: string): ZoneOffset | null {
  const fixedS = readOffset(zone.replace(/^(?:UTC|GMT|Z)(?=$|[+-])/i, '') || '+0');
  if (!Number.isNaN(fixedS)) return () => fixedS;
  const format = formatOf(zone);
  if (format === null) return null;
  const known = new Map<number, number>();
  return (utcS) => {
    const quarter = Math.floor(utcS / QUARTER_S);
    let offset = known.get(quarter);
    if (offset === undefined) known.set(quarter, (offset = offsetBy(format, quarter * QUARTER_S)));
    return offset;
  };
}

/**
 * UTC of a local time. A time that the clocks show twice is the first one that does not go back behind `notBeforeS`;
 * one that they skip is read as if they had not been put forward.
 */
export function utcOfLocal(localS: number, offsetAt: ZoneOffset, notBeforeS: number): number {
  const before = offsetAt(localS - CLEAR_S);
  const after = offsetAt(localS + CLEAR_S);
  if (before === after) return localS - before;
  const first = localS - before;
  const second = localS - after;
  const firstExists = offsetAt(first) === before;
  const secondExists = offsetAt(second) === after;
  if (!secondExists) return first;
  return firstExists && first >= notBeforeS ? first : second;
}

function formatOf(zone: string): Intl.DateTimeFormat | null {
  try {
    return new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    return null;
  }
}

function offsetBy(format: Intl.DateTimeFormat, utcS: number): number {
  const parts = new Map(format.formatToParts(utcS * 1000).map((part) => [part.type, Number(part.value)]));
  const part = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type)!;
  const local = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return local / 1000 - utcS;
}
