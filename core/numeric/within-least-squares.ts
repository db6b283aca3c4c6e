import type { VariancePart } from './estimate.ts';

export interface WithinFit {
  /** One a column, each with all others held; 0 for one that was dropped. */
  readonly coefficients: readonly number[];
  /** Of each column why it was dropped; null where it was not. */
  readonly dropped: readonly (Dropped | null)[];
  /** Degrees of freedom of the residuals: rows less clusters less the columns kept. */
  readonly df: number;
  /** Of a sum of coefficients, each times its weight; weights of dropped columns are passed over. */
  varianceOf(weights: readonly number[]): VariancePart;
}

export interface Dropped {
  readonly why: 'varies-in-no-cluster' | 'told-by-others';
  /** How much of each column within clusters adds up to this one; all 0 where it varies in none. */
  readonly told: readonly number[];
}

/** Below this share of its own length a column is what those before it already tell. */
const LEAST_OWN = 1e-7;

/**
 * Least squares within clusters: from value and columns the mean of each row's cluster is taken away, so that
 * whatever sets one cluster apart from another has no part in the coefficients. Gram and Schmidt's steps in the order
 * of the columns (Å. Björck 1967, Solving linear least squares problems by Gram-Schmidt orthogonalization).
 *
 * @param clusters of each row its cluster, counted from 0 with none left out
 * @param columns each as long as the rows
 */
export function withinLeastSquares(
  clusters: readonly number[],
  columns: readonly ArrayLike<number>[],
  values: readonly number[],
): WithinFit {
  const count = new Set(clusters).size;
  const basis = orthonormal(columns, (column) => withoutMeans(clusters, count, column));
  const residuals = withoutMeans(clusters, count, values);
  const along = basis.vectors.map((vector) => takeAway(residuals, vector));
  const df = values.length - count - basis.vectors.length;
  return {
    coefficients: coefficientsOf(basis, along, columns.length),
    dropped: basis.dropped,
    df,
    varianceOf: (weights) => varianceOf(rowWeights(basis, weights, values.length), residuals, clusters, df),
  };
}

function withoutMeans(clusters: readonly number[], count: number, values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(count);
  const rows = new Float64Array(count);
  for (let i = 0; i < clusters.length; i++) {
    sums[clusters[i]!]! += values[i]!;
    rows[clusters[i]!]!++;
  }
  return Float64Array.from(clusters, (cluster, i) => values[i]! - sums[cluster]! / rows[cluster]!);
}

interface Basis {
  /** Of length 1, at right angles to one another. */
  readonly vectors: readonly Float64Array[];
  /** Of each kept column, in order, how far it goes along each vector up to its own. */
  readonly triangle: readonly (readonly number[])[];
  /** Which column each stands for. */
  readonly kept: readonly number[];
  readonly dropped: WithinFit['dropped'];
}

type Kept = Pick<Basis, 'triangle' | 'kept'>;

function orthonormal(
  columns: readonly ArrayLike<number>[],
  withoutMeans: (column: ArrayLike<number>) => Float64Array,
): Basis {
  const vectors: Float64Array[] = [];
  const triangle: number[][] = [];
  const kept: number[] = [];
  const drop = (why: Dropped['why'], along: readonly number[]): Dropped => ({
    why,
    told: coefficientsOf({ triangle, kept }, along, columns.length),
  });
  const dropped = columns.map((column, i) => {
    const rest = withoutMeans(column);
    const within = lengthOf(rest);
    if (within <= LEAST_OWN * lengthOf(column)) return drop('varies-in-no-cluster', []);
    const along = vectors.map((vector) => takeAway(rest, vector));
    const own = lengthOf(rest);
    if (own <= LEAST_OWN * within) return drop('told-by-others', along);
    vectors.push(rest.map((value) => value / own));
    triangle.push([...along, own]);
    kept.push(i);
    return null;
  });
  return { vectors, triangle, kept, dropped };
}

function lengthOf(column: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < column.length; i++) sum += column[i]! * column[i]!;
  return Math.sqrt(sum);
}

/** Takes from a column what goes along a vector of length 1, and tells how much that was. */
function takeAway(column: Float64Array, vector: Float64Array): number {
  let along = 0;
  for (let i = 0; i < column.length; i++) along += column[i]! * vector[i]!;
  for (let i = 0; i < column.length; i++) column[i]! -= along * vector[i]!;
  return along;
}

/** From how far something goes along the first vectors to how much of each column adds up to it, the last one first. */
function coefficientsOf({ triangle, kept }: Kept, along: readonly number[], columns: number): number[] {
  const coefficients = Array.from({ length: columns }, () => 0);
  for (let j = along.length - 1; j >= 0; j--) {
    let rest = along[j]!;
    for (let k = j + 1; k < along.length; k++) rest -= triangle[k]![j]! * coefficients[kept[k]!]!;
    coefficients[kept[j]!] = rest / triangle[j]![j]!;
  }
  return coefficients;
}

/** What each row's value counts in a sum of coefficients, which is linear in the values. */
function rowWeights(
  { vectors, triangle, kept }: Basis,
  weights: readonly number[],
  rows: number,
): Float64Array {
  const sum = new Float64Array(rows);
  const parts: number[] = [];
  for (const [j, vector] of vectors.entries()) {
    const known = parts.reduce((sum, part, k) => sum + triangle[j]![k]! * part, 0);
    const part = (weights[kept[j]!]! - known) / triangle[j]![j]!;
    parts.push(part);
    if (part !== 0) for (let i = 0; i < rows; i++) sum[i]! += part * vector[i]!;
  }
  return sum;
}

/**
 * The larger of two: as if residuals were independent, and as clusters make them alike (K.-Y. Liang, S. L. Zeger 1986,
 * from memory). Few clusters, or a few that weigh most, know less than their number says: what counts is how many of
 * equal weight there would be (after A. V. Carter, K. T. Schnepel, D. G. Steigerwald 2017, from memory, in its simplest
 * form), in the usual factor and in the degrees of freedom.
 */
function varianceOf(
  weights: Float64Array,
  residuals: Float64Array,
  clusters: readonly number[],
  df: number,
): VariancePart {
  const scores = new Float64Array(clusters.length);
  const squares = new Float64Array(clusters.length);
  let residualSquares = 0;
  for (let i = 0; i < residuals.length; i++) {
    scores[clusters[i]!]! += weights[i]! * residuals[i]!;
    squares[clusters[i]!]! += weights[i]! * weights[i]!;
    residualSquares += residuals[i]! * residuals[i]!;
  }
  const square = sumOf(squares);
  if (square === 0) return { variance: 0, df };
  const alone = (residualSquares / df) * square;
  const equal = square ** 2 / sumOf(squares.map((one) => one * one));
  const alike = equal > 1 ? (sumOf(scores.map((score) => score * score)) * equal) / (equal - 1) : 0;
  return { variance: Math.max(alone, alike), df: Math.min(df, Math.max(1, equal - 1)) };
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
