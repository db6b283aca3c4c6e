/**
 * The interval of a share from so many trials (above 0, not whole where trials are alike), by E. B. Wilson (1927),
 * Probable inference, the law of succession, and statistical inference.
 *
 * @param reach how many standard errors to either side: the normal quantile, or Student's where few clusters stand
 *   behind the number of trials
 */
export function wilsonInterval(share: number, trials: number, reach: number): { low: number; high: number } {
  const square = (reach * reach) / trials;
  const middle = share + square / 2;
  const half = Math.sqrt(square * (share * (1 - share) + square / 4));
  return {
    low: Math.max(0, (middle - half) / (1 + square)),
    high: Math.min(1, (middle + half) / (1 + square)),
  };
}
