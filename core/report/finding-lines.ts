import type { ApproachDebrief, DebriefFinding } from '../debrief/debrief.ts';
import { dayAndClock } from './plain-words.ts';
import { indentedLines } from './text-rows.ts';

/** So many of each kind are told at once; more than three nobody takes home. */
const SHOWN = 3;

/** The findings that are told at once: the main faults, and what was good. */
export function mainFindings(
  { findings }: Pick<ApproachDebrief, 'findings'>,
  kind: DebriefFinding['kind'],
): readonly DebriefFinding[] {
  return findings.filter(
    (finding) => finding.kind === kind && finding.rank <= SHOWN && !isDismissed(finding),
  );
}

/** The title of what was better than the time before, which the library knows, and the log does not. */
export const BETTER_THAN_LAST = 'Better than the last time';

/** The instructor does not want it told. */
export function isDismissed({ remark }: Pick<DebriefFinding, 'remark'>): boolean {
  return remark?.verdict === 'dismissed';
}

/** What is said, in the instructor's words where there are any. */
export function saidText({ text, remark }: Pick<DebriefFinding, 'text' | 'remark'>): string {
  return remark?.words ?? text;
}

/** Whose words they are, and what the student answered; nothing where that needs no words. */
export function remarkSentences({ remark }: Pick<DebriefFinding, 'remark'>): string[] {
  if (remark === null) return [];
  return [
    ...(remark.words === null ? [] : ['In the instructor’s words.']),
    ...(remark.answer === null ? [] : [`The student: ${remark.answer}`]),
  ];
}

/** What is less than main, one sentence; null where there is nothing. */
export function furtherSentence({ findings }: Pick<ApproachDebrief, 'findings'>): string | null {
  const further = findings.filter((finding) => finding.rank > SHOWN && !isDismissed(finding));
  if (further.length === 0) return null;
  return `Further: ${further.map(({ title, fromUtc }) => `${clockOf(fromUtc)} ${title}`).join('; ')}.`;
}

/** The findings as lines of a page: what to work on by rank, each with its moment and an exercise, then what was good. */
export function findingLines(approach: Pick<ApproachDebrief, 'findings'>): string[] {
  const [faults, praise] = [mainFindings(approach, 'fault'), mainFindings(approach, 'praise')];
  const further = furtherSentence(approach);
  return [
    ...(faults.length > 0 ? ['To work on'] : []),
    ...faults.flatMap((finding) => [
      ...indentedLines(
        `  ${finding.rank}. ${clockOf(finding.fromUtc)}  `,
        `${finding.title}. ${saidText(finding)}`,
      ),
      ...indentedLines('               ', `Practise: ${finding.practise!}`),
      ...remarkSentences(finding).flatMap((sentence) => indentedLines('               ', sentence)),
    ]),
    ...(praise.length > 0 ? ['Good'] : []),
    ...praise.flatMap((finding) => [
      ...indentedLines(`     ${clockOf(finding.fromUtc)}  `, `${finding.title}. ${saidText(finding)}`),
      ...remarkSentences(finding).flatMap((sentence) => indentedLines('               ', sentence)),
    ]),
    ...(further === null ? [] : indentedLines('  ', further)),
  ];
}

/** The moment of a finding, as the table of moments tells it. */
export function clockOf(utc: string): string {
  return dayAndClock(utc).clock;
}
