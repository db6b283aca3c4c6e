import { readClock, readOffset } from './clock-text.ts';
import { readDate } from './date-text.ts';
import type { TimeRole } from './log.ts';
import { parseNumber } from './parse-number.ts';
import type { DecimalMark } from './parse-number.ts';
import type { Recognised } from './recognise-column.ts';

type Shape = 'dateTime' | 'date' | 'clock' | 'sixDigits' | 'offset' | 'large' | 'small' | 'none' | 'empty';

/** Seconds since 1970 before 1973 would be smaller, and no flight takes three years. */
const EPOCH_FROM = 1e8;

/** Which part of the time a column holds, by its words and by what its first values look like; null: none. */
export function timeRole(
  recognised: Recognised,
  samples: readonly string[],
  mark: DecimalMark,
): TimeRole | null {
  const { meaning, terms, unit } = recognised;
  const shape = shapeOf(samples, mark, unit?.factor ?? 1);
  if (shape === 'empty') return meaning === 'time' ? roleByWords(terms) : (meaning as TimeRole);
  if (meaning === 'utcOffset') return ['offset', 'small', 'clock'].includes(shape) ? 'utcOffset' : null;
  if (meaning === 'elapsed' && shape !== 'large')
    return ['clock', 'small', 'sixDigits'].includes(shape) ? 'elapsed' : null;
  if (shape === 'dateTime' || shape === 'date') return shape;
  if (shape === 'clock') return 'timeOfDay';
  if (shape === 'large') return 'epoch';
  const compactClock =
    shape === 'sixDigits' && unit === null && (terms.includes('utc') || terms.includes('local'));
  if (compactClock) return 'timeOfDay';
  return (shape === 'small' || shape === 'sixDigits') && !terms.includes('date') ? 'elapsed' : null;
}

/** A column that is empty in all rows looked at, as it is before a receiver finds its first satellites. */
function roleByWords(terms: readonly string[]): TimeRole {
  const hasDate = terms.includes('date');
  if (terms.includes('timestamp') || (hasDate && terms.includes('time'))) return 'dateTime';
  return hasDate ? 'date' : 'timeOfDay';
}

/** What most of the values look like. */
function shapeOf(samples: readonly string[], mark: DecimalMark, unitS: number): Shape {
  const counts = new Map<Shape, number>();
  for (const sample of samples) {
    const shape = shapeOfOne(sample.trim(), mark, unitS);
    counts.set(shape, (counts.get(shape) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'empty';
}

const clock = { secondsOfDay: 0, offsetS: NaN };

function shapeOfOne(text: string, mark: DecimalMark, unitS: number): Shape {
  const date = readDate(text);
  if (date !== null && date.length === text.length) return 'date';
  if (date !== null && readClock(text.slice(date.length).replace(/^(?:[Tt]|,? +|,)/, ''), 0, clock))
    return 'dateTime';
  if (/^[+-]/.test(text) && !Number.isNaN(readOffset(text))) return 'offset';
  const isClock = readClock(text, 0, clock);
  if (isClock && text.includes(':')) return 'clock';
  if (isClock) return 'sixDigits';
  if (/^(?:\d+:)?\d\d?:\d\d/.test(text)) return 'clock';
  const number = parseNumber(text, mark);
  if (Number.isNaN(number)) return 'none';
  return Math.abs(number * unitS) >= EPOCH_FROM ? 'large' : 'small';
}
