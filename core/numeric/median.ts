/**
 * The middle value, or the mean of the two in the middle; NaN values are passed over; NaN when none is left.
 * Quickselect (Hoare 1961) on a copy: the input keeps its order, and a million intervals cost one pass or two.
 */
export function median(values: ArrayLike<number>): number {
  const kept = withoutNaN(values);
  if (kept.length === 0) return NaN;
  const middle = kept.length >> 1;
  const upper = select(kept, middle);
  if (kept.length % 2 === 1) return upper;
  let lower = -Infinity;
  for (let i = 0; i < middle; i++) if (kept[i]! > lower) lower = kept[i]!;
  return (lower + upper) / 2;
}

function withoutNaN(values: ArrayLike<number>): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) kept[count++] = values[i]!;
  return kept.subarray(0, count);
}

/** Puts the k-th smallest value at place k, everything before it not larger, and returns it. */
function select(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swapped = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swapped;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k]!;
}
