/** A time of day as read: seconds since midnight, and what it says about its offset from UTC. */
export interface Clock {
  secondsOfDay: number;
  /** Seconds to subtract for UTC; NaN when the text names none. */
  offsetS: number;
  /** Set once a time with AM or PM was read into it. */
  isTwelveHour?: boolean;
}

const COLON = 58;
const POINT = 46;
const COMMA = 44;
const LETTER_Z = 90;
/** Of `10:15:`. */
export const MINUTE_LENGTH = 6;
const UNUSUAL =
  /^(?:(\d{1,2}):(\d\d)(?::(\d\d))?|(\d{1,2})(\d\d)(\d\d))(?:[.,:](\d+))?\s*(?:([ap])\.?\s?m\.?)?\s*(?:(z|utc|gmt)?\s*([+-]\d\d?(?::?\d\d)?)?)$/i;

/**
 * Reads `10:15:30.25`, `10:15`, `101530`, with AM or PM, Z or an offset, from a place in a text to its end
 * (without padding). False, and nothing written, when it is no time of day. A second of 60 is a leap second.
 */
export function readClock(text: string, from: number, into: Clock): boolean {
  const minuteS = minuteOf(text, from);
  const usual = !Number.isNaN(minuteS) && readSeconds(text, from + MINUTE_LENGTH, minuteS, into);
  return usual || readUnusual(text.slice(from), into);
}

/** When the minute of `10:15:` began, seconds after midnight; NaN when something else stands there. */
export function minuteOf(text: string, from: number): number {
  const hour = twoDigits(text, from);
  const minute = twoDigits(text, from + 3);
  const isMinute =
    hour < 24 && minute < 60 && text.charCodeAt(from + 2) === COLON && text.charCodeAt(from + 5) === COLON;
  return isMinute ? hour * 3600 + minute * 60 : NaN;
}

/**
 * Reads `30.25`, with Z or without, as what follows the minute that began `minuteS` seconds after midnight. False, and
 * nothing written, when something else stands there.
 */
export function readSeconds(text: string, from: number, minuteS: number, into: Clock): boolean {
  const second = twoDigits(text, from);
  if (!(second <= 60)) return false;
  let at = from + 2;
  let fraction = 0;
  const mark = text.charCodeAt(at);
  if (mark === POINT || mark === COMMA) {
    let scale = 1;
    for (at++; isDigit(text.charCodeAt(at)); at++) {
      fraction = fraction * 10 + (text.charCodeAt(at) - 48);
      scale *= 10;
    }
    fraction /= scale;
  }
  const ends = at === text.length;
  if (!ends && !(text.charCodeAt(at) === LETTER_Z && at + 1 === text.length)) return false;
  into.secondsOfDay = minuteS + second + fraction;
  into.offsetS = ends ? NaN : 0;
  return true;
}

function readUnusual(text: string, into: Clock): boolean {
  const match = UNUSUAL.exec(text);
  if (match === null) return false;
  let hour = Number(match[1] ?? match[4]);
  const minute = Number(match[2] ?? match[5]);
  const second = Number(match[3] ?? match[6] ?? 0);
  const half = match[8]?.toLowerCase();
  if (half !== undefined && (hour < 1 || hour > 12)) return false;
  if (half !== undefined) hour = (hour % 12) + (half === 'p' ? 12 : 0);
  if (hour > 23 || minute > 59 || second > 60) return false;
  if (half !== undefined) into.isTwelveHour = true;
  into.secondsOfDay = hour * 3600 + minute * 60 + second + Number(`0.${match[7] ?? 0}`);
  into.offsetS = match[10] === undefined ? (match[9] === undefined ? NaN : 0) : readOffset(match[10]);
  return true;
}

/** Seconds east of UTC of `+02:00`, `-0330`, `2` or `-5.5`; NaN when the text is no offset. */
export function readOffset(text: string): number {
  const match = /^([+-]?)(\d\d?)(?::?(\d\d)|[.,](\d+))?(?::\d\d)?$/.exec(text);
  if (match === null) return NaN;
  const hours = Number(match[2]) + Number(match[3] ?? 0) / 60 + Number(`0.${match[4] ?? 0}`);
  return hours > 15 ? NaN : (match[1] === '-' ? -3600 : 3600) * hours;
}

/** The number that two digits make; NaN when they are none. */
function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at);
  const ones = text.charCodeAt(at + 1);
  return isDigit(tens) && isDigit(ones) ? (tens - 48) * 10 + ones - 48 : NaN;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
