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
  return findings.filter((finding) => finding.kind === kind && finding.rank <= SHOWN);
}

/** What is less than main, one sentence; null where there is nothing. */
export function furtherSentence({ findings }: Pick<ApproachDebrief, 'findings'>): string | null {
  const further = findings.filter(({ rank }) => rank > SHOWN);
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
        `${finding.title}. ${finding.text}`,
      ),
      ...indentedLines('               ', `Practise: ${finding.practise!}`),
    ]),
    ...(praise.length > 0 ? ['Good'] : []),
    ...praise.flatMap(({ fromUtc, title, text }) =>
      indentedLines(`     ${clockOf(fromUtc)}  `, `${title}. ${text}`),
    ),
    ...(further === null ? [] : indentedLines('  ', further)),
  ];
}

/** The moment of a finding, as the table of moments tells it. */
export function clockOf(utc: string): string {
  return dayAndClock(utc).clock;
}
