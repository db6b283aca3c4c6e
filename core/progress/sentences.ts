import { dayAndClock } from '../report/plain-words.ts';
import { listed } from '../units/listed.ts';
import { FLOWN_WORDS } from './flown-words.ts';
import { topicOf } from './in-sentence.ts';
import type { Change, Progress, ProgressGoal } from './progress.ts';

/** What there is and what changed, as one sentence; and a second one where more was flown since. */
export function progressSentence(progress: Progress): string {
  const later = progress.leftOut.reduce((sum, { later }) => sum + later, 0);
  const since = `${counted(later, 'approach', 'approaches')} flown since ${later === 1 ? 'is' : 'are'} left out.`;
  return later === 0 ? changeSentence(progress) : `${changeSentence(progress)} ${since}`;
}

function changeSentence({ student, compared, lessons, lines }: Progress): string {
  if (compared === null) return `No approach of ${student} has been judged yet.`;
  const [from, to] = [dayOf(lessons[0]!.date), dayOf(lessons.at(-1)!.date)];
  const when = from === to ? `on ${from}` : `from ${from} to ${to}`;
  const over =
    `Over ${compared.flown === 'coupled' ? `${compared.approaches} coupled approaches` : counted(compared.approaches, 'approach', 'approaches')} in ` +
    `${counted(lessons.length, 'lesson')}, ${when}`;
  const named = (change: Change) => listed(lines.filter(({ trend }) => trend.change === change).map(topicOf));
  if (lines.every(({ trend }) => trend.change === 'too-few'))
    return `${over}, ${student} flew too few to tell what changed.`;
  const told = CHANGES.flatMap(([change, words]) =>
    named(change) === '' ? [] : [`${words} ${named(change)}`],
  );
  if (told.length === 0) return `${over}, no change of ${student} is sure.`;
  const isAnySure = lines.some(({ trend }) => trend.change === 'better' || trend.change === 'worse');
  return `${over}, ${student} ${listed(told)}; nothing ${isAnySure ? 'else ' : ''}changed for sure.`;
}

const CHANGES: readonly (readonly [Change, string])[] = [
  ['better', 'improved in'],
  ['worse', 'got worse in'],
  ['perhaps-better', 'perhaps improved in'],
  ['perhaps-worse', 'perhaps got worse in'],
];

/** What all of it was judged by; empty where nothing was. */
export function comparedSentence({ compared }: Progress): string {
  if (compared === null) return '';
  const { standard, engineVersion, flown } = compared;
  return `Judged by ${standard.source}; debriefed by version ${engineVersion}; ${FLOWN_WORDS[flown ?? 'not-stated']}.`;
}

/** A goal's state as a clause. */
export function goalWords({ agreedOn, reachedOn }: ProgressGoal): string {
  return reachedOn === null
    ? `not reached yet, agreed on ${dayOf(agreedOn)}`
    : `reached on ${dayOf(reachedOn)}, agreed on ${dayOf(agreedOn)}`;
}

/** What "between", better and worse mean, where any of them is said. */
export function surenessSentences({ lines, confidence }: Progress): string[] {
  if (!lines.some(({ trend }) => trend.slopePerLesson !== null)) return [];
  const measured = lines.some(({ measure }) => measure === 'rms' || measure === 'inside-by-distance');
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  return [
    `"Between" holds the true change with ${percent(confidence.interval)}, if chance alone makes lessons differ; ` +
      'aircraft, wind and weather do so too. Better and worse are said where the change is as sure among ' +
      `${confidence.lines === 1 ? 'the one line' : `all ${confidence.lines} lines together`}; perhaps, where the ` +
      'line alone shows it, as one of many may by chance.',
    ...(measured ? ['Shares inside a limit are of the distance flown, RMS is over the recorded time.'] : []),
  ];
}

/** "1 May 2026". */
export function dayOf(date: string): string {
  return dayAndClock(`${date}T00:00:00Z`).day;
}

/** "1 lesson", "2 lessons". */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}
