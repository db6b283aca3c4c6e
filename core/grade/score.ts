import { decimal } from './decimal.ts';
import type { CriterionPoints } from './points.ts';

/** Both columns added up. */
export interface Sum {
  readonly given: number;
  /** Points that were assessed. */
  readonly possible: number;
}

export function sumOf(points: readonly CriterionPoints[]): Sum {
  // Added as whole tenths: sums of 0.1 drift.
  const givenTenths = points.reduce((sum, { given }) => sum + Math.round((given ?? 0) * 10), 0);
  return {
    given: givenTenths / 10,
    possible: points.reduce((sum, { possible }) => sum + (possible ?? 0), 0),
  };
}

/** Whole percent of the points assessed, of which there must be some; a half is rounded up. */
export function scoreOf({ given, possible }: Sum): number {
  return Math.round((Math.round(given * 10) * 10) / possible);
}

/** The same as the end of a sentence. */
export function scoreInWords(sum: Sum): string {
  return `${decimal(sum.given)} of ${sum.possible} points assessed, ${scoreOf(sum)} %`;
}
