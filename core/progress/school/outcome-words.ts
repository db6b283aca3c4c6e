import type { OutcomeShare } from './school.ts';

/** What became of an approach. */
export const OUTCOME_WORDS: Readonly<Record<OutcomeShare['outcome'], string>> = {
  stable: 'stable from the gate on',
  'unstable-went-around': 'unstable, and went around',
  'unstable-continued': 'unstable, and continued',
};
