import { CAUTIONS } from '../debrief/cautions.ts';
import type { ApproachFacts } from './approach-facts.ts';
import { comparable } from './comparable.ts';
import { linesOf } from './lines.ts';
import { practiseOf } from './practise.ts';
import type { Compared, LeftOut, Progress, ProgressGoal, ProgressLesson } from './progress.ts';
import { shownOf } from './shown.ts';
import { CONFIDENCE, isEnough, trendOf } from './trend.ts';

export interface ProgressInput {
  readonly student: string;
  /** Of all debriefs of the student, in any order. */
  readonly approaches: readonly ApproachFacts[];
  readonly goals: readonly ProgressGoal[];
  /** Files of which the debrief could not be read. */
  readonly unreadable: readonly string[];
}

/** A student's record across lessons. */
export function progressOf({ student, approaches, goals, unreadable }: ProgressInput): Progress {
  const group = comparable(approaches);
  const lessons = lessonsOf(group.approaches);
  const untrended = lessons.length === 0 ? [] : linesOf(lessons);
  const count = untrended.filter((line) => isEnough(line.lessons)).length;
  return {
    format: 'halfdot-progress/1',
    student,
    cautions: CAUTIONS,
    compared: comparedOf(group.approaches),
    lessons: lessons.map(lessonOf),
    lines: untrended.map((line) => ({ ...line, trend: trendOf(line.lessons, line.better, count) })),
    confidence: { interval: CONFIDENCE, together: CONFIDENCE, lines: count },
    practise: lessons.length === 0 ? null : practiseOf(untrended, lessons.length),
    shown: shownOf(group.approaches),
    goals,
    leftOut: [...group.leftOut, ...unread(unreadable)],
  };
}

/** Approaches by lesson, both in the order flown. */
function lessonsOf(approaches: readonly ApproachFacts[]): ApproachFacts[][] {
  const lessons = new Map<string, ApproachFacts[]>();
  for (const approach of approaches) {
    const lesson = lessons.get(approach.lessonId);
    if (lesson) lesson.push(approach);
    else lessons.set(approach.lessonId, [approach]);
  }
  return [...lessons.values()];
}

function lessonOf(approaches: readonly ApproachFacts[]): ProgressLesson {
  const { lessonId, date } = approaches[0]!;
  return { lessonId, date, approaches: approaches.length };
}

function comparedOf(approaches: readonly ApproachFacts[]): Compared | null {
  const one = approaches[0];
  if (!one) return null;
  const { standard, engineVersion, flown } = one;
  return { standard, engineVersion, flown, approaches: approaches.length };
}

function unread(files: readonly string[]): LeftOut[] {
  if (files.length === 0) return [];
  const names = files.join(', ');
  const sentence =
    `${files.length === 1 ? '1 debrief' : `${files.length} debriefs`} that the library cannot read any ` +
    `more, of ${names}. \`halfdot check\` says more.`;
  return [{ why: 'unreadable', count: files.length, later: 0, sentence }];
}
