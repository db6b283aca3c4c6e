import { droppingCholesky, solvedDown, solvedUp, type Dropped } from './dropping-cholesky.ts';
import type { VariancePart } from './estimate.ts';
import {
  withinProducts,
  type ClusteredRows,
  type ClusterProducts,
  type WithinProducts,
} from './within-products.ts';

export interface WithinFit {
  /** One a column, each with all others held; 0 for one that was dropped. */
  readonly coefficients: readonly number[];
  /** Of each column why it was dropped, `nothing` where it varies in no cluster; null where it was not. */
  readonly dropped: readonly (Dropped | null)[];
  /** Degrees of freedom of the residuals: rows less clusters less the columns kept. */
  readonly df: number;
  /** Of a sum of coefficients, each times its weight; weights of dropped columns are passed over. */
  varianceOf(weights: readonly number[]): VariancePart;
}

/**
 * Least squares within clusters: from values and columns the mean of each row's cluster is taken away, so that whatever
 * sets one cluster apart from another has no part in the coefficients. By the normal equations, for columns of small
 * numbers; a column is dropped that those before it already tell.
 */
export function withinLeastSquares(rows: ClusteredRows): WithinFit {
  const products = withinProducts(rows);
  const { triangle, dropped } = droppingCholesky(products.total.square, products.columnSquares);
  const ofKept = (all: ArrayLike<number>) => triangle.kept.map((column) => all[column]!);
  const along = solvedDown(triangle, ofKept(products.total.withValues));
  const coefficients = solvedUp(triangle, along);
  const df = rows.values.length - products.clusters.length - triangle.kept.length;
  const residuals = along.reduce((left, one) => left - one * one, products.valueSquares);
  return {
    coefficients,
    dropped,
    df,
    varianceOf: (weights) => {
      const contrast = solvedUp(triangle, solvedDown(triangle, ofKept(weights)));
      return contrastVariance(contrast, coefficients, products, Math.max(0, residuals) / df, df);
    },
  };
}

/**
 * The larger of two: as if residuals were independent, and as clusters make them alike (K.-Y. Liang, S. L. Zeger 1986,
 * from memory). Few clusters, or a few that weigh most, know less than their number says: what counts is how many of
 * equal weight there would be (after A. V. Carter, K. T. Schnepel, D. G. Steigerwald 2017, from memory, in its simplest
 * form), in the usual factor and in the degrees of freedom.
 *
 * @param contrast how much of each column makes up the weights of the rows
 */
function contrastVariance(
  contrast: readonly number[],
  coefficients: readonly number[],
  { clusters }: Pick<WithinProducts, 'clusters'>,
  residualVariance: number,
  df: number,
): VariancePart {
  const used = contrast.flatMap((amount, column) => (amount === 0 ? [] : [column]));
  let square = 0;
  let squares = 0;
  let scores = 0;
  for (const cluster of clusters) {
    const { weight, score } = within(cluster, contrast, coefficients, used);
    square += weight;
    squares += weight * weight;
    scores += score * score;
  }
  if (square === 0) return { variance: 0, df };
  const equal = square ** 2 / squares;
  const alike = equal > 1 ? (scores * equal) / (equal - 1) : 0;
  return {
    variance: Math.max(residualVariance * square, alike),
    df: Math.min(df, Math.max(1, equal - 1)),
  };
}

/** The squares of a cluster's row weights, and what its residuals come to with these weights. */
function within(
  { square, withValues }: ClusterProducts,
  contrast: readonly number[],
  coefficients: readonly number[],
  used: readonly number[],
): { weight: number; score: number } {
  let weight = 0;
  let score = 0;
  for (const a of used) {
    score += contrast[a]! * withValues[a]!;
    for (let b = 0; b < contrast.length; b++) {
      const product = contrast[a]! * square[a * contrast.length + b]!;
      weight += product * contrast[b]!;
      score -= product * coefficients[b]!;
    }
  }
  return { weight, score };
}
