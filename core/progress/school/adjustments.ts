import type { WithinFit } from '../../numeric/within-least-squares.ts';
import { listed } from '../../units/listed.ts';
import { MIX_FACTORS, mixTitle } from './case-mix.ts';
import type { MixColumn } from './mix-columns.ts';
import type { Adjustment } from './school.ts';
import type { GroupBy } from './school-input.ts';

/** Of each factor but the one that the groups are made by, whether it was adjusted for. */
export function adjustmentsOf(
  columns: readonly MixColumn[],
  { dropped }: WithinFit,
  groupBy: GroupBy,
): Adjustment[] {
  const factors = [...MIX_FACTORS.filter((factor) => factor !== groupBy), 'experience' as const];
  return factors.map((factor) => {
    const title = factorTitle(factor);
    const own = columns.flatMap((column, k) =>
      column.factor === factor ? [{ ...column, dropped: dropped[k] ?? null }] : [],
    );
    if (own.length === 0) return { factor, title, adjusted: 'alike', why: null };
    const left = own.filter((column) => column.dropped !== null);
    if (left.length === 0) return { factor, title, adjusted: 'yes', why: null };
    const adjusted = left.length < own.length ? 'partly' : 'no';
    const whys = (['nothing', 'told-by-others'] as const).flatMap((why) =>
      whyNot(
        factor,
        why,
        left.filter((column) => column.dropped!.why === why).map(({ label }) => label),
      ),
    );
    return { factor, title, adjusted, why: whys.join(' ') };
  });
}

export function factorTitle(factor: Adjustment['factor']): string {
  return factor === 'experience' ? 'Lessons flown before' : mixTitle(factor);
}

function whyNot(
  factor: Adjustment['factor'],
  why: 'nothing' | 'told-by-others',
  labels: readonly string[],
): string[] {
  if (labels.length === 0) return [];
  const title = factorTitle(factor);
  const what = factor === 'experience' ? title : `${title} (${listed(labels)})`;
  if (why === 'told-by-others')
    return [`${what}: within students it changes only together with something else.`];
  return [
    factor === 'experience'
      ? `${what}: no student flew in more than one lesson.`
      : `${what}: no student flew both with it and without it.`,
  ];
}
