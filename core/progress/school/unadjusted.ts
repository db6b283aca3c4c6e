import type { MixColumn } from './mix-columns.ts';
import type { Adjusting } from './adjusting.ts';

/** How far two sides may differ in what could not be adjusted for: a fifth of approaches, or one lesson (ours). */
const MOST_SHARE = 1 / 5;
const MOST_LESSONS = 1;

/**
 * The factors in which two sides differ too much and that could not be adjusted for: a difference between the sides
 * cannot be told apart from theirs.
 *
 * @param apart how far the sides' mean mixes are apart, by column
 */
export function unadjustedFactors(
  { columns, fit }: Pick<Adjusting, 'columns' | 'fit'>,
  apart: readonly number[],
): MixColumn['factor'][] {
  const factors = [...new Set(columns.map(({ factor }) => factor))].filter((factor) => factor !== 'group');
  return factors.filter((factor) => {
    const left = columns.flatMap((column, k) => (column.factor === factor ? [leftOver(k)] : []));
    const most = factor === 'experience' ? MOST_LESSONS : MOST_SHARE;
    return reach(left) > most + 1e-9;
  });

  /** Of a column that was dropped, what those that are adjusted for do not take along. */
  function leftOver(k: number): number {
    const told = fit.dropped[k]?.told;
    if (!told) return 0;
    return columns.reduce(
      (left, { factor }, j) => (factor === 'group' ? left : left - told[j]! * apart[j]!),
      apart[k]!,
    );
  }
}

/** How much of the approaches is of another value, with the most frequent one, which has no column. */
function reach(left: readonly number[]): number {
  const sum = left.reduce((sum, one) => sum + one, 0);
  return (left.reduce((sum, one) => sum + Math.abs(one), 0) + Math.abs(sum)) / 2;
}
