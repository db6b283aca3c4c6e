import type { Issue } from '../issue/issue.ts';
import { MINUTE_LENGTH, minuteOf, readClock, readSeconds } from './clock-text.ts';
import type { Clock } from './clock-text.ts';
import { dayOf, decideOrder } from './date-order.ts';
import type { DateOrder } from './date-order.ts';
import { readDate } from './date-text.ts';
import type { DateText } from './date-text.ts';
import { logIssue } from './log-issue.ts';
import { NumberColumn } from './number-column.ts';
import { ownText } from './own-text.ts';
import { NO_ZONE } from './resolved-times.ts';
import type { ResolvedTimes } from './resolved-times.ts';
import { utcOfLocal, zoneOffset } from './time-zone.ts';

const DAY_S = 86_400;

/** Rows from one on that share a date as written, and whether their offset from UTC was known. */
interface Run {
  readonly fromRow: number;
  readonly date: DateText | null;
  readonly inUtc: boolean;
}

/**
 * Times written as dates and times of day. While the file streams by, only seconds of the day are kept, and one
 * note wherever the date changes; what the dates mean is decided when all have been seen.
 */
export class CalendarTimes {
  readonly #seconds: NumberColumn;
  readonly #runs: Run[] = [];
  readonly #clock: Clock = { secondsOfDay: 0, offsetS: NaN };
  #dateText = '';
  /** What a moment of the minute read last begins with, its date included; '' when that is not known. */
  #minuteText = '';
  #minuteS = NaN;
  #date: DateText | null = null;
  /** Of the first row that has one; NaN before. */
  #offsetS = NaN;

  /** @param expectedRows how many rows are likely to come; 0 when nobody knows */
  constructor(expectedRows: number) {
    this.#seconds = new NumberColumn(expectedRows);
  }

  /** Adds a row with date and time in one text, and its offset in seconds (NaN: none). False, and no row, when it is none. */
  addMoment(text: string, offsetS: number): boolean {
    // In most rows all but the seconds is as in the row before.
    const { length } = this.#minuteText;
    if (
      length > 0 &&
      text.startsWith(this.#minuteText) &&
      readSeconds(text, length, this.#minuteS, this.#clock)
    )
      return this.#add(offsetS);
    let moment = text;
    if (needsTrim(moment)) moment = moment.trim();
    if (this.#date === null || !moment.startsWith(this.#dateText) || isDigit(moment, this.#dateText.length)) {
      if (!this.#readDate(moment)) return false;
    }
    const separator = moment[this.#dateText.length];
    if (separator !== 'T' && separator !== ' ' && separator !== 't' && separator !== ',') return false;
    let at = this.#dateText.length + 1;
    while (moment[at] === ' ') at++;
    if (!readClock(moment, at, this.#clock)) return false;
    this.#keepMinute(moment, at);
    return this.#add(offsetS);
  }

  /** Adds a row with its date (null: the file has none), its time of day and its offset in seconds (NaN: none). */
  addParts(dateText: string | null, clockText: string, offsetS: number): boolean {
    if (dateText !== null && (this.#date === null || dateText !== this.#dateText)) {
      const trimmed = dateText.trim();
      if (!this.#readDate(trimmed) || this.#dateText.length !== trimmed.length) {
        this.#date = null;
        return false;
      }
      this.#dateText = dateText;
    }
    const clock = needsTrim(clockText) ? clockText.trim() : clockText;
    return readClock(clock, 0, this.#clock) && this.#add(offsetS);
  }

  /** Notes the text up to the seconds of a moment that was read, where it is written as most are. */
  #keepMinute(moment: string, at: number): void {
    if (this.#minuteText !== '' && moment.startsWith(this.#minuteText)) return;
    const text = moment.slice(0, at + MINUTE_LENGTH);
    const minuteS = minuteOf(text, at);
    this.#minuteText = Number.isNaN(minuteS) ? '' : text;
    this.#minuteS = minuteS;
  }

  #readDate(text: string): boolean {
    this.#minuteText = '';
    this.#date = readDate(text);
    this.#dateText = this.#date === null ? '' : ownText(text.slice(0, this.#date.length));
    return this.#date !== null;
  }

  #add(columnOffsetS: number): true {
    const offsetS = Number.isNaN(this.#clock.offsetS) ? columnOffsetS : this.#clock.offsetS;
    const inUtc = !Number.isNaN(offsetS);
    const run = this.#runs.at(-1);
    if (run === undefined || run.date !== this.#date || run.inUtc !== inUtc) {
      this.#runs.push({ fromRow: this.#seconds.length, date: this.#date, inUtc });
      if (Number.isNaN(this.#offsetS)) this.#offsetS = offsetS;
    }
    this.#seconds.push(inUtc ? this.#clock.secondsOfDay - offsetS : this.#clock.secondsOfDay);
    return true;
  }

  /**
   * Seconds since 1970 UTC of every row; NaN where there is no such day.
   * @param zoneName zone of times without an offset; undefined when unknown
   * @param order order of the dates where they leave it open; undefined when nobody said
   * @param isUtc whether times without an offset are UTC because the header or the format says so
   * @param startDay days since 1970 of the first row, for a file that writes no dates; null when unknown
   */
  resolve(
    zoneName: string | undefined,
    order: DateOrder | undefined,
    isUtc: boolean,
    startDay: number | null,
  ): ResolvedTimes {
    const zone = zoneName === undefined || isUtc ? null : zoneOffset(zoneName);
    const dates = this.#runs.flatMap((run) => run.date ?? []);
    const { isTwelveHour = false } = this.#clock;
    const decided = decideOrder(dates, order, isTwelveHour);
    const timeS = this.#seconds.take();
    let previousS = -Infinity;
    let previousClockS = -Infinity;
    for (const [i, run] of this.#runs.entries()) {
      const end = this.#runs[i + 1]?.fromRow ?? timeS.length;
      const dayS = (run.date === null ? (startDay ?? 0) : dayOf(run.date, decided.order)) * DAY_S;
      for (let row = run.fromRow; row < end; row++) {
        let atS = dayS + timeS[row]!;
        // Without dates, a clock that falls by more than half a day has passed midnight.
        if (run.date === null) {
          while (atS < previousClockS - DAY_S / 2) atS += DAY_S;
          previousClockS = atS;
        }
        if (zone !== null && !run.inUtc) atS = utcOfLocal(atS, zone, previousS);
        timeS[row] = atS;
        if (!Number.isNaN(atS)) previousS = atS;
      }
    }
    const local = !isUtc && zone === null && this.#runs.some((run) => !run.inUtc);
    const issues: Issue[] = [];
    if (decided.guessed) issues.push(orderGuessed(dates, decided.order, isTwelveHour));
    if (this.#runs.length > 0 && dates.length === 0 && startDay === null) issues.push(NO_DATE);
    if (local) issues.push(NO_ZONE);
    // NaN as well.
    const utcOffsetS = this.#offsetS || null;
    return { timeS, reference: local ? 'local' : 'utc', utcOffsetS, issues };
  }
}

const NO_DATE = logIssue(
  'time-without-date',
  'The file has times of day but no date: its first day is shown as 1970-01-01.',
);

const ORDER_WORDS: Readonly<Record<DateOrder, string>> = {
  ymd: 'year, month, day',
  dmy: 'day, month, year',
  mdy: 'month, day, year',
};

function orderGuessed(dates: readonly DateText[], order: DateOrder, isTwelveHour: boolean): Issue {
  const { first, second, third, separator } = dates[0]!;
  const text = [first, second, third].join(separator);
  const since = isTwelveHour && order === 'mdy' ? ', since the clock is one of 12 hours' : '';
  const message = `Dates such as ${text} can be read in more than one order: taken as ${ORDER_WORDS[order]}${since}.`;
  const other = order === 'dmy' ? 'mdy' : 'dmy';
  return logIssue('date-order-assumed', message, {
    tip: `If that is wrong, say so with --date-order ${other}, or in the app under "What was recognised".`,
  });
}

function needsTrim(text: string): boolean {
  return text.charCodeAt(0) <= 32 || text.charCodeAt(text.length - 1) <= 32;
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}
