import { grouped } from './lesson-cells.ts';
import { MIX_FACTORS, mixKey, mixLabel } from './case-mix.ts';
import type { GroupBy, MixFactor, SchoolApproach } from './school-input.ts';

/** A number for each approach, of which the values may depend. */
export interface MixColumn {
  /** `group`: it tells the groups apart and is not adjusted for. */
  readonly factor: MixFactor | 'experience' | 'group';
  readonly label: string;
  /** 1 where the approach has the factor's value and 0 where not; of experience the lessons before. */
  readonly values: Float64Array;
}

/** An approach, the group that it belongs to, and how many lessons its student had flown before. */
export interface GroupedApproach {
  readonly approach: SchoolApproach;
  readonly group: string;
  readonly lessonsBefore: number;
}

/**
 * All that an approach's value may come with. The groups stand first: what within students changes only together with
 * the group is then left to the group, and is not taken away with what was adjusted for.
 */
export function mixColumns(rows: readonly GroupedApproach[], groupBy: GroupBy): MixColumn[] {
  const factors = MIX_FACTORS.filter((factor) => factor !== groupBy);
  return [
    ...valueColumns(
      rows,
      'group',
      ({ group }) => group,
      (key) => key,
    ),
    ...factors.flatMap((factor) =>
      valueColumns(
        rows,
        factor,
        ({ approach }) => mixKey(factor, approach),
        (key) => mixLabel(factor, key),
      ),
    ),
    {
      factor: 'experience',
      label: 'lessons before',
      values: Float64Array.from(rows, ({ lessonsBefore }) => lessonsBefore),
    },
  ];
}

/** A column for each value but the most frequent, which the others are held against. */
function valueColumns(
  rows: readonly GroupedApproach[],
  factor: MixColumn['factor'],
  keyOf: (row: GroupedApproach) => string,
  labelOf: (key: string) => string,
): MixColumn[] {
  const keys = rows.map(keyOf);
  const byCount = [...grouped(keys, (key) => key)].sort(([, a], [, b]) => b.length - a.length);
  return byCount.slice(1).map(([key]) => ({
    factor,
    label: labelOf(key),
    values: Float64Array.from(keys, (other) => (other === key ? 1 : 0)),
  }));
}
