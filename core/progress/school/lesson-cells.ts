import { median } from '../../numeric/median.ts';
import { quantile } from '../../numeric/quantile.ts';
import { countsOf } from '../lines.ts';
import type { Measure } from '../progress.ts';
import { plainMean } from '../../numeric/estimate.ts';
import { alphabetical } from './alphabetical.ts';
import { grouped } from './grouped.ts';
import type { LessonSpread, SchoolCell, SchoolStudent } from './school.ts';
import type { SchoolApproach, SchoolInput } from './school-input.ts';

/** Of each lesson the how manieth of its student it is, counted from 1, among all with a judged approach. */
export function lessonOrdinals(inOrderFlown: readonly SchoolApproach[]): ReadonlyMap<string, number> {
  const ordinals = new Map<string, number>();
  const flown = new Map<string, number>();
  for (const { lessonId, studentId } of inOrderFlown) {
    if (ordinals.has(lessonId)) continue;
    const ordinal = (flown.get(studentId) ?? 0) + 1;
    flown.set(studentId, ordinal);
    ordinals.set(lessonId, ordinal);
  }
  return ordinals;
}

/** Each student's lessons, in the order flown, the students in that of their names. */
export function studentsOf(
  approaches: readonly SchoolApproach[],
  ordinals: ReadonlyMap<string, number>,
  { names, measure }: SchoolInput,
): SchoolStudent[] {
  const students = [...grouped(approaches, ({ studentId }) => studentId)].map(([studentId, flown]) => ({
    studentId,
    name: names.get(studentId) ?? studentId,
    lessons: [...grouped(flown, ({ lessonId }) => lessonId).values()].map((lesson) =>
      cellOf(lesson, ordinals, measure.measure),
    ),
  }));
  return alphabetical(students, ({ name }) => name);
}

function cellOf(
  lesson: readonly SchoolApproach[],
  ordinals: ReadonlyMap<string, number>,
  measure: Measure,
): SchoolCell {
  const { lessonId, date } = lesson[0]!;
  const values = lesson.map(({ value }) => value).filter((value) => value !== null);
  const middle = measure === 'share-met' ? plainMean : median;
  return {
    lessonId,
    date,
    ordinal: ordinals.get(lessonId)!,
    approaches: lesson.length,
    value: values.length === 0 ? null : middle(values),
    verdicts: countsOf(lesson.map(({ verdict }) => verdict)),
  };
}

/** How the students' 1st, 2nd, … lessons spread. */
export function distributionOf(students: readonly SchoolStudent[]): LessonSpread[] {
  const valued = students.flatMap(({ lessons }) => lessons.filter(({ value }) => value !== null));
  return [...grouped(valued, ({ ordinal }) => ordinal)]
    .sort(([a], [b]) => a - b)
    .map(([ordinal, cells]) => {
      const sorted = Float64Array.from(cells, ({ value }) => value!).sort();
      return {
        ordinal,
        students: sorted.length,
        least: sorted[0]!,
        lowerQuartile: quantile(sorted, 0.25),
        median: quantile(sorted, 0.5),
        upperQuartile: quantile(sorted, 0.75),
        largest: sorted.at(-1)!,
      };
    });
}
