import { CalendarTimes } from './calendar-times.ts';
import { readOffset } from './clock-text.ts';
import { CountedTimes } from './counted-times.ts';
import { orderOfPattern } from './date-order.ts';
import type { LogSettings } from './log.ts';
import type { DecimalMark } from './parse-number.ts';
import type { ResolvedTimes } from './resolved-times.ts';
import type { Row } from './row.ts';
import type { TimePlan } from './settle-columns.ts';
import type { StatedStart } from './stated-start.ts';

/** Reads the time of rows one by one. */
export interface TimeReader {
  /** Adds the row's time. False, and no row, when it has none. */
  add(row: Row): boolean;
  resolve(settings: LogSettings, stated: StatedStart): ResolvedTimes;
}

/** Makes the reader that a plan asks for, for so many rows as are likely to come (0: nobody knows). */
export function timeReader(plan: TimePlan, mark: DecimalMark, expectedRows: number): TimeReader {
  if (plan.kind === 'epoch' || plan.kind === 'elapsed') {
    const { index, unit } = plan.count;
    const unitS = unit?.dimension === 'time' ? unit.factor : null;
    const times = new CountedTimes(plan.kind === 'elapsed', unitS, mark, expectedRows);
    return {
      add: (row) => times.add(row, index),
      resolve: ({ startS }, stated) =>
        times.resolve(startS === undefined ? stated.start : { atS: startS, isLocal: false }),
    };
  }
  return calendarReader(plan, expectedRows);
}

function calendarReader(
  plan: Extract<TimePlan, { kind: 'moment' | 'parts' }>,
  expectedRows: number,
): TimeReader {
  const times = new CalendarTimes(expectedRows);
  const clock = plan.kind === 'moment' ? plan.dateTime : plan.timeOfDay;
  const date = plan.kind === 'moment' ? plan.dateTime : plan.date;
  const isUtc = clock.terms.includes('utc');
  // An offset beside a clock that runs on UTC belongs to another clock.
  const offset = isUtc ? null : plan.utcOffset;
  const offsetOf = (row: Row): number => (offset === null ? NaN : readOffset(row.text(offset.index).trim()));
  const order = date === null ? undefined : orderOfPattern(`${date.header} ${date.unitText}`);
  const resolve = (settings: LogSettings, stated: StatedStart): ResolvedTimes =>
    times.resolve(settings.timeZone, settings.dateOrder ?? order, isUtc, stated.day);
  if (plan.kind === 'moment')
    return { add: (row) => times.addMoment(row.text(clock.index), offsetOf(row)), resolve };
  const dateOf = (row: Row): string | null => (date === null ? null : row.text(date.index));
  return {
    add: (row) => times.addParts(dateOf(row), row.text(clock.index), offsetOf(row)),
    resolve,
  };
}
