import type { ApproachDebrief, Debrief, DebriefEvent } from '../debrief/debrief.ts';
import { criteriaLines, notAssessedLines, stabilityLines } from './criterion-lines.ts';
import { eventLine } from './event-lines.ts';
import { findingLines } from './finding-lines.ts';
import { gradeLines } from './grade-lines.ts';
import { measureLines } from './measure-lines.ts';
import { dayAndClock } from './plain-words.ts';
import { positionSentence } from './position-line.ts';
import { safetySentences } from './safety-sentences.ts';
import { segmentLines } from './segment-lines.ts';
import { statedLines } from './stated-lines.ts';
import { indentedLines, pageLines } from './text-rows.ts';

const KINDS = { approach: 'Approach', 'visual-final': 'Visual final', 'localizer-pass': 'Pass' };

/** The debrief as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function debriefText(debrief: Debrief): string {
  const several = debrief.approaches.length > 1;
  const blocks = [
    ...debrief.approaches.flatMap((approach) => approachBlocks(approach, debrief, several)),
    debrief.issues.flatMap(({ message, tip }) => pageLines(tip ? `${message} ${tip}` : message)),
    ...(isJudged(debrief) ? [taskLines(debrief)] : []),
    [
      ...pageLines(sourceSentence(debrief)),
      ...(isJudged(debrief) ? pageLines(positionSentence(debrief)) : []),
    ],
    sentencesToCheck(debrief).flatMap(pageLines),
    debrief.cautions.flatMap((caution) => pageLines(`Caution: ${caution}`)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** Whether anything was held to the standard. */
export function isJudged({ approaches }: Debrief): boolean {
  return approaches.some(({ criteria }) => criteria.length > 0);
}

/** What it was made of. Where no approach was flown nothing was judged either. */
export function sourceSentence(debrief: Debrief): string {
  const { log, facility, standard } = debrief;
  const judged = isJudged(debrief) ? `, judged by ${standard.source}` : '';
  return `From ${log.file} at ${facility.name}${judged}.`;
}

function approachBlocks(approach: ApproachDebrief, { log }: Debrief, several: boolean): string[][] {
  const { summary, criteria, events, segments, stated } = approach;
  const heading = approachHeading(approach, log);
  return [
    ...(several ? [[heading, '-'.repeat(heading.length)]] : []),
    [summary, ...safetySentences(approach)].flatMap(pageLines),
    findingLines(approach),
    approach.issues.flatMap(({ message, tip }) => pageLines(`Check the facility first: ${message} ${tip}`)),
    criteriaLines(approach),
    stabilityLines(approach.stability),
    [
      ...pageLines(`What happened (${zoneOf(log)}; ${altitudeWords(events, log)}; needles: 1 is full scale)`),
      ...events.map((event) => `  ${eventLine(event)}`),
    ],
    segments.flatMap((segment) => segmentLines(segment, stated.instructorFlew)),
    measureLines(approach, log),
    gradeLines(approach),
    notAssessedLines(criteria),
    statedLines(approach),
  ];
}

/** Which approach, and when it began. */
export function approachHeading({ kind, index, startUtc }: ApproachDebrief, log: Debrief['log']): string {
  const { day, clock } = dayAndClock(startUtc);
  const moment =
    log.timeReference === 'elapsed' ? `${clock} into the log` : `${day}, ${clock} ${zoneOf(log)}`;
  return `${KINDS[kind]} ${index}, ${moment}`;
}

/** By what the times of a debrief are told. */
export function zoneOf({ timeReference }: Pick<Debrief['log'], 'timeReference'>): string {
  return { utc: 'UTC', local: 'times as written', elapsed: 'from the start of the log' }[timeReference];
}

/** Which altitude the moments are told by: a pilot flies by the altimeter, so the other kind is named for what it is. */
export function altitudeWords([event]: readonly DebriefEvent[], { positionError }: Debrief['log']): string {
  return event?.altitudeSource === 'indicated'
    ? 'indicated altitudes'
    : `heights from the log, ± ${Math.ceil(positionError.heightFt.median)} ft: your altimeter decides`;
}

function taskLines(debrief: Debrief): string[] {
  return taskSentences(debrief).flatMap(([covers, cannotSee]) => [
    ...pageLines(covers),
    ...indentedLines('  ', cannotSee),
  ]);
}

/** A debrief, or a standard alone. */
interface Tasked {
  readonly standard: Pick<Debrief['standard'], 'tasks'>;
}

/** Which tasks of the standard this covers in part, and what it cannot see of them, a pair of sentences each. */
export function taskSentences({ standard }: Tasked): [covers: string, cannotSee: string][] {
  return standard.tasks.map(({ code, title, covered, notSeen }) => [
    `Of ${code}, ${title}, a log can show in part: ${covered}.`,
    `It cannot see: ${notSeen}.`,
  ]);
}

/** What is doubtful in the facility or the log: to be looked at before anybody is judged by it. */
export function sentencesToCheck({ log, facility, approaches }: Debrief): string[] {
  const atTheHead = new Set(approaches.flatMap(({ issues }) => issues.map(({ code }) => code)));
  return [...facility.issues, ...log.issues]
    .filter(({ severity, code }) => severity !== 'note' && !atTheHead.has(code))
    .map(({ message, tip }) => `To be checked: ${message}${tip ? ` ${tip}` : ''}`);
}
