/** R of Rᵀ R, for those columns that are kept. */
export interface Triangle {
  /** Of each kept column its parts along the kept ones before it, and its own. */
  readonly parts: readonly (readonly number[])[];
  /** Which column each of them is. */
  readonly kept: readonly number[];
  readonly columns: number;
}

/** A column that is nothing, or that others add up to. */
export interface Dropped {
  readonly why: 'nothing' | 'told-by-others';
  /** Of each column, how much of it adds up to this one; all 0 where it is nothing. */
  readonly told: readonly number[];
}

/** Below this share of the square of its length a column is rounding. */
const LEAST_OWN = 1e-10;

/**
 * Cholesky's triangle of the products of columns, taken in their order; a column is dropped that is nothing, or that
 * those before it add up to.
 *
 * @param square products of each two columns, row by row
 * @param squares of each column, of what it was before most of it may have been taken away
 */
export function droppingCholesky(
  square: ArrayLike<number>,
  squares: ArrayLike<number>,
): { readonly triangle: Triangle; readonly dropped: readonly (Dropped | null)[] } {
  const columns = squares.length;
  const parts: number[][] = [];
  const kept: number[] = [];
  const triangle = { parts, kept, columns };
  const dropped = Array.from(squares, (before, column): Dropped | null => {
    const whole = square[column * columns + column]!;
    if (whole <= LEAST_OWN * before) return { why: 'nothing', told: solvedUp(triangle, []) };
    const along = solvedDown(
      triangle,
      kept.map((other) => square[column * columns + other]!),
    );
    const own = along.reduce((left, part) => left - part * part, whole);
    if (own <= LEAST_OWN * whole) return { why: 'told-by-others', told: solvedUp(triangle, along) };
    parts.push([...along, Math.sqrt(own)]);
    kept.push(column);
    return null;
  });
  return { triangle, dropped };
}

/** x of Rᵀ x = b; b and x have as many numbers as columns are kept. */
export function solvedDown({ parts }: Triangle, b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [j, row] of parts.entries()) {
    let rest = b[j]!;
    for (let k = 0; k < j; k++) rest -= row[k]! * x[k]!;
    x.push(rest / row[j]!);
  }
  return x;
}

/** x of R x = b, at the places of all columns, 0 where none is kept; b may be of the first kept ones alone. */
export function solvedUp({ parts, kept, columns }: Triangle, b: readonly number[]): number[] {
  const x = Array.from({ length: columns }, () => 0);
  for (let j = b.length - 1; j >= 0; j--) {
    let rest = b[j]!;
    for (let k = j + 1; k < b.length; k++) rest -= parts[k]![j]! * x[kept[k]!]!;
    x[kept[j]!] = rest / parts[j]![j]!;
  }
  return x;
}
