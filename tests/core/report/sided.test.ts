import { describe, expect, it } from 'vitest';
import { sided, sidedInDots } from '../../../core/report/sided.ts';

describe('a needle as it is said aloud', () => {
  it.each([
    [0.3, 'localizer', 2, 'right 0.6'],
    [-0.3, 'localizer', 5, 'left 1.5'],
    [0.5, 'glidepath', 2, 'high 1.0'],
    [-1.2, 'glidepath', 2, 'low 2.4'],
    [0.02, 'localizer', 2, 'on course'],
    [-0.009, 'glidepath', 5, 'on path'],
    [0.025, 'localizer', 2, 'right 0.1'],
  ] as const)('%d of full scale, %s, %d dots: %s', (fullScale, axis, dots, words) => {
    expect(sidedInDots(fullScale, axis, dots)).toBe(words);
  });

  it('is nothing where it is not known, and a fraction of full scale to a hundredth', () => {
    expect([sided(null, 'localizer'), sidedInDots(null, 'glidepath', 2)]).toEqual(['', '']);
    expect([sided(0.623, 'localizer'), sided(-0.3, 'glidepath'), sided(-0.004, 'localizer')]).toEqual([
      'right 0.62',
      'low 0.30',
      'on course',
    ]);
  });
});
