import { describe, expect, it } from 'vitest';
import { bandWords, scaleWords, seconds } from '../../../core/standard/words.ts';

describe('limits and times in words', () => {
  it.each([
    [0.3, 'less than 1 s'],
    [0.99, 'less than 1 s'],
    [1, '1 s'],
    [4.4, '4 s'],
    [4.5, '5 s'],
  ])('%f s are said %s', (s, said) => {
    expect(seconds(s)).toBe(said);
  });

  it.each([
    [0.25, '¼ scale'],
    [0.5, '½ scale'],
    [0.75, '¾ scale'],
    [1, 'full scale'],
    [0.6, '0.6 scale'],
  ])('%f of full scale is said %s', (fullScale, said) => {
    expect(scaleWords(fullScale)).toBe(said);
  });

  it.each([
    [-10, 10, '±10 kt'],
    [-5, 10, '−5/+10 kt'],
    [0, 20, '−0/+20 kt'],
    [5, 20, '+5/+20 kt'],
    [-20, -5, '−20/−5 kt'],
    [-20, 0, '−20/+0 kt'],
    [null, 1000, '+1000 kt'],
    [-5, null, '−5 kt'],
  ])('from %s to %s is said %s', (lower, upper, said) => {
    expect(bandWords(lower, upper, 'kt')).toBe(said);
  });
});
