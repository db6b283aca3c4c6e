import type { ApproachDebrief } from '../debrief/debrief.ts';
import { indentedLines, pageLines } from './text-rows.ts';

/** Level and score with their working, or why there is none. */
export function gradeLines({ grade, notGradedBecause }: ApproachDebrief): string[] {
  const headline = gradeHeadline({ grade, notGradedBecause });
  return [...pageLines(headline), ...(grade?.working ?? []).flatMap((step) => indentedLines('  ', step))];
}

/** Level and score on one line, or the sentence that says why there is neither. */
export function gradeHeadline({
  grade,
  notGradedBecause,
}: Pick<ApproachDebrief, 'grade' | 'notGradedBecause'>): string {
  if (grade === null) return sentence(notGradedBecause ?? 'not graded');
  const { levelLow, levelHigh, scoreLow, scoreHigh, words } = grade;
  return `Level ${ranged(levelLow, levelHigh)} of 5, ${words}; score ${ranged(scoreLow, scoreHigh)} of 100`;
}

/** Where something is unclear the range is all that can be said: the number between would be believed. */
function ranged(low: number, high: number): string {
  return low === high ? String(low) : `${low} to ${high}`;
}

function sentence(clause: string): string {
  const text = `${clause[0]!.toUpperCase()}${clause.slice(1)}`;
  return text.endsWith('.') ? text : `${text}.`;
}
