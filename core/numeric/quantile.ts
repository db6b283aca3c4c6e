/**
 * The value below which a share of a sorted, not empty list lies, on the straight line between its two neighbours
 * (R. J. Hyndman, Y. Fan 1996, Sample quantiles in statistical packages, definition 7; from memory).
 */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}
