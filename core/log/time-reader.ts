import { CalendarTimes } from './calendar-times.ts';
import { readOffset } from './clock-text.ts';
import { CountedTimes } from './counted-times.ts';
import { orderOfPattern } from './date-order.ts';
import type { LogSettings } from './log.ts';
import type { DecimalMark } from './parse-number.ts';
import type { ResolvedTimes } from './resolved-times.ts';
import type { TimePlan } from './settle-columns.ts';
import type { StatedStart } from './stated-start.ts';

type Cells = readonly string[];

/** Reads the time of rows one by one. */
export interface TimeReader {
  /** Adds the row's time. False, and no row, when it has none. */
  add(cells: Cells): boolean;
  resolve(settings: LogSettings, stated: StatedStart): ResolvedTimes;
}

/** Makes the reader that a plan asks for, for so many rows as are likely to come (0: nobody knows). */
export function timeReader(plan: TimePlan, mark: DecimalMark, expectedRows: number): TimeReader {
  if (plan.kind === 'epoch' || plan.kind === 'elapsed') {
    const { index, unit } = plan.count;
    const unitS = unit?.dimension === 'time' ? unit.factor : null;
    const times = new CountedTimes(plan.kind === 'elapsed', unitS, mark, expectedRows);
    return {
      add: (cells) => times.add(textAt(cells, index)),
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
  const offsetOf = (cells: Cells): number =>
    offset === null ? NaN : readOffset(textAt(cells, offset.index).trim());
  const order = date === null ? undefined : orderOfPattern(`${date.header} ${date.unitText}`);
  const resolve = (settings: LogSettings, stated: StatedStart): ResolvedTimes =>
    times.resolve(settings.timeZone, settings.dateOrder ?? order, isUtc, stated.day);
  if (plan.kind === 'moment')
    return { add: (cells) => times.addMoment(textAt(cells, clock.index), offsetOf(cells)), resolve };
  const dateOf = (cells: Cells): string | null => (date === null ? null : textAt(cells, date.index));
  return {
    add: (cells) => times.addParts(dateOf(cells), textAt(cells, clock.index), offsetOf(cells)),
    resolve,
  };
}

function textAt(cells: Cells, index: number): string {
  return cells[index] ?? '';
}
