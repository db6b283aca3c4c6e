import type { Excursion } from '../approach/excursions.ts';
import type { JudgedExcursion } from './judgement.ts';
import type { Limit } from './standard.ts';

/**
 * What still counts as promptly corrected. Ours: the published ground is "consistently exceeds tolerances" and
 * "prompt corrective action" (FAA-S-ACS-8C, evaluation criteria; second-hand).
 */
const LONGEST_S = 5;
/** Below 500 ft there is less time. */
const LONGEST_LOW_S = 3;
/** A second since 1970 is known to less than a microsecond, and a log's to a thousandth. */
const HAIR_S = 0.001;
export const MOST_OF_THEM = 2;
const MOST_SHARE = 0.05;

export interface PromptRule {
  /** How far beyond the limit: 0.15 of full scale, 5 kt. */
  readonly depth: number;
  /** A needle at this is on its stop, however the limit stands; Infinity for what has none. */
  readonly stop: number;
  /** When 500 ft was passed; Infinity when it was not. */
  readonly lowFromS: number;
  readonly decisionS: number | null;
  readonly finalS: number;
}

/** Marks the excursions that were promptly corrected: a third, or too many seconds together, and none was. */
export function judgeExcursions(
  excursions: readonly Excursion[],
  limit: Limit,
  rule: PromptRule,
): JudgedExcursion[] {
  const togetherS = excursions.reduce((sum, { outsideS }) => sum + outsideS, 0);
  const few = excursions.length <= MOST_OF_THEM && togetherS <= MOST_SHARE * rule.finalS + HAIR_S;
  return excursions.map((excursion) => ({
    ...excursion,
    prompt:
      few && isShort(excursion, rule) && isShallow(excursion, limit, rule) && !atDecision(excursion, rule),
  }));
}

export function isShort(
  { startS, endS }: Pick<Excursion, 'startS' | 'endS'>,
  { lowFromS }: Pick<PromptRule, 'lowFromS'>,
): boolean {
  return endS - startS <= (endS > lowFromS ? LONGEST_LOW_S : LONGEST_S) + HAIR_S;
}

function isShallow({ peak, side }: Excursion, limit: Limit, { depth, stop }: PromptRule): boolean {
  const beyond = side === 'above' ? peak - limit.upper! : limit.lower! - peak;
  // Limits are decimal fractions: 0.75 + 0.15 is a hair off in binary.
  return beyond <= depth + 1e-9 && Math.abs(peak) < stop;
}

function atDecision({ startS, endS }: Excursion, { decisionS }: PromptRule): boolean {
  return decisionS !== null && startS <= decisionS && endS >= decisionS;
}
