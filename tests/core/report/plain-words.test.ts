import { describe, expect, it } from 'vitest';
import { dayAndClock, directionWords, duration } from '../../../core/report/plain-words.ts';
import { whole } from '../../../core/units/whole.ts';
import { sided } from '../../../core/report/sided.ts';
import { utcText } from '../../../core/units/utc.ts';

it.each([
  [1234.5, '1,235'],
  [999, '999'],
  [-1234567, '−1,234,567'],
  [-0.2, '0'],
])('whole(%d) is %s', (value, text) => expect(whole(value)).toBe(text));

it.each([
  [47.6, '48 s'],
  [120, '2 min'],
  [125, '2 min 5 s'],
  [7200, '2 h'],
  [7260, '2 h 1 min'],
])('duration(%d) is %s', (value, text) => expect(duration(value)).toBe(text));

it.each([
  [4.6, '005°'],
  [72, '072°'],
  [0, '360°'],
  [0.4, '360°'],
  [359.6, '360°'],
  [360, '360°'],
])('directionWords(%d) is %s', (deg, text) => expect(directionWords(deg)).toBe(text));

it('dayAndClock reads a time as a person does', () => {
  expect(dayAndClock('2026-05-04T14:02:11.5Z')).toEqual({ day: '4 May 2026', clock: '14:02:11' });
});

describe('sided', () => {
  it.each([
    [0.62, 'localizer', 'right 0.62'],
    [-0.62, 'localizer', 'left 0.62'],
    [0.4, 'glidepath', 'high 0.40'],
    [-0.004, 'glidepath', 'on path'],
    [0, 'localizer', 'on course'],
    [null, 'localizer', ''],
  ] as const)('%s on the %s reads "%s"', (value, axis, text) => expect(sided(value, axis)).toBe(text));
});

describe('utcText', () => {
  it('has milliseconds only where there are any', () => {
    expect(utcText(1777626000)).toBe('2026-05-01T09:00:00Z');
    expect(utcText(1777626000.25)).toBe('2026-05-01T09:00:00.250Z');
  });
  it('is null for what is no time', () => {
    expect(utcText(NaN)).toBeNull();
    expect(utcText(1e13)).toBeNull();
  });
});
