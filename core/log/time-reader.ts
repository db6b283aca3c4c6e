import { CalendarTimes } from './calendar-times.ts';
import { readOffset } from './clock-text.ts';
import { CountedTimes } from './counted-times.ts';
import type { LogSettings } from './log.ts';
import type { DecimalMark } from './parse-number.ts';
import type { ResolvedTimes } from './resolved-times.ts';
import type { TimePlan } from './settle-columns.ts';
import type { StatedStart } from './stated-start.ts';

/** Reads the time of rows one by one. */
export interface TimeReader {
  /** Adds the row's time. False, and no row, when it has none. */
  add(cells: readonly string[]): boolean;
  resolve(settings: LogSettings, stated: StatedStart): ResolvedTimes;
}

/** Makes the reader that a plan asks for. */
export function timeReader(plan: TimePlan, mark: DecimalMark): TimeReader {
  if (plan.kind === 'epoch' || plan.kind === 'elapsed')
    return countReader(plan.kind, plan.count.index, plan.count.unit?.factor ?? null, mark);
  const times = new CalendarTimes();
  const offsetIndex = plan.utcOffset?.index;
  const offsetOf = (cells: readonly string[]): number =>
    offsetIndex === undefined ? NaN : readOffset((cells[offsetIndex] ?? '').trim());
  const clock = plan.kind === 'moment' ? plan.dateTime : plan.timeOfDay;
  // A clock in UTC beside a column of offsets: the offset belongs to another clock.
  const isUtc = clock.terms.includes('utc');
  const resolve = (settings: LogSettings, stated: StatedStart): ResolvedTimes =>
    times.resolve(settings, isUtc, stated.day);
  if (plan.kind === 'moment') {
    return {
      add: (cells) => times.addMoment(cells[clock.index] ?? '', isUtc ? NaN : offsetOf(cells)),
      resolve,
    };
  }
  const dateIndex = plan.date?.index;
  return {
    add: (cells) =>
      times.addParts(
        dateIndex === undefined ? null : (cells[dateIndex] ?? ''),
        cells[clock.index] ?? '',
        isUtc ? NaN : offsetOf(cells),
      ),
    resolve,
  };
}

function countReader(
  kind: 'epoch' | 'elapsed',
  index: number,
  unitS: number | null,
  mark: DecimalMark,
): TimeReader {
  const times = new CountedTimes(kind === 'elapsed', unitS, mark);
  return {
    add: (cells) => times.add(cells[index] ?? ''),
    resolve: (settings, stated) => times.resolve(settings.startS ?? stated.startS),
  };
}
