import { dayAndClock } from '../report/plain-words.ts';
import { indentedLines, pageLines } from '../report/text-rows.ts';
import { FLOWN_WORDS } from './flown-words.ts';
import { inSentence, listed } from './in-sentence.ts';
import { lineBlock } from './line-block.ts';
import type { Change, Progress } from './progress.ts';

/** A student's record as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function progressText(progress: Progress): string {
  const { lines, practise, cautions } = progress;
  const blocks = [
    pageLines(firstSentence(progress)),
    comparedLines(progress),
    ...lines.map(lineBlock),
    practise ? indentedLines('To practise: ', practise.sentence) : [],
    goalLines(progress),
    lessonLines(progress),
    leftOutLines(progress),
    surenessLines(progress),
    cautions.flatMap((caution) => pageLines(`Caution: ${caution}`)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** What there is and what changed, as one sentence. */
function firstSentence({ student, compared, lessons, lines }: Progress): string {
  if (compared === null) return `No approach of ${student} has been judged yet.`;
  const [from, to] = [dayOf(lessons[0]!.date), dayOf(lessons.at(-1)!.date)];
  const when = from === to ? `on ${from}` : `from ${from} to ${to}`;
  const over =
    `Over ${counted(compared.approaches, 'approach', 'approaches')} in ` +
    `${counted(lessons.length, 'lesson')}, ${when}`;
  const named = (change: Change) =>
    listed(lines.filter(({ trend }) => trend.change === change).map(({ title }) => inSentence(title)));
  if (lines.every(({ trend }) => trend.change === 'too-few'))
    return `${over}, ${student} flew too few to tell what changed.`;
  const told = CHANGES.flatMap(([change, words]) =>
    named(change) === '' ? [] : [`${words} ${named(change)}`],
  );
  if (told.length === 0) return `${over}, no change of ${student} is sure.`;
  return `${over}, ${student} ${listed(told)}; nothing else changed for sure.`;
}

const CHANGES: readonly (readonly [Change, string])[] = [
  ['better', 'improved in'],
  ['worse', 'got worse in'],
  ['perhaps-better', 'perhaps improved in'],
  ['perhaps-worse', 'perhaps got worse in'],
];

function comparedLines({ compared }: Progress): string[] {
  if (compared === null) return [];
  const { standard, engineVersion, flown } = compared;
  return pageLines(
    `Judged by ${standard.source}; debriefed by version ${engineVersion}; ${FLOWN_WORDS[flown ?? 'not-stated']}.`,
  );
}

function goalLines({ goals }: Progress): string[] {
  if (goals.length === 0) return [];
  const words = ({ agreedOn, reachedOn }: Progress['goals'][number]) =>
    reachedOn === null
      ? `not reached yet, agreed on ${dayOf(agreedOn)}`
      : `reached on ${dayOf(reachedOn)}, agreed on ${dayOf(agreedOn)}`;
  return [
    'Goals agreed',
    ...goals.flatMap((goal) =>
      indentedLines(goal.reachedOn === null ? '  ○ ' : '  ● ', `${goal.text}: ${words(goal)}`),
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

function surenessLines({ lines, confidence }: Progress): string[] {
  const slopes = lines.filter(({ trend }) => trend.slopePerLesson !== null);
  if (slopes.length === 0) return [];
  const measured = lines.some(({ measure }) => measure === 'rms' || measure === 'inside-by-time');
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  return [
    ...pageLines(
      `"Between" holds the true change with ${percent(confidence.interval)}, if chance alone makes lessons differ; ` +
        'aircraft, wind and weather do so too. Better and worse are said where the change is as sure among ' +
        `${confidence.lines === 1 ? 'the one line' : `all ${confidence.lines} lines together`}; perhaps, where the ` +
        'line alone shows it, as one of many may by chance.',
    ),
    ...(measured ? pageLines('RMS and shares are by recorded time, not by distance.') : []),
  ];
}

function dayOf(date: string): string {
  return dayAndClock(`${date}T00:00:00Z`).day;
}

function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}
