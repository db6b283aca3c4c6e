/**
 * Indices of a longest strictly increasing subsequence, in order: the fewest values leave, and where two choices
 * are as long the earlier values stay. Patience sorting with links (Fredman 1975), n log n, run from the end so
 * that the earlier values win. NaN must not occur.
 */
export function longestIncreasing(values: Float64Array): Uint32Array {
  const after = new Int32Array(values.length).fill(-1);
  // heads[k]: index of the largest value that begins an increasing run of k + 1 values.
  const heads = new Uint32Array(values.length);
  let length = 0;
  for (let i = values.length - 1; i >= 0; i--) {
    let low = 0;
    let high = length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (values[heads[mid]!]! > values[i]!) low = mid + 1;
      else high = mid;
    }
    if (low > 0) after[i] = heads[low - 1]!;
    heads[low] = i;
    if (low === length) length++;
  }
  const chain = new Uint32Array(length);
  let at = length > 0 ? heads[length - 1]! : -1;
  for (let k = 0; k < length; k++) {
    chain[k] = at;
    at = after[at]!;
  }
  return chain;
}
