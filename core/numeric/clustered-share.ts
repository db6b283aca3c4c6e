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
 * Wilson's with the effective number of trials, reaching as far as Student's t with the degrees of freedom of the
 * clusters (E. L. Korn, B. I. Graubard 1998, Confidence intervals for proportions with small expected number of
 * positive counts estimated from survey data, for another interval; from memory).
 *
 * @param clusters one or more
 */
export function clusteredShare(clusters: readonly ClusterCount[], confidence: number): ClusteredShare {
  const trials = clusters.reduce((sum, cluster) => sum + cluster.trials, 0);
  const share = clusters.reduce((sum, cluster) => sum + cluster.hits, 0) / trials;
  const effectiveTrials = trials / designEffect(clusters, share, trials);
  if (clusters.length < 2) return { share, effectiveTrials, interval: null };
  const reach = studentTQuantile((1 + confidence) / 2, clusters.length - 1);
  return { share, effectiveTrials, interval: wilsonInterval(share, effectiveTrials, reach) };
}

/**
 * How much more the share varies than that of independent trials, by the ratio estimator (W. G. Cochran, Sampling
 * techniques, 1977, section 3.12; from memory); never below 1. Where all trials are alike nothing shows how clusters
 * differ, and each counts as one trial.
 */
function designEffect(clusters: readonly ClusterCount[], share: number, trials: number): number {
  if (share === 0 || share === 1) return trials / clusters.length;
  const squares = clusters.reduce((sum, cluster) => sum + (cluster.hits - share * cluster.trials) ** 2, 0);
  const variance = ((clusters.length / Math.max(1, clusters.length - 1)) * squares) / trials ** 2;
  return Math.max(1, (variance * trials) / (share * (1 - share)));
}
