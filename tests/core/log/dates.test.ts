import { describe, expect, it } from 'vitest';
import { epochDay, fullYear } from '../../../core/log/calendar.ts';
import { dayOf, decideOrder } from '../../../core/log/date-order.ts';
import { readDate } from '../../../core/log/date-text.ts';

const date = (text: string) => readDate(text)!;

describe('days of the calendar', () => {
  it.each([
    [1970, 1, 1, 0],
    [2000, 2, 29, 11016],
    [2024, 2, 29, 19782],
    [1969, 12, 31, -1],
  ])('%d-%d-%d is day %d', (year, month, day, expected) => {
    expect(epochDay(year, month, day)).toBe(expected);
  });

  it.each([
    [2023, 2, 29],
    [2024, 2, 31],
    [2024, 4, 31],
    [2024, 0, 1],
    [2024, 13, 1],
    [2024, 1, 0],
    [2024, 1, 32],
  ])('%d-%d-%d is no day', (year, month, day) => {
    expect(epochDay(year, month, day)).toBeNaN();
  });

  it('two digits are a year of 1970 to 2069', () => {
    expect([fullYear(0), fullYear(69), fullYear(70), fullYear(99), fullYear(2024)]).toEqual([
      2000, 2069, 1970, 1999, 2024,
    ]);
  });
});

describe('a date as written', () => {
  it.each([
    ['2024-05-01', [2024, 5, 1, '-', 'first', 10]],
    ['2024/5/1 10:00', [2024, 5, 1, '/', 'first', 8]],
    ['01.05.2024', [1, 5, 2024, '.', 'last', 10]],
    ['1/5/24', [1, 5, 24, '/', 'unknown', 6]],
    ['20240501', [2024, 5, 1, '', 'first', 8]],
    ['20240501T101530', [2024, 5, 1, '', 'first', 8]],
  ])('%s is read', (text, expected) => {
    const { first, second, third, separator, yearPlace, length } = date(text);
    expect([first, second, third, separator, yearPlace, length]).toEqual(expected);
  });

  it.each([
    '',
    '2024',
    '2024-05',
    '2024-05/01',
    '202-05-01',
    '2024-05-2024',
    '10:00:00',
    '2024050',
    '202405011',
    '1.5.20245',
  ])('%j is none', (text) => {
    expect(readDate(text)).toBeNull();
  });
});

describe('the order of dates', () => {
  const decide = (texts: string[], wish?: 'ymd' | 'dmy' | 'mdy') => decideOrder(texts.map(date), wish);

  it('a year in front leaves nothing open', () => {
    expect(decide(['2024-05-01'])).toEqual({ order: 'ymd', guessed: false });
    expect(decide([])).toEqual({ order: 'ymd', guessed: false });
  });

  it('a value above 12 anywhere decides', () => {
    expect(decide(['01/02/2024', '13/02/2024'])).toEqual({ order: 'dmy', guessed: false });
    expect(decide(['01/02/2024', '02/13/2024'])).toEqual({ order: 'mdy', guessed: false });
    expect(decide(['99-05-31'])).toEqual({ order: 'ymd', guessed: false });
  });

  it('values decide against the separator and against the user', () => {
    expect(decide(['02.13.2024'])).toEqual({ order: 'mdy', guessed: false });
    expect(decide(['13/02/2024'], 'mdy')).toEqual({ order: 'dmy', guessed: false });
  });

  it('one impossible date does not decide against all others', () => {
    expect(decide(['14/02/2024', '15/02/2024', '02/30/2024'])).toEqual({ order: 'dmy', guessed: false });
  });

  it('else the user decides, then dots mean day first', () => {
    expect(decide(['01/02/2024'], 'mdy')).toEqual({ order: 'mdy', guessed: false });
    expect(decide(['01.02.2024'])).toEqual({ order: 'dmy', guessed: false });
    expect(decide(['01.02.24'])).toEqual({ order: 'dmy', guessed: false });
  });

  it('else day first, or year first between hyphens, is a guess', () => {
    expect(decide(['01/02/2024'])).toEqual({ order: 'dmy', guessed: true });
    expect(decide(['01-02-2024'])).toEqual({ order: 'dmy', guessed: true });
    expect(decide(['01-02-03'])).toEqual({ order: 'ymd', guessed: true });
    expect(decide(['01/02/03'])).toEqual({ order: 'dmy', guessed: true });
  });

  it('no guess is needed when all orders mean the same day', () => {
    expect(decide(['05/05/2024', '06/06/2024'])).toEqual({ order: 'dmy', guessed: false });
  });

  it('a date read in an order is a day, or none', () => {
    expect(dayOf(date('03/02/2024'), 'dmy')).toBe(epochDay(2024, 2, 3));
    expect(dayOf(date('03/02/2024'), 'mdy')).toBe(epochDay(2024, 3, 2));
    expect(dayOf(date('03-02-04'), 'ymd')).toBe(epochDay(2003, 2, 4));
    expect(dayOf(date('2024-02-03'), 'dmy')).toBe(epochDay(2024, 2, 3));
    expect(dayOf(date('13/02/2024'), 'mdy')).toBeNaN();
  });
});
