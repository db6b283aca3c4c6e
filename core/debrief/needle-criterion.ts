import { INSTRUMENT_RATING } from '../standard/instrument-rating.ts';
import type { DebriefCriterion, DebriefNeedle } from './debrief.ts';

const LIMIT_WORDS = '¾ scale';

/**
 * Whether a needle stayed within the limit on final. Beyond it once is proof against, whatever the log lacks; within
 * it is proof only when final was flown to decision altitude and recorded without a hole.
 */
export function needleCriterion(
  id: DebriefCriterion['id'],
  title: string,
  needle: DebriefNeedle,
  unrecordedS: number,
  flownToDecision: boolean,
): DebriefCriterion {
  return {
    id,
    title,
    limit: INSTRUMENT_RATING.finalNeedleFullScale,
    unit: 'full scale',
    measured: needle.maxAbsFullScale,
    timeOutsideS: needle.timeOutsideS,
    ...verdictOf(needle, unrecordedS, flownToDecision),
  };
}

function verdictOf(
  { timeOutsideS }: DebriefNeedle,
  unrecordedS: number,
  flownToDecision: boolean,
): Pick<DebriefCriterion, 'verdict' | 'why'> {
  const notAssessed = (why: string) => ({ verdict: 'not-assessed', why }) as const;
  if (!timeOutsideS) return notAssessed('nothing of it was recorded on final');
  if (timeOutsideS.best > 0)
    return { verdict: 'not-met', why: `beyond ${LIMIT_WORDS} for ${seconds(timeOutsideS.best)}` };
  if (!flownToDecision)
    return notAssessed(`within ${LIMIT_WORDS}, but final was not flown to decision altitude`);
  if (unrecordedS > 0)
    return notAssessed(`within ${LIMIT_WORDS}, but ${seconds(unrecordedS)} of final were not recorded`);
  return { verdict: 'met', why: `within ${LIMIT_WORDS} down to decision altitude` };
}

/** Seconds as a person says them; a moment that would read as none is said to be less than one. */
function seconds(s: number): string {
  return s < 1 ? 'less than 1 s' : `${Math.round(s)} s`;
}
