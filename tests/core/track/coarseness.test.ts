import { describe, expect, it } from 'vitest';
import { coarseHeights, coarsePositions } from '../../../core/track/coarseness.ts';

const every = (step: number, from = 1000) => Float64Array.from({ length: 20 }, (_, i) => (from + i) * step);

describe('coarsePositions', () => {
  it.each([
    ['0.0001°', 0.0001],
    ["0.01'", 1 / 6000],
    ['1"', 1 / 3600],
    ['0.001°', 0.001],
    ["0.1'", 1 / 600],
    ['0.01°', 0.01],
  ])('names a rounding to %s', (words, step) => {
    const [found] = coarsePositions(every(step, 1001), every(step, 2003));
    expect(found).toMatchObject({ code: 'position-coarse', severity: 'warning', count: 20 });
    expect(found!.message).toContain(words);
  });

  it('says nothing of five decimals, or when only one of the two is coarse', () => {
    expect(coarsePositions(every(0.00001, 4_700_001), every(0.00001, 800_003))).toEqual([]);
    expect(coarsePositions(every(0.001), every(0.00001, 800_003))).toEqual([]);
  });
});

describe('coarseHeights', () => {
  it('names a transponder by its steps', () => {
    expect(coarseHeights(every(100, 7))[0]!.message).toContain('100 ft');
    expect(coarseHeights(every(25, 7))[0]!.message).toContain('25 ft');
  });
  it('names a phone that rounds to ten metres', () => {
    expect(coarseHeights(every(10 / 0.3048, 7))[0]!.message).toContain('10 m');
  });
  it('passes whole feet and whole metres, and missing heights say nothing', () => {
    expect(coarseHeights(every(1))).toEqual([]);
    expect(coarseHeights(every(1 / 0.3048))).toEqual([]);
    expect(coarseHeights(Float64Array.of(NaN, 100, 200))).toHaveLength(1);
    expect(coarseHeights(Float64Array.of(NaN, 103, 200))).toEqual([]);
  });
});
