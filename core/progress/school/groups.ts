import { intervalOf, plainMean } from '../../numeric/estimate.ts';
import { adjusting, type Adjusting } from './adjusting.ts';
import { adjustmentsOf } from './adjustments.ts';
import { alphabetical } from './alphabetical.ts';
import { mixKey, mixLabel, NOT_STATED } from './case-mix.ts';
import { contrastOf, type Contrast } from './contrast.ts';
import type { GroupComparison, Interval, SchoolGroup, SchoolGroups, Standing } from './school.ts';
import type { GroupBy, SchoolApproach, SchoolInput, SchoolMeasure } from './school-input.ts';
import { approachesIn, sidesOf, type Sides } from './sides.ts';

/** Of an interval, and of all that is called sure among the comparisons of a school. */
export const CONFIDENCE = 0.95;

/**
 * Groups of approaches, each with its students' means, and held against all others together.
 *
 * @param approaches that are compared
 * @param ordinals of each lesson the how manieth of its student it is
 */
export function groupsOf(
  approaches: readonly SchoolApproach[],
  ordinals: ReadonlyMap<string, number>,
  { measure, names }: Pick<SchoolInput, 'measure' | 'names'>,
  by: GroupBy,
): SchoolGroups {
  const rows = approaches
    .filter(({ value }) => value !== null)
    .map((approach) => ({
      approach,
      group: groupKey(by, approach),
      lessonsBefore: ordinals.get(approach.lessonId)! - 1,
    }));
  const adjusted = adjusting(rows, by);
  const keys = [...adjusted.means.keys()];
  const found = keys.map((key) => ({ key, ...heldAgainstOthers(key, keys, adjusted, measure, by) }));
  const made = found.filter(({ contrast }) => contrast !== null).length;
  // Of two groups the one differs from the other as the other from the one.
  const comparisons = stated(keys).length === 2 ? Math.min(1, made) : made;
  const together = 1 - (1 - CONFIDENCE) / Math.max(1, comparisons);
  const label = (key: string) => groupLabel(by, key, names);
  const groups = found.map(({ key, sides, contrast, whyNot }): SchoolGroup => {
    const means = adjusted.means.get(key)!;
    // Figures of people that cannot be compared are compared all the same by who reads them.
    const isTold = by !== 'instructor' || contrast !== null;
    const figure = (which: 'plain' | 'adjusted') =>
      isTold ? plainMean(means.map((one) => one[which])) : null;
    return {
      key,
      label: label(key),
      students: means.length,
      approaches: approachesIn(means),
      mean: figure('plain'),
      adjustedMean: figure('adjusted'),
      comparison: contrast && comparisonOf(sides!, contrast, together, measure),
      whyNot,
    };
  });
  return {
    by,
    groups: alphabetical(groups, ({ label }) => label),
    adjustment: adjustmentsOf(adjusted.columns, adjusted.fit, by),
    comparisons,
    confidence: { interval: CONFIDENCE, together },
  };
}

function groupKey(by: GroupBy, approach: SchoolApproach): string {
  return by === 'instructor' ? (approach.instructorId ?? NOT_STATED) : mixKey(by, approach);
}

function groupLabel(by: GroupBy, key: string, names: SchoolInput['names']): string {
  if (by !== 'instructor') return mixLabel(by, key);
  return key === NOT_STATED ? 'not stated' : (names.get(key) ?? key);
}

/** What nobody stated is no group, and may be a part of any. */
function stated(keys: readonly string[]): string[] {
  return keys.filter((key) => key !== NOT_STATED);
}

interface Held {
  readonly sides: Sides | null;
  readonly contrast: Contrast | null;
  readonly whyNot: string | null;
}

function heldAgainstOthers(
  key: string,
  keys: readonly string[],
  adjusted: Adjusting,
  measure: SchoolMeasure,
  by: GroupBy,
): Held {
  const nothing = (whyNot: string): Held => ({ sides: null, contrast: null, whyNot });
  if (key === NOT_STATED) return nothing('Not compared: what nobody stated may belong to any group.');
  const others = stated(keys).filter((other) => other !== key);
  if (others.length === 0) return nothing('Not compared: there is no other group.');
  const sides = sidesOf(adjusted.means, key, others);
  const contrast = contrastOf(sides, adjusted, measure, by);
  return typeof contrast === 'string' ? nothing(contrast) : { sides, contrast, whyNot: null };
}

function comparisonOf(
  { how, here, others }: Sides,
  { estimate, plainDifference, superiority }: Contrast,
  confidence: number,
  { better }: SchoolMeasure,
): GroupComparison {
  const interval = intervalOf(estimate, CONFIDENCE);
  const together = intervalOf(estimate, confidence);
  return {
    how,
    students: here.length,
    otherStudents: others.length,
    approaches: approachesIn(here),
    otherApproaches: approachesIn(others),
    difference: estimate.value,
    plainDifference,
    interval,
    together,
    standing: standingOf(interval, together, better),
    superiority,
  };
}

function standingOf(interval: Interval, together: Interval, better: SchoolMeasure['better']): Standing {
  const side = sideOf(interval);
  if (side === 0) return 'not-sure';
  const standing = side > 0 === (better === 'higher') ? 'better' : 'worse';
  return sideOf(together) === 0 ? `perhaps-${standing}` : standing;
}

/** On which side of 0 all of an interval lies: 1, −1, or 0 where on neither. */
function sideOf({ low, high }: Interval): number {
  if (low > 0) return 1;
  return high < 0 ? -1 : 0;
}
