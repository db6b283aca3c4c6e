/**
 * Of each row one column and what it has there; every other column of the slot has 0, and all where the column is −1.
 * A factor of many values, each with a column of its own, is one slot.
 */
export interface Slot {
  readonly columns: ArrayLike<number>;
  /** Null: 1 in each row. */
  readonly amounts: ArrayLike<number> | null;
}

/** Rows of a regression, each of one cluster. */
export interface ClusteredRows {
  /** Of each row, counted from 0 with none left out. */
  readonly clusters: ArrayLike<number>;
  /** The columns of each come after those of the slots before it. */
  readonly slots: readonly Slot[];
  /** How many columns the slots have together. */
  readonly columns: number;
  readonly values: ArrayLike<number>;
}

/** Sums over the rows of a cluster, from whose columns and values its means were taken away. */
export interface ClusterProducts {
  /** Of each two columns, row by row of a square. */
  readonly square: Float64Array;
  /** Of each column with the values. */
  readonly withValues: Float64Array;
}

export interface WithinProducts {
  readonly clusters: readonly ClusterProducts[];
  /** Of all clusters. */
  readonly total: ClusterProducts;
  /** Of the values with themselves. */
  readonly valueSquares: number;
  /** Of each column with itself, without anything taken away. */
  readonly columnSquares: Float64Array;
}

export function withinProducts(rows: ClusteredRows): WithinProducts {
  const clusters = clusterMeans(rows).map((mean) => ({ ...mean, ...empty(rows.columns) }));
  const columnSquares = new Float64Array(rows.columns);
  let valueSquares = 0;
  for (let i = 0; i < rows.values.length; i++) {
    const cluster = clusters[rows.clusters[i]!]!;
    const value = rows.values[i]! - cluster.valueMean;
    valueSquares += value * value;
    addRow(rows, i, value, cluster, columnSquares);
  }
  const total = empty(rows.columns);
  for (const cluster of clusters) {
    takeMeansAway(cluster, rows.columns);
    for (let k = 0; k < total.square.length; k++) total.square[k]! += cluster.square[k]!;
    for (let k = 0; k < rows.columns; k++) total.withValues[k]! += cluster.withValues[k]!;
  }
  return { clusters, total, valueSquares, columnSquares };
}

interface ClusterSums extends ClusterProducts {
  readonly rows: number;
  readonly valueMean: number;
  /** Of each column. */
  readonly sums: Float64Array;
}

function empty(columns: number): Pick<ClusterSums, 'square' | 'withValues' | 'sums'> {
  return {
    square: new Float64Array(columns * columns),
    withValues: new Float64Array(columns),
    sums: new Float64Array(columns),
  };
}

function clusterMeans({ clusters, values }: ClusteredRows): Pick<ClusterSums, 'rows' | 'valueMean'>[] {
  const sums: { rows: number; sum: number }[] = [];
  for (let i = 0; i < values.length; i++) {
    const cluster = (sums[clusters[i]!] ??= { rows: 0, sum: 0 });
    cluster.rows++;
    cluster.sum += values[i]!;
  }
  return sums.map(({ rows, sum }) => ({ rows, valueMean: sum / rows }));
}

/** Only the slots' own columns are not 0, so that of many columns few products are made; each pair once. */
function addRow(
  { slots, columns }: ClusteredRows,
  i: number,
  value: number,
  cluster: ClusterSums,
  columnSquares: Float64Array,
): void {
  for (let s = 0; s < slots.length; s++) {
    const column = slots[s]!.columns[i]!;
    if (column < 0) continue;
    const amount = amountIn(slots[s]!, i);
    cluster.sums[column]! += amount;
    cluster.withValues[column]! += amount * value;
    columnSquares[column]! += amount * amount;
    for (let t = 0; t <= s; t++) {
      const other = slots[t]!.columns[i]!;
      if (other < 0) continue;
      cluster.square[column * columns + other]! += amount * amountIn(slots[t]!, i);
    }
  }
}

function amountIn({ amounts }: Slot, i: number): number {
  return amounts === null ? 1 : amounts[i]!;
}

function takeMeansAway({ square, sums, rows }: ClusterSums, columns: number): void {
  for (let a = 0; a < columns; a++)
    for (let b = 0; b <= a; b++) {
      square[a * columns + b]! -= (sums[a]! * sums[b]!) / rows;
      square[b * columns + a] = square[a * columns + b]!;
    }
}
