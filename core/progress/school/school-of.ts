import { CAUTIONS } from '../../debrief/cautions.ts';
import { inOrder } from '../same-approach.ts';
import { alphabetical } from './alphabetical.ts';
import { caseMixOf, isLetIn } from './case-mix.ts';
import { CONFIDENCE, groupsOf } from './groups.ts';
import { judgedAlike, said } from './judged-alike.ts';
import { distributionOf, lessonOrdinals, studentsOf } from './lesson-cells.ts';
import { needsOf } from './needs.ts';
import { notesOf } from './notes.ts';
import { outcomesOf } from './outcomes.ts';
import type { School, SchoolCompared, SchoolCoverage } from './school.ts';
import type { SchoolApproach, SchoolInput } from './school-input.ts';

/** What the students of a school need, and groups of them side by side. */
export function schoolOf(input: SchoolInput): School {
  return schoolWith(input).school;
}

/** The same with the approaches that are compared in it, in the order flown. */
export function schoolWith(input: SchoolInput): {
  readonly school: School;
  readonly approaches: readonly SchoolApproach[];
} {
  const { measure, filter, groupBy, coverage, names } = input;
  const inOrderFlown = [...input.approaches].sort(inOrder);
  const ordinals = lessonOrdinals(inOrderFlown);
  const alike = judgedAlike(inOrderFlown, filter);
  const approaches = alike.approaches.filter((approach) => isLetIn(approach, filter));
  const students = studentsOf(approaches, ordinals, input);
  const compared = comparedOf(approaches);
  const groups = compared && groupBy && groupsOf(approaches, ordinals, input, groupBy);
  const otherMix = alike.approaches.length - approaches.length;
  const school: School = {
    format: 'halfdot-school/1',
    cautions: CAUTIONS,
    measure,
    compared,
    judgedBy: alike.offered,
    leftOut: [...alike.leftOut, ...said('other-mix', otherMix, 'flown otherwise than asked for.')],
    coverage: coverageOf(coverage, names),
    caseMix: caseMixOf(alike.approaches),
    students,
    distribution: distributionOf(students),
    outcomes: compared && outcomesOf(approaches, CONFIDENCE),
    groups,
    needs: needsOf(students),
    notes: compared ? notesOf(compared, groups) : [],
  };
  return { school, approaches };
}

function comparedOf(approaches: readonly SchoolApproach[]): SchoolCompared | null {
  const one = approaches[0];
  if (!one) return null;
  return {
    ...one.judgedBy,
    approaches: approaches.length,
    students: new Set(approaches.map(({ studentId }) => studentId)).size,
    valued: approaches.filter(({ value }) => value !== null).length,
    from: one.date,
    to: approaches.at(-1)!.date,
  };
}

function coverageOf(coverage: SchoolInput['coverage'], names: SchoolInput['names']): SchoolCoverage {
  const shown = coverage.studentsWithoutLog.map((id) => names.get(id) ?? id);
  return { ...coverage, studentsWithoutLog: alphabetical(shown, (name) => name) };
}
