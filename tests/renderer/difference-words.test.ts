import { describe, expect, it } from 'vitest';
import { differenceWords } from '../../renderer/plots/plot-of.ts';

describe('a difference in words', () => {
  it('has its sign and as many digits as its unit is read with', () => {
    expect(differenceWords(0.031, 'full scale')).toBe('+0.03');
    expect(differenceWords(-0.25, 'level')).toBe('−0.25');
    expect(differenceWords(-0.104, 'share')).toBe('−10\u00a0points');
    expect(differenceWords(1.26, 'kt')).toBe('+1.3\u00a0kt');
  });

  it('has no sign where it is nothing, or is rounded to nothing', () => {
    expect(differenceWords(0, 'full scale')).toBe('0.00');
    expect(differenceWords(0.0049, 'full scale')).toBe('0.00');
    expect(differenceWords(-0.004, 'level')).toBe('0.00');
    expect(differenceWords(-0.004, 'share')).toBe('0\u00a0points');
    expect(differenceWords(0.04, 'kt')).toBe('0.0\u00a0kt');
    expect(differenceWords(-0.0051, 'full scale')).toBe('−0.01');
  });
});
