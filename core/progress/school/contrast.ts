import { meanOf, plainMean, welchDifference, withVariance, type Estimate } from '../../numeric/estimate.ts';
import { superiority } from '../../numeric/superiority.ts';
import { listed } from '../../units/listed.ts';
import { inSentence } from '../in-sentence.ts';
import type { Adjusting, StudentMean } from './adjusting.ts';
import { factorTitle } from './adjustments.ts';
import { counted } from '../sentences.ts';
import { approachesOf } from './counted.ts';
import type { GroupComparison } from './school.ts';
import type { GroupBy, SchoolMeasure } from './school-input.ts';
import { approachesIn, type Sides } from './sides.ts';
import { unadjustedFactors } from './unadjusted.ts';

/** What there is between two sides, before it is known how many pairs of sides are looked at. */
export interface Contrast extends Pick<GroupComparison, 'superiority' | 'plainDifference'> {
  readonly estimate: Estimate;
}

/** An error below this is rounding. */
const LEAST_ERROR = 1e-12;

/** The contrast of two sides, or a sentence why there is none. */
export function contrastOf(
  { here, others, how }: Sides,
  adjusting: Adjusting,
  { better }: SchoolMeasure,
  groupBy: GroupBy,
): Contrast | string {
  const few = tooFew({ here, others, how }, groupBy);
  if (few !== null) return few;
  const { columns, fit } = adjusting;
  const isAdjusted = columns.some(({ factor }, k) => factor !== 'group' && fit.dropped[k] === null);
  if (isAdjusted && fit.df < 1) return 'Not compared: too few approaches to tell what else made them differ.';
  const apart = columns.map((_, k) => meanMix(here, k) - meanMix(others, k));
  const factors = unadjustedFactors(adjusting, apart);
  if (factors.length > 0) return confounded(factors);
  const weights = apart.map((difference, k) => (columns[k]!.factor === 'group' ? 0 : difference));
  const students = how === 'between-students' ? betweenStudents(here, others) : withinStudents(here, others);
  const estimate = withVariance(students, fit.varianceOf(weights));
  if (Math.sqrt(estimate.variance) < LEAST_ERROR)
    return 'Not compared: students do not differ at all, so that nothing shows how far chance goes.';
  return {
    estimate,
    plainDifference: mean(here, 'plain') - mean(others, 'plain'),
    superiority: ahead({ here, others, how }, better),
  };
}

/** Students and approaches that are needed on each side (ours): instructors are people, of whom more may be made. */
const FEWEST_OF_INSTRUCTORS = { students: 8, approaches: 40 };
const FEWEST = { students: 5, approaches: 5 };

function tooFew({ here, others, how }: Sides, groupBy: GroupBy): string | null {
  const fewest = groupBy === 'instructor' ? FEWEST_OF_INSTRUCTORS : FEWEST;
  const isEnough = (side: readonly StudentMean[]) =>
    side.length >= fewest.students && approachesIn(side) >= fewest.approaches;
  if (isEnough(here) && isEnough(others)) return null;
  const told = (side: readonly StudentMean[]) =>
    `${counted(side.length, 'student')} with ${approachesOf(approachesIn(side))}`;
  const what =
    how === 'between-students'
      ? `${told(here)} here and ${told(others)} elsewhere`
      : `of those who flew here and elsewhere ${told(here)} here and ${approachesIn(others)} elsewhere`;
  const needed =
    `${counted(fewest.students, 'student')}` +
    (groupBy === 'instructor' ? ` and ${approachesOf(fewest.approaches)}` : '');
  return `Not compared, too few: ${what}; ${needed} are needed on each side.`;
}

function confounded(factors: ReturnType<typeof unadjustedFactors>): string {
  const titles = factors.map((factor) => (factor === 'group' ? '' : inSentence(factorTitle(factor))));
  return (
    `Not compared: the two sides differ too much in what could not be adjusted for, ` +
    `which is ${listed(titles)}.`
  );
}

function betweenStudents(here: readonly StudentMean[], others: readonly StudentMean[]): Estimate {
  return welchDifference(
    here.map(({ adjusted }) => adjusted),
    others.map(({ adjusted }) => adjusted),
  );
}

function withinStudents(here: readonly StudentMean[], others: readonly StudentMean[]): Estimate {
  return meanOf(here.map(({ adjusted }, i) => adjusted - others[i]!.adjusted));
}

function mean(side: readonly StudentMean[], which: 'plain' | 'adjusted'): number {
  return plainMean(side.map((student) => student[which]));
}

function meanMix(side: readonly StudentMean[], column: number): number {
  return plainMean(side.map(({ mix }) => mix[column]!));
}

/** How often a student does better here: than each of the others, or than elsewhere. */
function ahead(
  { here, others, how }: Sides,
  better: SchoolMeasure['better'],
): GroupComparison['superiority'] {
  const gain = (value: number) => rounded(better === 'higher' ? value : -value);
  const one = here.map(({ adjusted }) => gain(adjusted));
  const other = others.map(({ adjusted }) => gain(adjusted));
  const { chance, above, equal, below } =
    how === 'between-students'
      ? superiority(one, other)
      : superiority(
          one.map((value, i) => rounded(value - other[i]!)),
          [0],
        );
  return { chance, ahead: above, equal, behind: below };
}

/** So that equal values stay equal after adjusting. */
function rounded(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
