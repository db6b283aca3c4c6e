import { clusteredShare } from '../../numeric/clustered-share.ts';
import { grouped } from './grouped.ts';
import type { OutcomeShare, Outcomes } from './school.ts';
import type { SchoolApproach } from './school-input.ts';

const OUTCOMES = ['stable', 'unstable-went-around', 'unstable-continued'] as const;

/** What became of approaches, as shares of those of which it is known. */
export function outcomesOf(approaches: readonly SchoolApproach[], confidence: number): Outcomes {
  const decided = approaches.filter(({ wentOn }) => isDecided(wentOn));
  const students = [...grouped(decided, ({ studentId }) => studentId).values()];
  return {
    decided: decided.length,
    students: students.length,
    shares: decided.length === 0 ? [] : OUTCOMES.map((outcome) => shareOf(outcome, students, confidence)),
    unclear: approaches.filter(({ wentOn }) => wentOn === 'unclear').length,
    notAssessed: approaches.filter(({ wentOn }) => wentOn === 'not-assessed').length,
  };
}

function isDecided(wentOn: SchoolApproach['wentOn']): boolean {
  return OUTCOMES.some((outcome) => outcome === wentOn);
}

function shareOf(
  outcome: OutcomeShare['outcome'],
  students: readonly (readonly SchoolApproach[])[],
  confidence: number,
): OutcomeShare {
  const counts = students.map((flown) => ({
    hits: flown.filter(({ wentOn }) => wentOn === outcome).length,
    trials: flown.length,
  }));
  const { share, interval } = clusteredShare(counts, confidence);
  return { outcome, count: counts.reduce((sum, { hits }) => sum + hits, 0), share, interval };
}
