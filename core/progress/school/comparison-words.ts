import { amount, figure, sideOf, unitName } from '../amount-words.ts';
import type { GroupComparison, Interval, SchoolGroup, SchoolGroups } from './school.ts';
import type { SchoolMeasure } from './school-input.ts';

const STANDINGS = {
  better: 'Better',
  worse: 'Worse',
  'perhaps-better': 'Perhaps better',
  'perhaps-worse': 'Perhaps worse',
} as const;

/** How a group stands against all others, in sentences; or why that is not said. */
export function comparisonSentences(
  { comparison, whyNot }: SchoolGroup,
  { comparisons }: Pick<SchoolGroups, 'comparisons'>,
  measure: SchoolMeasure,
): string[] {
  if (comparison === null) return [whyNot!];
  return [
    differenceSentence(comparison, comparisons, measure),
    plainSentence(comparison, measure),
    superioritySentence(comparison),
  ];
}

function differenceSentence(
  comparison: GroupComparison,
  comparisons: number,
  measure: SchoolMeasure,
): string {
  const { how, standing, difference, interval, together, students } = comparison;
  const than = how === 'between-students' ? 'the others' : 'elsewhere';
  const by = how === 'between-students' ? '' : `, by the same ${students} students`;
  const all = comparisons === 1 ? '' : `; with all differences looked at ${between(together, measure)}`;
  const reach = `${between(interval, measure)}, in ${unitName(measure.unit)}${all}`;
  if (standing === 'not-sure') return `No sure difference from ${than}${by}: ${reach}.`;
  const size = amount(difference, measure.unit);
  return `${STANDINGS[standing]} than ${than} by ${size}${by} (${reach}).`;
}

function between({ low, high }: Interval, { better, unit }: SchoolMeasure): string {
  const ends = better === 'higher' ? [low, high] : [-high, -low];
  const [least, most] = ends.map((gain) =>
    gain === 0 ? 'none' : `${figure(gain, unit)} ${sideOf(gain)}`,
  ) as [string, string];
  return `between ${least} and ${most}`;
}

function plainSentence({ plainDifference }: GroupComparison, { better, unit }: SchoolMeasure): string {
  if (plainDifference === 0) return 'Without adjusting there is no difference.';
  const side = sideOf(better === 'higher' ? plainDifference : -plainDifference);
  return `Without adjusting, ${side} by ${amount(plainDifference, unit)}.`;
}

function superioritySentence({ how, superiority, students }: GroupComparison): string {
  const { chance, ahead, equal, behind } = superiority;
  const percent = Math.round(chance * 100);
  const alike = equal === 0 ? '' : `, ${equal} alike`;
  if (how === 'within-students')
    return `${ahead} of ${students} students did better here than elsewhere${alike}.`;
  const pairs = ahead + equal + behind;
  return `A student of this group does better than one of the others with ${percent} % (${ahead} of ${pairs} pairs${alike}).`;
}
