import { describe, expect, it } from 'vitest';
import { spreadOf } from '../../../core/approach/spread.ts';
import { line } from '../numeric/line.ts';

describe('spreadOf', () => {
  it('integrates the straight lines, so a fix added on a line changes nothing', () => {
    // A line from 0 to 3 in 3 s: mean 3/2, mean square 3, by hand.
    const few = spreadOf([line([10, 13], [0, 3])])!;
    const many = spreadOf([line([10, 10.5, 12, 13], [0, 0.5, 2, 3])])!;
    for (const spread of [few, many]) {
      expect(spread.durationS).toBe(3);
      expect(spread.mean).toBeCloseTo(1.5, 12);
      expect(spread.rms).toBeCloseTo(Math.sqrt(3), 12);
      expect(spread.standardDeviation).toBeCloseTo(Math.sqrt(0.75), 12);
    }
  });

  it('weighs by time over several parts', () => {
    const spread = spreadOf([line([0, 9], [1, 1]), line([50, 51], [-4, -4])])!;
    expect(spread.mean).toBeCloseTo(0.5, 12);
    expect(spread.rms).toBeCloseTo(Math.sqrt((9 + 16) / 10), 12);
    expect(spread).toMatchObject({ peak: -4, peakS: 50, durationS: 10 });
  });

  it('gives the first of two equal peaks, and no spread of a constant', () => {
    const spread = spreadOf([line([0, 1, 2], [0.7, 0.7, 0.7])])!;
    expect(spread.peakS).toBe(0);
    expect(spread.standardDeviation).toBeCloseTo(0, 7);
    expect(spreadOf([line([0, 1, 2], [-2, 2, 0])])).toMatchObject({ peak: -2, peakS: 0 });
    expect(spreadOf([line([0, 1, 2], [2, 0, -2])])).toMatchObject({ peak: 2, peakS: 0 });
  });

  it('is null when nothing was recorded', () => expect(spreadOf([])).toBeNull());
});
