import { epochDay, fullYear } from './calendar.ts';
import type { DateText } from './date-text.ts';
import type { LogSettings } from './log.ts';

export type DateOrder = NonNullable<LogSettings['dateOrder']>;

/** The order of a file's dates, and whether nothing but habit decided it. */
export interface DecidedOrder {
  readonly order: DateOrder;
  readonly guessed: boolean;
}

const ORDERS = { first: ['ymd'], last: ['dmy', 'mdy'], unknown: ['dmy', 'mdy', 'ymd'] } as const;

/** Days since 1970-01-01 of a date read in an order; NaN when that is no date. */
export function dayOf(date: DateText, order: DateOrder): number {
  const { first, second, third } = date;
  if (date.yearPlace === 'first' || order === 'ymd') return epochDay(fullYear(first), second, third);
  return order === 'dmy'
    ? epochDay(fullYear(third), second, first)
    : epochDay(fullYear(third), first, second);
}

/**
 * Decides the order for a whole file: by the one that makes most of its dates exist (a value above 12 is no
 * month); else by the user's word; else by the separator, since dots are written between day, month and year;
 * else month first beside a clock of 12 hours, which is seldom written with the day first (common practice, no
 * source); else day first. Both of these are said.
 */
export function decideOrder(
  dates: readonly DateText[],
  wish: DateOrder | undefined,
  isTwelveHour = false,
): DecidedOrder {
  const open = dates.find((date) => date.yearPlace !== 'first');
  if (open === undefined) return { order: 'ymd', guessed: false };
  const possible: readonly DateOrder[] = ORDERS[open.yearPlace];
  const counts = possible.map((order) => dates.filter((date) => !Number.isNaN(dayOf(date, order))).length);
  const best = Math.max(...counts);
  const left = possible.filter((_, i) => counts[i] === best);
  if (wish !== undefined && left.includes(wish)) return { order: wish, guessed: false };
  if (left.length === 1 || allAgree(dates, left)) return { order: left[0]!, guessed: false };
  if (open.separator === '.') return { order: 'dmy', guessed: false };
  if (isTwelveHour && left.includes('mdy')) return { order: 'mdy', guessed: true };
  const habit = open.separator === '-' && left.includes('ymd') ? 'ymd' : left[0]!;
  return { order: habit, guessed: true };
}

/** 05/05/2024 is the same day either way. */
function allAgree(dates: readonly DateText[], orders: readonly DateOrder[]): boolean {
  return dates.every((date) => orders.every((order) => dayOf(date, order) === dayOf(date, orders[0]!)));
}

/** The order that a pattern such as `dd/mm/yyyy` in a header names; undefined when there is none. */
export function orderOfPattern(text: string): DateOrder | undefined {
  const letters = /\b(y{2,4}|m{1,2}|d{1,2})[-./](y{2,4}|m{1,2}|d{1,2})[-./](y{2,4}|m{1,2}|d{1,2})\b/i.exec(
    text,
  );
  const order = letters
    ?.slice(1)
    .map((part) => part[0]!.toLowerCase())
    .join('');
  return order === 'ymd' || order === 'dmy' || order === 'mdy' ? order : undefined;
}
