import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../core/numeric/normal-quantile.ts';
import { fewestForInterval, kendallSide, theilSen } from '../../../core/numeric/theil-sen.ts';

interface Reference {
  readonly slopes: readonly {
    readonly lessons: number[];
    readonly values: number[];
    readonly confidence: number;
    readonly slope: number;
    readonly interval: { readonly low: number; readonly high: number } | null;
  }[];
  readonly quantiles: readonly { readonly probability: number; readonly quantile: number }[];
}

/** By scipy, see `tests/reference/progress.py`. */
const reference = JSON.parse(
  readFileSync(new URL('../../reference/progress-slopes.json', import.meta.url), 'utf8'),
) as Reference;

describe('the slope of Theil and Sen', () => {
  it('is within 1e-9 of the reference, and so is its interval, or there is none in either', () => {
    expect(reference.slopes.length).toBeGreaterThan(200);
    for (const { lessons, values, confidence, slope, interval } of reference.slopes) {
      const found = theilSen(lessons, values, confidence);
      const where = `${JSON.stringify(values)} at ${confidence}`;
      expect(Math.abs(found.slope - slope), where).toBeLessThan(1e-9);
      expect(found.interval === null, where).toBe(interval === null);
      if (interval === null) continue;
      expect(Math.abs(found.interval!.low - interval.low), where).toBeLessThan(1e-9);
      expect(Math.abs(found.interval!.high - interval.high), where).toBeLessThan(1e-9);
    }
  });

  it('has no interval where the few slopes hold less than the confidence says', () => {
    // Three values rise by chance in one of six orders, and fall in another.
    expect(theilSen([0, 1, 2], [1, 2, 3], 0.95)).toEqual({ slope: 1, interval: null });
    expect(fewestForInterval(0.95)).toBe(5);
    const values = [1, 2, 3, 4, 5];
    expect(theilSen([0, 1, 2, 3, 4], values, 0.95).interval).toEqual({ low: 1, high: 1 });
    expect(theilSen([0, 1, 2, 3, 4], values, 0.99).interval).toBeNull();
  });

  it('is not moved by one value that is far off', () => {
    const x = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    const y = x.map((lesson) => (lesson === 4 ? 90 : 2 * lesson));
    expect(theilSen(x, y, 0.95).slope).toBe(2);
  });

  it('of equal values is 0, and so are both ends', () => {
    expect(theilSen([0, 1, 2, 3], [1, 1, 1, 1], 0.95)).toEqual({ slope: 0, interval: { low: 0, high: 0 } });
  });
});

describe('the quantile of a normal variable', () => {
  it('is within 1e-9 of the reference', () => {
    for (const { probability, quantile } of reference.quantiles)
      expect(Math.abs(normalQuantile(probability) - quantile), String(probability)).toBeLessThan(1e-9);
  });
});

describe('the side of a slope with many equal values', () => {
  const sOf = (y: readonly number[]) =>
    y.reduce((sum, a, i) => sum + y.slice(i + 1).reduce((part, b) => part + Math.sign(b - a), 0), 0);

  /** Every order of the values, each as often as it can come about. */
  function ordersOf(values: readonly number[]): number[][] {
    if (values.length === 0) return [[]];
    return values.flatMap((value, i) =>
      ordersOf(values.filter((_, j) => j !== i)).map((others) => [value, ...others]),
    );
  }

  it('is said by no series of up to 7 that 5 % of the orders of its values would make look so', () => {
    let said = 0;
    for (let count = 3; count <= 7; count++)
      // Each multiset of three values once; all of its orders are looked at.
      for (let ones = 0; ones <= count; ones++)
        for (let twos = 0; ones + twos <= count; twos++) {
          const values = Array.from({ length: count }, (_, i) => (i < ones ? 1 : i < ones + twos ? 2 : 0));
          const orders = ordersOf(values);
          const called = orders.filter((order) => kendallSide(order, 0.95) !== 0);
          said += called.length;
          const least = Math.min(...called.map((order) => Math.abs(sOf(order))));
          const asFar = orders.filter((order) => Math.abs(sOf(order)) >= least);
          expect(asFar.length / orders.length).toBeLessThanOrEqual(0.05);
        }
    expect(said).toBeGreaterThan(100);
  }, 60_000);

  it('is up where everything later is higher, down where it is lower, and 0 where all are equal', () => {
    expect(kendallSide([0, 0, 0, 1, 1, 1, 1, 1, 1, 1], 0.95)).toBe(1);
    expect(kendallSide([1, 1, 1, 0, 0, 0, 0, 0, 0, 0], 0.95)).toBe(-1);
    expect(kendallSide([1, 1, 1, 1, 1, 1], 0.95)).toBe(0);
  });
});
