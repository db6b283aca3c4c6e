import { withinLeastSquares, type WithinFit } from '../../numeric/within-least-squares.ts';
import { mixColumns, type GroupedApproach, type MixColumn } from './mix-columns.ts';
import type { GroupBy } from './school-input.ts';

/** What a student flew in one group, or in several together. */
export interface StudentMean {
  readonly studentId: string;
  readonly approaches: number;
  /** Means over the approaches, the second with the mix of all approaches in place of their own. */
  readonly plain: number;
  readonly adjusted: number;
  /** Of each column. */
  readonly mix: readonly number[];
}

export interface Adjusting {
  readonly columns: readonly MixColumn[];
  readonly fit: WithinFit;
  /** Of each group its students. */
  readonly means: ReadonlyMap<string, readonly StudentMean[]>;
}

/**
 * What each student's approaches would have been with the mix of all: each factor's effect is told by how the
 * approaches of one and the same student differ, so that who flew what has no part in it.
 *
 * @param rows approaches with a value
 */
export function adjusting(rows: readonly GroupedApproach[], groupBy: GroupBy): Adjusting {
  const columns = mixColumns(rows, groupBy);
  const students = new Map<string, number>();
  for (const { approach } of rows)
    if (!students.has(approach.studentId)) students.set(approach.studentId, students.size);
  const fit = withinLeastSquares(
    rows.map(({ approach }) => students.get(approach.studentId)!),
    columns.map(({ values }) => values),
    rows.map(({ approach }) => approach.value!),
  );
  const effects = columns.map(({ factor }, k) => (factor === 'group' ? 0 : fit.coefficients[k]!));
  return { columns, fit, means: meansOf(rows, columns, effects) };
}

function meansOf(
  rows: readonly GroupedApproach[],
  columns: readonly MixColumn[],
  effects: readonly number[],
): Adjusting['means'] {
  const overall = columns.map(({ values }) => values.reduce((sum, value) => sum + value, 0) / rows.length);
  const groups = new Map<string, StudentMean[]>();
  for (const { group, places } of cellsOf(rows)) {
    const meanOver = (value: (place: number) => number) =>
      places.reduce((sum, place) => sum + value(place), 0) / places.length;
    const plain = meanOver((place) => rows[place]!.approach.value!);
    const mix = columns.map(({ values }) => meanOver((place) => values[place]!));
    const adjusted = effects.reduce((left, effect, k) => left - effect * (mix[k]! - overall[k]!), plain);
    const { studentId } = rows[places[0]!]!.approach;
    const students = groups.get(group) ?? [];
    groups.set(group, students);
    students.push({ studentId, approaches: places.length, plain, adjusted, mix });
  }
  return groups;
}

/** The places in the rows of each student and group. */
function cellsOf(rows: readonly GroupedApproach[]): Iterable<{ group: string; places: number[] }> {
  const cells = new Map<string, { group: string; places: number[] }>();
  for (const [place, { approach, group }] of rows.entries()) {
    const key = `${approach.studentId}\n${group}`;
    const cell = cells.get(key);
    if (cell) cell.places.push(place);
    else cells.set(key, { group, places: [place] });
  }
  return cells.values();
}

/** What each student flew in any of some groups. */
export function together(groups: readonly (readonly StudentMean[])[]): StudentMean[] {
  const students = new Map<string, StudentMean>();
  for (const mean of groups.flat()) {
    const other = students.get(mean.studentId);
    students.set(mean.studentId, other ? merged(other, mean) : mean);
  }
  return [...students.values()];
}

function merged(one: StudentMean, other: StudentMean): StudentMean {
  const approaches = one.approaches + other.approaches;
  const mean = (a: number, b: number) => (a * one.approaches + b * other.approaches) / approaches;
  return {
    studentId: one.studentId,
    approaches,
    plain: mean(one.plain, other.plain),
    adjusted: mean(one.adjusted, other.adjusted),
    mix: one.mix.map((share, k) => mean(share, other.mix[k]!)),
  };
}
