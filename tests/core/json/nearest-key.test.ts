import { describe, expect, it } from 'vitest';
import { nearestKey } from '../../../core/json/nearest-key.ts';

const KEYS = ['angleDeg', 'thresholdCrossingHeightFt', 'antenna', 'fullScaleDeg'];

describe('a mistyped key is led back to the one that was meant', () => {
  it.each([
    ['angelDeg', 'angleDeg'],
    ['AngleDEG', 'angleDeg'],
    ['angle', 'angleDeg', false],
    ['anglDg', 'angleDeg'],
    ['antena', 'antenna'],
    ['fullscale', 'fullScaleDeg'],
    ['thresholdCrossingHeight', 'thresholdCrossingHeightFt'],
  ])('%s', (typed, meant, near = true) => {
    expect(nearestKey(typed, KEYS)).toBe(near ? meant : null);
  });

  it('of two near keys the nearer is taken', () => {
    expect(nearestKey('courseTrueDeg2', ['courseTreeDeg', 'courseTrueDeg'])).toBe('courseTrueDeg');
  });

  it('nothing near, or no keys at all, gives nothing', () => {
    expect(nearestKey('colour', KEYS)).toBeNull();
    expect(nearestKey('x', [])).toBeNull();
  });

  it('two slips are forgiven in a short key, three are not', () => {
    expect(nearestKey('nxxe', ['name'])).toBe('name');
    expect(nearestKey('xxxe', ['name'])).toBeNull();
  });

  it('a swapped pair is one slip', () => {
    expect(nearestKey('abdcfe', ['abcdef'])).toBe('abcdef');
    expect(nearestKey('badcfe', ['abcdef'])).toBeNull();
  });
});
