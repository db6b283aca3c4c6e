import type { ApproachDebrief } from '../../core/debrief/debrief.ts';
import type { Span } from '../../core/numeric/polyline.ts';
import { eventWords } from '../../core/report/event-lines.ts';
import { dayAndClock } from '../../core/report/plain-words.ts';
import { utcText } from '../../core/units/utc.ts';

/** From when to when a log was recorded, in the zone that its debrief is told in: ISO 8601, as `Inspection` has it. */
export interface LogTimes {
  readonly startUtc: string;
  readonly endUtc: string;
}

/** A span as it was typed, or what is wrong with either of its times. */
export type TypedSpan =
  | { readonly span: Span }
  | { readonly span: null; readonly start: string | null; readonly end: string | null };

const DAY_S = 86_400;
const CLOCK = /^(\d{1,2}):(\d\d):(\d\d)$/;
const AS_CLOCK = 'Write it as hours, minutes and seconds: 09:10:30.';

/** Reads two clock times as a span of the log; a clock time that comes twice in a long log is the first. */
export function spanFrom(start: string, end: string, log: LogTimes): TypedSpan {
  const [fromS, toS] = [clockS(start), clockS(end)];
  const startS = fromS === null ? null : firstFrom(fromS, -Infinity, log);
  // The end of a log past midnight is a clock time of the next day.
  const endS = toS === null ? null : firstFrom(toS, startS ?? -Infinity, log);
  if (startS === null || endS === null) {
    const wrong = (clock: number | null, momentS: number | null) =>
      clock === null ? AS_CLOCK : momentS === null ? outsideWords(log) : null;
    return { span: null, start: wrong(fromS, startS), end: wrong(toS, endS) };
  }
  if (endS <= startS) return { span: null, start: null, end: 'It has to end after it begins.' };
  return { span: { startS, endS } };
}

/** Seconds since midnight; null for what is no clock time. */
function clockS(text: string): number | null {
  const [, hours, minutes, seconds] = CLOCK.exec(text.trim()) ?? [];
  if (hours === undefined || Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59) return null;
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
}

/**
 * The first moment of that clock time within the log and after another; where none comes after it, the first within
 * the log at all. Clock times are whole seconds, cut off as they are printed: a log's own ends stand for theirs.
 */
function firstFrom(clock: number, afterS: number, { startUtc, endUtc }: LogTimes): number | null {
  const [startS, endS] = [Math.floor(secondsOf(startUtc)), Math.ceil(secondsOf(endUtc))];
  const midnightS = Math.floor(startS / DAY_S) * DAY_S;
  const within: number[] = [];
  for (let momentS = midnightS + clock; momentS <= endS; momentS += DAY_S)
    if (momentS >= startS) within.push(momentS);
  return within.find((momentS) => momentS > afterS) ?? within[0] ?? null;
}

function outsideWords({ startUtc, endUtc }: LogTimes): string {
  return `This log runs from ${dayAndClock(startUtc).clock} to ${dayAndClock(endUtc).clock}.`;
}

/** "09:10:00 to 09:10:30". */
export function spanWords({ startS, endS }: Span): string {
  return `${clockWords(startS)} to ${clockWords(endS)}`;
}

function clockWords(momentS: number): string {
  return dayAndClock(utcText(momentS)!).clock;
}

/** Whether nothing of a span lies in the log, as where its times were read otherwise since. */
export function isOutside({ startS, endS }: Span, { startUtc, endUtc }: LogTimes): boolean {
  return endS <= secondsOf(startUtc) || startS >= secondsOf(endUtc);
}

/** Clock times of the moments of approaches, each once, with what they are called. */
export function momentsOf(
  approaches: readonly Pick<ApproachDebrief, 'events'>[],
): [clock: string, words: string][] {
  const moments = new Map<string, string>();
  for (const event of approaches.flatMap(({ events }) => events)) {
    const { clock } = dayAndClock(event.utc);
    const before = moments.get(clock);
    moments.set(clock, before === undefined ? eventWords(event) : `${before}; ${eventWords(event)}`);
  }
  return [...moments];
}

function secondsOf(utc: string): number {
  return Date.parse(utc) / 1000;
}
