import type { ApproachDebrief } from '../debrief/debrief.ts';
import { indentedLines, pageLines } from './text-rows.ts';

/** Level and score with their working, or why there is none. */
export function gradeLines({ grade, notGradedBecause }: ApproachDebrief): string[] {
  if (grade === null) return pageLines(sentence(notGradedBecause ?? 'not graded'));
  const { level, levelLow, levelHigh, score, scoreLow, scoreHigh, words, working } = grade;
  return [
    ...pageLines(
      `Level ${ranged(level, levelLow, levelHigh)} of 5, ${words}; score ${ranged(score, scoreLow, scoreHigh)} of 100`,
    ),
    ...working.flatMap((step) => indentedLines('  ', step)),
  ];
}

function ranged(best: number, low: number, high: number): string {
  return low === high ? String(best) : `${best} (${low} to ${high})`;
}

function sentence(clause: string): string {
  const text = `${clause[0]!.toUpperCase()}${clause.slice(1)}`;
  return text.endsWith('.') ? text : `${text}.`;
}
