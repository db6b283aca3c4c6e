import { describe, expect, it } from 'vitest';
import { bearingWords, decimal } from '../../../core/facility/wording.ts';
import { whole } from '../../../core/units/whole.ts';

describe('numbers are written as they are read', () => {
  it.each([
    [0, '0'],
    [-0.4, '0'],
    [999.5, '1,000'],
    [-1234.4, '−1,234'],
    [1234567, '1,234,567'],
  ])('%f in whole numbers is %s', (value, words) => {
    expect(whole(value)).toBe(words);
  });

  it('decimals that say nothing are left out', () => {
    expect(decimal(12)).toBe('12');
    expect(decimal(11.64)).toBe('11.6');
    expect(decimal(5.2, 2)).toBe('5.2');
    expect(decimal(-0.04)).toBe('0');
  });

  it.each([
    [0, 0, '360'],
    [7.2, 0, '007'],
    [359.6, 0, '360'],
    [359.96, 1, '360.0'],
    [7.25, 2, '007.25'],
    [71, 1, '071.0'],
  ])('a bearing of %f with %i decimals is %s', (bearingDeg, decimals, words) => {
    expect(bearingWords(bearingDeg, decimals)).toBe(words);
  });
});
