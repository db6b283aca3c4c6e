import { describe, expect, it } from 'vitest';
import { needleExcursions, needleMeasures } from '../../../core/approach/needle-measures.ts';
import { every, line } from '../numeric/line.ts';

describe('needleMeasures', () => {
  it('shares out the time by the straight lines, exactly', () => {
    // Rising from 0 to 1 in 100 s: a quarter of the time within each quarter of scale.
    const measures = needleMeasures([line([0, 100], [0, 1])])!;
    expect(measures.insideS.map((s) => Math.round(s * 1e9) / 1e9)).toEqual([25, 50, 75, 100]);
    expect(measures.spread.mean).toBeCloseTo(0.5, 12);
  });

  it('counts turns of 0.15 and more a minute, on a line a second', () => {
    const value = Array.from({ length: 121 }, (_, i) => 0.2 * Math.sin((2 * Math.PI * i) / 40));
    // Three waves in two minutes turn six times.
    expect(needleMeasures([every(1, value)])!.reversalsPerMinute).toBeCloseTo(3, 9);
    const calm = value.map((v) => v * 0.37);
    expect(needleMeasures([every(1, calm)])!.reversalsPerMinute).toBe(0);
  });

  it('is null when nothing was recorded', () => expect(needleMeasures([])).toBeNull());

  it('finds excursions to both sides', () => {
    const parts = [every(10, [0, 0.9, -0.9])];
    expect(needleExcursions(parts, { lower: -0.75, upper: 0.75 }).map(({ side }) => side)).toEqual([
      'above',
      'below',
    ]);
  });
});
