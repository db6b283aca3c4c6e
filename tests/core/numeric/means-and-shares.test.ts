import { describe, expect, it } from 'vitest';
import { clusteredShare } from '../../../core/numeric/clustered-share.ts';
import { intervalOf, meanOf, welchDifference, withVariance } from '../../../core/numeric/estimate.ts';
import { quantile } from '../../../core/numeric/quantile.ts';
import { studentTQuantile } from '../../../core/numeric/student-t-quantile.ts';
import { superiority } from '../../../core/numeric/superiority.ts';
import { wilsonInterval } from '../../../core/numeric/wilson.ts';
import { apart, NEAR, reference } from './school-reference.ts';

describe("the quantile of Student's t", () => {
  it('is within 1e-9 of the reference, for whole degrees of freedom and others', () => {
    expect(reference.tQuantiles.length).toBeGreaterThan(150);
    for (const { df, probability, quantile } of reference.tQuantiles)
      expect(apart(studentTQuantile(probability, df), quantile), `${probability} of ${df}`).toBeLessThan(
        NEAR,
      );
  });

  it('with many degrees of freedom is that of a normal variable', () =>
    expect(studentTQuantile(0.975, 1e7)).toBeCloseTo(1.959964, 6));
});

describe('the difference of two means', () => {
  it('has the degrees of freedom and the intervals of the reference', () => {
    expect(reference.welch.length).toBeGreaterThan(30);
    for (const { first, second, difference, df, intervals } of reference.welch) {
      const found = welchDifference(first, second);
      expect(apart(found.value, difference)).toBeLessThan(NEAR);
      expect(apart(found.df, df)).toBeLessThan(NEAR);
      for (const { confidence, low, high } of intervals) {
        const interval = intervalOf(found, confidence);
        expect(apart(interval.low, low)).toBeLessThan(NEAR);
        expect(apart(interval.high, high)).toBeLessThan(NEAR);
      }
    }
  });

  it('keeps its degrees of freedom where the other side does not vary', () =>
    expect(welchDifference([1, 2, 3], [5, 5])).toEqual({ value: -3, variance: 1 / 3, df: 2 }));

  it('has an interval of no width where nothing varies', () =>
    expect(intervalOf(welchDifference([2, 2, 2], [1, 1]), 0.95)).toEqual({ low: 1, high: 1 }));

  it('is less sure with something more that is off', () => {
    const mean = meanOf([1, 2, 3]);
    expect(mean).toEqual({ value: 2, variance: 1 / 3, df: 2 });
    // (1/3 + 2/3)² / ((1/3)² / 2 + (2/3)² / 4) = 1 / (1/18 + 1/9) = 6.
    const more = withVariance(mean, { variance: 2 / 3, df: 4 });
    expect(more.variance).toBeCloseTo(1, 12);
    expect(more.df).toBeCloseTo(6, 12);
  });
});

describe('the interval of a share', () => {
  it("is Wilson's, within 1e-9 of the reference", () => {
    expect(reference.wilson.length).toBeGreaterThan(50);
    for (const { hits, trials, reach, low, high } of reference.wilson) {
      const found = wilsonInterval(hits / trials, trials, reach);
      expect(apart(found.low, low), `${hits} of ${trials}`).toBeLessThan(NEAR);
      expect(apart(found.high, high), `${hits} of ${trials}`).toBeLessThan(NEAR);
    }
  });

  it('over clusters is that of the reference, which leaves each out', () => {
    expect(reference.shares.length).toBeGreaterThan(20);
    for (const { clusters, effectiveTrials, low, high } of reference.shares) {
      const found = clusteredShare(clusters, 0.95);
      expect(apart(found.effectiveTrials, effectiveTrials)).toBeLessThan(NEAR);
      expect(apart(found.interval!.low, low)).toBeLessThan(NEAR);
      expect(apart(found.interval!.high, high)).toBeLessThan(NEAR);
    }
  });

  it('counts trials of clusters that do not differ one by one', () => {
    const clusters = [1, 1, 1, 1].map(() => ({ hits: 2, trials: 4 }));
    expect(clusteredShare(clusters, 0.95)).toMatchObject({ share: 0.5, effectiveTrials: 16 });
  });

  it('counts four clusters that are all hits or none as three trials', () => {
    const clusters = [4, 0, 4, 0].map((hits) => ({ hits, trials: 4 }));
    const { share, effectiveTrials, interval } = clusteredShare(clusters, 0.95);
    // Without one of them 4/12 or 8/12: variance 3/4 · 4 · (1/6)² = 1/12, and 1/64 of independent trials.
    expect(share).toBe(0.5);
    expect(effectiveTrials).toBeCloseTo(3, 12);
    expect(interval!.low).toBeLessThan(0.1);
    expect(interval!.high).toBeGreaterThan(0.9);
  });

  it('knows no more than one trial a cluster where all are hits', () => {
    const clusters = [5, 5, 5].map((trials) => ({ hits: trials, trials }));
    const { effectiveTrials, interval } = clusteredShare(clusters, 0.95);
    expect(effectiveTrials).toBe(3);
    expect(interval!.high).toBe(1);
    expect(interval!.low).toBeLessThan(0.3);
  });

  it('of one cluster has none', () =>
    expect(clusteredShare([{ hits: 3, trials: 4 }], 0.95)).toMatchObject({ share: 0.75, interval: null }));
});

describe('the probability of superiority', () => {
  it('is U over all pairs, as in the reference', () => {
    expect(reference.superiority.length).toBeGreaterThan(20);
    for (const { first, second, chance } of reference.superiority)
      expect(apart(superiority(first, second).chance, chance)).toBeLessThan(NEAR);
  });

  it('counts the pairs', () =>
    expect(superiority([1, 2], [0, 1, 3])).toEqual({ chance: 3.5 / 6, above: 3, equal: 1, below: 2 }));
});

describe('the quantile of a list', () => {
  it('is that of the reference', () => {
    for (const { sorted, share, quantile: expected } of reference.quantiles)
      expect(apart(quantile(sorted, share), expected)).toBeLessThan(NEAR);
  });
});
