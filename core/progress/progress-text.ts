import { indentedLines, pageLines } from '../report/text-rows.ts';
import { lineBlock } from './line-block.ts';
import {
  comparedSentence,
  counted,
  dayOf,
  goalWords,
  progressSentence,
  surenessSentences,
} from './sentences.ts';
import type { Progress } from './progress.ts';

/** A student's record as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function progressText(progress: Progress): string {
  const { lines, practise, cautions } = progress;
  const blocks = [
    pageLines(progressSentence(progress)),
    pageLines(comparedSentence(progress)),
    ...lines.map(lineBlock),
    practise ? indentedLines('To practise: ', practise.sentence) : [],
    goalLines(progress),
    lessonLines(progress),
    leftOutLines(progress),
    surenessSentences(progress).flatMap(pageLines),
    cautions.flatMap((caution) => pageLines(`Caution: ${caution}`)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function goalLines({ goals }: Progress): string[] {
  if (goals.length === 0) return [];
  return [
    'Goals agreed',
    ...goals.flatMap((goal) =>
      indentedLines(goal.reachedOn === null ? '  ○ ' : '  ● ', `${goal.text}: ${goalWords(goal)}`),
    ),
  ];
}

function lessonLines({ lessons }: Progress): string[] {
  if (lessons.length === 0) return [];
  return [
    'Lessons',
    ...lessons.map(
      ({ date, approaches }, i) =>
        `  ${String(i + 1).padStart(2)}  ${dayOf(date).padEnd(18)}${counted(approaches, 'approach', 'approaches')}`,
    ),
  ];
}

function leftOutLines({ leftOut }: Progress): string[] {
  if (leftOut.length === 0) return [];
  return ['Left out', ...leftOut.flatMap(({ sentence }) => indentedLines('  ', sentence))];
}
