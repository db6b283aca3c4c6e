import type { FlownApproach } from '../approach/flown-approach.ts';
import type { DebriefCriterion } from './debrief.ts';

/** How an approach ended, as the end of a sentence. */
const ENDINGS: Readonly<Record<FlownApproach['outcome'], string>> = {
  'touch-and-go': 'a touch-and-go',
  landed: 'landed',
  'low-approach': 'a low approach',
  'missed-approach': 'went around',
  sidestepped: 'sidestepped to another runway',
  circled: 'circled',
  'broken-off': 'broken off',
  incomplete: 'the log ends before the approach does',
};

/** One sentence about an approach, by its two needles and its end. */
export function summaryOf(approach: FlownApproach, criteria: readonly DebriefCriterion[]): string {
  const ending = ENDINGS[approach.outcome];
  if (approach.kind !== 'approach') return `Not an approach to be graded: ${approach.why!}; ${ending}.`;
  const outside = criteria.filter(({ verdict }) => verdict === 'not-met');
  const open = criteria.find(({ verdict }) => verdict === 'not-assessed');
  if (outside.length > 0) {
    const needles = outside.map(({ title, why }) => `${title.split(' ')[0]!.toLowerCase()} was ${why}`);
    return `On final the ${needles.join(', and the ')}; ${ending}.`;
  }
  if (criteria.length === 0) return `Final was not flown; ${ending}.`;
  if (open) return `On final both needles were ${open.why}; ${ending}.`;
  return `Both needles stayed within ¾ scale from the start of final to decision altitude; ${ending}.`;
}
