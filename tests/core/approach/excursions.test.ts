import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  excursionsOff,
  findExcursions,
  timeOutsideS,
  timesWithinS,
  type Limits,
} from '../../../core/approach/excursions.ts';
import { every, line } from '../numeric/line.ts';

const NEEDLE: Limits = { lower: -0.75, upper: 0.75 };
const found = (value: number[], limits = NEEDLE) => findExcursions([every(10, value)], limits, 0.05);

describe('excursions of a value that may be off', () => {
  const off = (value: number[], half: number[], by: -1 | 0 | 1) =>
    excursionsOff([every(10, value)], [every(10, half)], NEEDLE, 0.05, by);

  it('are wider with it off outward, and narrower inward, at both sides at once', () => {
    const value = [0, 0.8, 0, -0.8, 0];
    const half = [0.1, 0.1, 0.1, 0.1, 0.1];
    // Beyond 0.65, 0.75 and 0.85 of a slope of 0.8 in 10 s, up and down again, twice.
    expect(timeOutsideS(off(value, half, 1))).toBeCloseTo(4 * (0.15 / 0.8) * 10, 9);
    expect(timeOutsideS(off(value, half, 0))).toBeCloseTo(4 * (0.05 / 0.8) * 10, 9);
    expect(off(value, half, -1)).toEqual([]);
    expect(off(value, half, 1).map(({ side, peak }) => [side, Math.round(peak * 100)])).toEqual([
      ['above', 90],
      ['below', -90],
    ]);
  });

  it('follow a half-width that changes', () => {
    // 0.5 + 0 to 0.5 + 0.5 crosses 0.75 half way.
    expect(off([0.5, 0.5], [0, 0.5], 1)).toMatchObject([{ startS: 5, endS: 10, peak: 1 }]);
    expect(timeOutsideS(off([1, 1], [0, 0.5], -1))).toBeCloseTo(5, 9);
  });

  it('of one that is what it says are the plain ones', () => {
    expect(excursionsOff([every(10, [0, 0.8, 0])], [], NEEDLE, 0.05, 1)).toEqual(found([0, 0.8, 0]));
  });
});

describe('findExcursions', () => {
  it('finds crossing times on the straight lines', () => {
    // 0.55 to 0.95 in 10 s crosses 0.75 half way; down again alike.
    const [one] = found([0.55, 0.95, 0.55]);
    expect(one!.startS).toBeCloseTo(5, 9);
    expect(one!.endS).toBeCloseTo(15, 9);
    expect(one!.outsideS).toBeCloseTo(10, 9);
    expect(one).toMatchObject({ peak: 0.95, peakS: 10, side: 'above' });
  });

  it('names the side below, with the sign kept', () => {
    expect(found([-0.55, -0.95, -0.55])).toMatchObject([{ peak: -0.95, peakS: 10, side: 'below' }]);
  });

  it('takes exactly at the limit for inside, and a hair beyond it for outside', () => {
    expect(found([0.75, 0.75, 0.75])).toEqual([]);
    expect(found([0.5, 0.75, 0.5])).toEqual([]);
    expect(found([0.75, 0.7500001, 0.75])).toHaveLength(1);
  });

  it('joins two spells parted only by time near the limit, and counts only the time beyond', () => {
    const [one, ...more] = found([0.65, 0.85, 0.72, 0.95, 0.55]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ peak: 0.95, peakS: 30 });
    expect(one!.outsideS).toBeLessThan(one!.endS - one!.startS);
    // Rising 5 s, falling 0.10 of 0.13, rising 0.20 of 0.23, falling 0.20 of 0.40: by hand.
    expect(one!.outsideS).toBeCloseTo(5 + 100 / 13 + 200 / 23 + 5, 9);
  });

  it('keeps two spells apart when the value came well inside between them', () => {
    expect(found([0.65, 0.85, 0.69, 0.95, 0.55])).toHaveLength(2);
    expect(found([0.85, 0.6, 0.6, 0.72, 0.85])).toHaveLength(2);
    expect(found([0.85, 0.72, 0.6, 0.72, 0.85])).toHaveLength(2);
  });

  it('keeps the deeper of two joined peaks, whichever comes first', () => {
    expect(found([0.95, 0.72, 0.8])).toMatchObject([{ peak: 0.95, peakS: 0 }]);
  });

  it('follows one line across both limits', () => {
    const both = found([-0.95, 0.95]);
    expect(both.map(({ side }) => side)).toEqual(['below', 'above']);
    // 0.2 of 1.9 at each end of 10 s.
    expect(timeOutsideS(both)).toBeCloseTo((2 * 10 * 0.2) / 1.9, 9);
  });

  it('spans no break: outside before it and after it are two', () => {
    const parts = [every(10, [0.9, 0.9]), line([40, 50], [0.9, 0.9])];
    const two = findExcursions(parts, NEEDLE, 0.05);
    expect(two).toHaveLength(2);
    expect(timeOutsideS(two)).toBe(20);
  });

  it('knows limits on one side only', () => {
    expect(found([-2, 2, -2], { lower: null, upper: 1 })).toMatchObject([{ side: 'above' }]);
    expect(found([-2, 2, -2], { lower: -1, upper: null }).map(({ side }) => side)).toEqual([
      'below',
      'below',
    ]);
    expect(found([-2, 2], { lower: null, upper: null })).toEqual([]);
  });

  it('is empty when nothing was recorded', () => {
    expect(findExcursions([], NEEDLE, 0.05)).toEqual([]);
    expect(timeOutsideS([])).toBe(0);
  });
});

describe('timesWithinS', () => {
  it.each([
    ['a line within', [0.2, -0.2], 10],
    ['a line exactly at the limit', [0.75, 0.75], 10],
    ['a line beyond', [0.8, 0.9], 0],
    ['a line beyond on the other side', [-0.8, -0.9], 0],
    ['a line that leaves', [0.7, 0.8], 5],
    ['a line across both limits', [-1.5, 1.5], 5],
  ])('of %s', (_name, value, seconds) =>
    expect(timesWithinS([every(10, value)], [0.75])[0]).toBeCloseTo(seconds, 9),
  );

  it('and the time outside make up the whole', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 2, maxLength: 20 }),
        (value) => {
          const outside = findExcursions([every(10, value)], NEEDLE, 0);
          const wholeS = (value.length - 1) * 10;
          expect(timesWithinS([every(10, value)], [0.75])[0]! + timeOutsideS(outside)).toBeCloseTo(wholeS, 6);
        },
      ),
    );
  });
});
