import { studentTQuantile } from './student-t-quantile.ts';
import { wilsonInterval } from './wilson.ts';

/** How many of the trials of one cluster were hits; at least one trial. */
export interface ClusterCount {
  readonly hits: number;
  readonly trials: number;
}

export interface ClusteredShare {
  readonly share: number;
  /** As many independent trials would tell as much. */
  readonly effectiveTrials: number;
  /** Null where there is one cluster: how clusters differ is then not known. */
  readonly interval: { readonly low: number; readonly high: number } | null;
}

/**
 * A share over clusters of trials that are alike, as a person's are, with its interval of a confidence between 0 and 1:
 * Wilson's with the effective number of trials, and Student's t in place of the normal quantile, with the degrees of
 * freedom of as many clusters of one size as would tell as much (after E. L. Korn, B. I. Graubard 1998, Confidence
 * intervals for proportions with small expected number of positive counts estimated from survey data; from memory).
 *
 * @param clusters one or more
 */
export function clusteredShare(clusters: readonly ClusterCount[], confidence: number): ClusteredShare {
  const trials = sumOf(clusters, (cluster) => cluster.trials);
  const share = sumOf(clusters, (cluster) => cluster.hits) / trials;
  if (clusters.length < 2) return { share, effectiveTrials: 1, interval: null };
  const effectiveTrials = trials / designEffect(clusters, share, trials);
  const ofOneSize = trials ** 2 / sumOf(clusters, (cluster) => cluster.trials ** 2);
  const reach = studentTQuantile((1 + confidence) / 2, Math.max(1, ofOneSize - 1));
  return { share, effectiveTrials, interval: wilsonInterval(share, effectiveTrials, reach) };
}

/**
 * How much more the share varies than that of independent trials; never below 1. The variance is that of the ratio of
 * hits to trials, by leaving out one cluster after the other (the jackknife; W. G. Cochran, Sampling techniques, 1977,
 * section 6.17; from memory). Where all trials are alike nothing shows how clusters differ, and each counts as one.
 */
function designEffect(clusters: readonly ClusterCount[], share: number, trials: number): number {
  if (share === 0 || share === 1) return trials / clusters.length;
  const squares = sumOf(clusters, ({ hits, trials: own }) => ((hits - share * own) / (trials - own)) ** 2);
  const variance = ((clusters.length - 1) / clusters.length) * squares;
  return Math.max(1, (variance * trials) / (share * (1 - share)));
}

function sumOf(clusters: readonly ClusterCount[], value: (cluster: ClusterCount) => number): number {
  return clusters.reduce((sum, cluster) => sum + value(cluster), 0);
}
