import { describe, expect, it } from 'vitest';
import { firstDays } from '../../../electron/library/first-days.ts';

const at = (utc: string, lonDeg: number) => ({ timeS: Date.parse(utc) / 1000, lonDeg });
const IN_UTC = { timeReference: 'utc', utcOffsetS: null } as const;
const HOUR_S = 3600;

describe('the day on which a log begins', () => {
  it.each([
    ['2026-05-04T02:02:00Z', -6, '2026-05-03'],
    ['2026-05-04T02:02:00Z', 2, '2026-05-04'],
    ['2026-05-03T20:00:00Z', 9.5, '2026-05-04'],
    ['2026-05-04T06:00:00Z', -6, '2026-05-04'],
    ['2026-05-04T05:59:59Z', -6, '2026-05-03'],
  ])('%s at %f h is of %s, and of no other', (utc, hours, firstDay) => {
    const log = { timeReference: 'utc', utcOffsetS: hours * HOUR_S } as const;
    expect(firstDays(log, {}, at(utc, 0))).toEqual({ firstDay, otherDays: [] });
  });

  it('is told by the zone that was stated, where the log names none', () => {
    const begins = at('2026-05-04T02:02:00Z', -105);
    const own = { firstDay: '2026-05-03', otherDays: [] };
    expect(firstDays(IN_UTC, { timeZone: '-06:00' }, begins)).toEqual(own);
    expect(firstDays({ ...IN_UTC, utcOffsetS: 2 * HOUR_S }, { timeZone: '-06:00' }, begins).firstDay).toBe(
      '2026-05-04',
    );
  });

  it('is as written where the times are local and say no more', () => {
    const log = { timeReference: 'local', utcOffsetS: null } as const;
    expect(firstDays(log, {}, at('2026-05-03T23:30:00Z', 0))).toEqual({
      firstDay: '2026-05-03',
      otherDays: [],
    });
  });

  it('is none where the log counts from a start that nobody stated', () => {
    const log = { timeReference: 'elapsed', utcOffsetS: null } as const;
    expect(firstDays(log, {}, at('1970-01-01T00:00:00Z', 0))).toEqual({ firstDay: null, otherDays: [] });
  });

  it.each([
    // Noon anywhere is of one day.
    ['2026-05-03T12:00:00Z', 0, []],
    ['2026-05-03T19:00:00Z', -105, []],
    // Local midnight is near.
    ['2026-05-04T00:30:00Z', 0, ['2026-05-03']],
    ['2026-05-03T21:00:00Z', 10, ['2026-05-04']],
    // It is evening there, the day before.
    ['2026-05-04T00:02:00Z', -105, ['2026-05-03']],
    // An island at +14 h, by the sun at -10.5 h.
    ['2026-05-03T22:00:00Z', -157, ['2026-05-04']],
  ])('%s in UTC at %f° may be of another day as well: %j', (utc, lonDeg, otherDays) => {
    expect(firstDays(IN_UTC, {}, at(utc, lonDeg))).toEqual({ firstDay: utc.slice(0, 10), otherDays });
  });
});
