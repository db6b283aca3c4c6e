import { BY_DRAFT, UNIT_DOUBTED } from '../not-counted-words.ts';
import { inSentence } from '../in-sentence.ts';
import { counted } from '../sentences.ts';
import { approachesOf } from './counted.ts';
import type { School } from './school.ts';

/** Of what there is no figure, a sentence each. */
export function coverageSentences({ coverage, measure }: Pick<School, 'coverage' | 'measure'>): string[] {
  const { studentsWithoutLog, lessonsWithoutLog, logsWithoutApproach } = coverage;
  const { approachesOfNobody, passes, byDraft, unitDoubted, notHeld, unreadable } = coverage;
  const told: readonly (readonly [number, string])[] = [
    [studentsWithoutLog.length, `Students without a log: ${studentsWithoutLog.join(', ')}.`],
    [lessonsWithoutLog, `${counted(lessonsWithoutLog, 'lesson')} without a log.`],
    [logsWithoutApproach, `${counted(logsWithoutApproach, 'log')} without an approach.`],
    [
      approachesOfNobody,
      `${approachesOf(approachesOfNobody)} of which nobody said whose ${approachesOfNobody === 1 ? 'it is' : 'they are'}.`,
    ],
    [
      passes,
      `${counted(passes, 'pass', 'passes')} along the localizer or late finals, which are not judged.`,
    ],
    [byDraft, `${approachesOf(byDraft)} ${BY_DRAFT}`],
    [unitDoubted, `${approachesOf(unitDoubted)} ${UNIT_DOUBTED}`],
    [
      notHeld,
      `${approachesOf(notHeld)} that ${notHeld === 1 ? 'was' : 'were'} not held to ${inSentence(measure.title)}.`,
    ],
    [
      unreadable,
      `${counted(unreadable, 'debrief')} that the library cannot read any more. \`halfdot check\` says more.`,
    ],
  ];
  return told.filter(([count]) => count > 0).map(([, sentence]) => sentence);
}
