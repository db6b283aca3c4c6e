import { withinLeastSquares, type WithinFit } from '../../numeric/within-least-squares.ts';
import type { Slot } from '../../numeric/within-products.ts';
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
  const { columns, slots } = mixColumns(rows, groupBy);
  const students = new Map<string, number>();
  const clusters = Int32Array.from(rows, ({ approach }) => {
    const { size } = students;
    if (!students.has(approach.studentId)) students.set(approach.studentId, size);
    return students.get(approach.studentId)!;
  });
  const values = Float64Array.from(rows, ({ approach }) => approach.value!);
  const fit = withinLeastSquares({ clusters, slots, columns: columns.length, values });
  const effects = columns.map(({ factor }, k) => (factor === 'group' ? 0 : fit.coefficients[k]!));
  return { columns, fit, means: meansOf(rows, slots, effects) };
}

/** Sums over some approaches of one student. */
interface Sums {
  readonly studentId: string;
  approaches: number;
  value: number;
  readonly mix: Float64Array;
}

function meansOf(
  rows: readonly GroupedApproach[],
  slots: readonly Slot[],
  effects: readonly number[],
): Adjusting['means'] {
  const groups = sumsOf(rows, slots, effects.length);
  const all = [...groups.values()].flatMap((students) => [...students.values()]);
  const overall = effects.map((_, k) => all.reduce((sum, { mix }) => sum + mix[k]!, 0) / rows.length);
  const meanOf = ({ studentId, approaches, value, mix }: Sums): StudentMean => {
    const means = Array.from(mix, (sum) => sum / approaches);
    const plain = value / approaches;
    const adjusted = effects.reduce((left, effect, k) => left - effect * (means[k]! - overall[k]!), plain);
    return { studentId, approaches, plain, adjusted, mix: means };
  };
  return new Map([...groups].map(([group, students]) => [group, [...students.values()].map(meanOf)]));
}

/** Of each group, by student. */
function sumsOf(
  rows: readonly GroupedApproach[],
  slots: readonly Slot[],
  columns: number,
): Map<string, Map<string, Sums>> {
  const groups = new Map<string, Map<string, Sums>>();
  for (const [i, { approach, group }] of rows.entries()) {
    const students = groups.get(group) ?? new Map<string, Sums>();
    groups.set(group, students);
    const { studentId, value } = approach;
    const sums = students.get(studentId) ?? {
      studentId,
      approaches: 0,
      value: 0,
      mix: new Float64Array(columns),
    };
    students.set(studentId, sums);
    sums.approaches++;
    sums.value += value!;
    for (const slot of slots)
      if (slot.columns[i]! >= 0) sums.mix[slot.columns[i]!]! += slot.amounts?.[i] ?? 1;
  }
  return groups;
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
