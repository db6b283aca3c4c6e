import { readFileSync } from 'node:fs';

interface Ends {
  readonly low: number;
  readonly high: number;
}

interface Reference {
  readonly tQuantiles: readonly {
    readonly df: number;
    readonly probability: number;
    readonly quantile: number;
  }[];
  readonly welch: readonly {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly difference: number;
    readonly df: number;
    readonly intervals: readonly (Ends & { readonly confidence: number })[];
  }[];
  readonly wilson: readonly (Ends & {
    readonly hits: number;
    readonly trials: number;
    readonly reach: number;
  })[];
  readonly shares: readonly (Ends & {
    readonly clusters: readonly { readonly hits: number; readonly trials: number }[];
    readonly effectiveTrials: number;
  })[];
  readonly superiority: readonly {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly chance: number;
  }[];
  readonly quantiles: readonly {
    readonly sorted: readonly number[];
    readonly share: number;
    readonly quantile: number;
  }[];
  readonly within: readonly {
    readonly clusters: readonly number[];
    readonly columns: readonly (readonly number[])[];
    readonly values: readonly number[];
    readonly coefficients: readonly number[];
    readonly df: number;
    readonly weights: readonly number[];
    readonly alone: number;
    readonly alike: number;
    readonly equalClusters: number;
  }[];
}

/** By scipy and numpy, see `tests/reference/school.py`. */
export const reference = JSON.parse(
  readFileSync(new URL('../../reference/school-statistics.json', import.meta.url), 'utf8'),
) as Reference;

/** How far two numbers may be apart, relative to the larger one where it is above 1. */
export const NEAR = 1e-9;

export function apart(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(1, Math.abs(b));
}
