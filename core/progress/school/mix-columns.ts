import type { Slot } from '../../numeric/within-products.ts';
import { MIX_FACTORS, mixKey, mixLabel } from './case-mix.ts';
import type { GroupBy, MixFactor, SchoolApproach } from './school-input.ts';

/** A number of each approach with which its value may go. */
export interface MixColumn {
  /** `group`: it tells the groups apart and is not adjusted for. */
  readonly factor: MixFactor | 'experience' | 'group';
  /** The factor's value, which an approach has or has not; of experience there are lessons before. */
  readonly label: string;
}

/** The columns, and in slots what they are in each row. */
export interface MixColumns {
  readonly columns: readonly MixColumn[];
  readonly slots: readonly Slot[];
}

/** An approach, the group that it belongs to, and how many lessons its student had flown before. */
export interface GroupedApproach {
  readonly approach: SchoolApproach;
  readonly group: string;
  readonly lessonsBefore: number;
}

/**
 * All that an approach's value may go with. The groups stand first: what within students changes only together with
 * the group is then left to the group, and is not taken away with what was adjusted for.
 */
export function mixColumns(rows: readonly GroupedApproach[], groupBy: GroupBy): MixColumns {
  const columns: MixColumn[] = [];
  const slots: Slot[] = [];
  const add = (
    factor: MixColumn['factor'],
    keyOf: (row: GroupedApproach) => string,
    labelOf: (key: string) => string,
  ) => {
    const { codes, keys } = codesOf(rows, keyOf);
    slots.push({
      columns: codes.map((code) => (code === 0 ? -1 : columns.length + code - 1)),
      amounts: null,
    });
    columns.push(...keys.slice(1).map((key) => ({ factor, label: labelOf(key) })));
  };
  add(
    'group',
    ({ group }) => group,
    (key) => key,
  );
  for (const factor of MIX_FACTORS)
    if (factor !== groupBy)
      add(
        factor,
        ({ approach }) => mixKey(factor, approach),
        (key) => mixLabel(factor, key),
      );
  if (rows.some(({ lessonsBefore }) => lessonsBefore !== rows[0]!.lessonsBefore)) {
    const amounts = Float64Array.from(rows, ({ lessonsBefore }) => lessonsBefore);
    slots.push({ columns: new Int32Array(rows.length).fill(columns.length), amounts });
    columns.push({ factor: 'experience', label: 'lessons before' });
  }
  return { columns, slots };
}

/** All keys, the most frequent first, and of each row which it is: the first has no column, the others have one each. */
function codesOf(
  rows: readonly GroupedApproach[],
  keyOf: (row: GroupedApproach) => string,
): { codes: Int32Array; keys: string[] } {
  const seen = new Map<string, number>();
  const counts: number[] = [];
  const codes = new Int32Array(rows.length);
  for (let i = 0; i < rows.length; i++) {
    const key = keyOf(rows[i]!);
    let code = seen.get(key);
    if (code === undefined) {
      code = seen.size;
      seen.set(key, code);
      counts.push(0);
    }
    counts[code]!++;
    codes[i] = code;
  }
  const keys = [...seen].sort(([, a], [, b]) => counts[b]! - counts[a]!);
  const places = new Int32Array(keys.length);
  for (const [place, [, code]] of keys.entries()) places[code] = place;
  return { codes: codes.map((code) => places[code]!), keys: keys.map(([key]) => key) };
}
