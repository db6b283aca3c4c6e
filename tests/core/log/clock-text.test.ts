import { describe, expect, it } from 'vitest';
import { readClock, readOffset } from '../../../core/log/clock-text.ts';

function clockOf(text: string, from = 0): [number, number] | null {
  const clock = { secondsOfDay: -1, offsetS: -1 };
  return readClock(text, from, clock) ? [clock.secondsOfDay, clock.offsetS] : null;
}

describe('a time of day', () => {
  it.each([
    ['10:15:30', 36930, NaN],
    ['00:00:00', 0, NaN],
    ['23:59:59', 86399, NaN],
    ['23:59:60', 86400, NaN],
    ['10:15:30.25', 36930.25, NaN],
    ['10:15:30,5', 36930.5, NaN],
    ['10:15:30:500', 36930.5, NaN],
    ['10:15:30Z', 36930, 0],
    ['10:15:30.25Z', 36930.25, 0],
    ['10:15:30z', 36930, 0],
    ['10:15:30 UTC', 36930, 0],
    ['10:15:30+02:00', 36930, 7200],
    ['10:15:30-0330', 36930, -12600],
    ['10:15:30.5+02', 36930.5, 7200],
    ['10:15:30 UTC+2', 36930, 7200],
    ['9:05', 32700, NaN],
    ['9:05:07', 32707, NaN],
    ['10:15Z', 36900, 0],
    ['101530', 36930, NaN],
    ['91530.5', 33330.5, NaN],
    ['101530Z', 36930, 0],
    ['10:15:30 AM', 36930, NaN],
    ['12:00:00 AM', 0, NaN],
    ['12:00:00 pm', 43200, NaN],
    ['1:05:00 p.m.', 47100, NaN],
    ['01:05 PM', 47100, NaN],
  ])('%s is %d seconds, offset %d', (text, secondsOfDay, offsetS) => {
    expect(clockOf(text)).toEqual([secondsOfDay, offsetS]);
  });

  it.each([
    '',
    '24:00:00',
    '10:60:00',
    '10:15:61',
    '25:00',
    '10',
    'noon',
    '13:00:00 PM',
    '0:30 AM',
    '10:15:30 north',
    '10:15:30.5.5',
    '1015',
    '10:15:',
    '10-15-30',
  ])('%j is none', (text) => {
    expect(clockOf(text)).toBeNull();
  });

  it('is read from a place in a longer text', () => {
    expect(clockOf('2024-05-01T10:15:30Z', 11)).toEqual([36930, 0]);
    expect(clockOf('2024-05-01T9:15', 11)).toEqual([33300, NaN]);
  });
});

describe('an offset from UTC', () => {
  it.each([
    ['+02:00', 7200],
    ['-03:30', -12600],
    ['-0330', -12600],
    ['2', 7200],
    ['-5', -18000],
    ['-5.5', -19800],
    ['+5,75', 20700],
    ['02:00:00', 7200],
    ['0', 0],
    ['+14:00', 50400],
  ])('%s is %d seconds', (text, seconds) => {
    expect(readOffset(text)).toBe(seconds);
  });

  it.each(['', '+16', 'CEST', '+2:0', '7200'])('%j is none', (text) => {
    expect(readOffset(text)).toBeNaN();
  });
});
