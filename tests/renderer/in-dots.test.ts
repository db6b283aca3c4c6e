import { describe, expect, it } from 'vitest';
import { inDots } from '../../renderer/views/in-dots.ts';

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
    expect(inDots(fullScale, axis, dots)).toBe(words);
  });
});
