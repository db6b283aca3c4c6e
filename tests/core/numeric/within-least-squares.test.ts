import { describe, expect, it } from 'vitest';
import { withinLeastSquares } from '../../../core/numeric/within-least-squares.ts';
import type { WithinFit } from '../../../core/numeric/within-least-squares.ts';
import { apart, NEAR, reference } from './school-reference.ts';

/** With a slot for each column. */
function fitOf(
  clusters: readonly number[],
  columns: readonly (readonly number[])[],
  values: readonly number[],
): WithinFit {
  const slots = columns.map((amounts, k) => ({ columns: amounts.map(() => k), amounts }));
  return withinLeastSquares({ clusters, slots, columns: columns.length, values });
}

describe('least squares within clusters', () => {
  it('agrees with least squares with a column for each cluster', () => {
    expect(reference.within.length).toBeGreaterThan(20);
    for (const { clusters, columns, values, coefficients, df, weights, ...expected } of reference.within) {
      const fit = fitOf(clusters, columns, values);
      expect(fit.df).toBe(df);
      for (const [k, coefficient] of coefficients.entries())
        expect(apart(fit.coefficients[k]!, coefficient)).toBeLessThan(NEAR);
      const found = fit.varianceOf(weights);
      expect(apart(found.variance, Math.max(expected.alone, expected.alike))).toBeLessThan(NEAR);
      expect(apart(found.df, Math.min(df, Math.max(1, expected.equalClusters - 1)))).toBeLessThan(NEAR);
    }
    // Each of the two variances is the larger one somewhere.
    expect(new Set(reference.within.map(({ alone, alike }) => alone > alike)).size).toBe(2);
  });

  it('finds what is the same in each cluster, whatever sets the clusters apart', () => {
    const fit = fitOf([0, 0, 0, 1, 1], [[0, 1, 0, 0, 1]], [5, 7, 5, 90, 92]);
    expect(fit.coefficients[0]).toBeCloseTo(2, 12);
    expect(fit).toMatchObject({ dropped: [null], df: 2 });
    expect(fit.varianceOf([1]).variance).toBeCloseTo(0, 12);
  });

  it('drops a column that varies in no cluster, and one that those before it tell', () => {
    const clusters = [0, 0, 0, 1, 1, 1];
    const one = [0, 1, 2, 3, 4, 6];
    const fit = fitOf(
      clusters,
      [[0.1, 0.1, 0.1, 0.3, 0.3, 0.3], one, one.map((x, i) => 2 * x - clusters[i]!), [0, 0, 0, 0, 0, 0]],
      [1, 2, 4, 0, 3, 3],
    );
    expect(fit.dropped.map((dropped) => dropped?.why ?? null)).toEqual([
      'nothing',
      null,
      'told-by-others',
      'nothing',
    ]);
    // Within clusters the third is twice the second, and the first and last are nothing.
    expect(fit.dropped[2]!.told[1]).toBeCloseTo(2, 12);
    expect(fit.dropped[3]!.told).toEqual([0, 0, 0, 0]);
    expect(fit.coefficients.map((coefficient) => coefficient !== 0)).toEqual([false, true, false, false]);
    expect(fit.varianceOf([9, 0, 9, 9]).variance).toBe(0);
  });

  it('takes a factor of several values as one slot, and finds the same', () => {
    const clusters = [0, 0, 0, 0, 1, 1, 1, 1];
    const values = [1, 2, 3, 5, 1, 9, 2, 3];
    const factor = [-1, 0, 1, 1, 0, -1, 1, -1];
    const slots = [{ columns: factor, amounts: null }];
    const dense = [0, 1].map((k) => factor.map((column) => (column === k ? 1 : 0)));
    const [one, other] = [
      withinLeastSquares({ clusters, slots, columns: 2, values }),
      fitOf(clusters, dense, values),
    ];
    expect(one.coefficients).toEqual(other.coefficients);
    expect(one.varianceOf([1, -1])).toEqual(other.varianceOf([1, -1]));
  });

  it('knows an effect that one cluster alone tells with one degree of freedom', () => {
    const clusters = [0, 0, 0, 0, 1, 1, 1, 1];
    const fit = fitOf(clusters, [[0, 0, 1, 1, 0, 0, 0, 0]], [1, 2, 3, 5, 1, 9, 2, 3]);
    expect(fit.varianceOf([1]).df).toBe(1);
    expect(fit.varianceOf([1]).variance).toBeGreaterThan(0);
  });

  it('of no columns and of no rows has nothing', () => {
    expect(fitOf([0, 1], [], [3, 4])).toMatchObject({ coefficients: [], df: 0 });
    expect(fitOf([], [[]], [])).toMatchObject({ coefficients: [0], df: 0 });
  });
});
