import { findExcursions, timeOutsideS, type Excursion } from '../approach/excursions.ts';
import { clip, durationS, type Polyline, type Span } from '../numeric/polyline.ts';
import type { CriterionJudgement, JudgedExcursion, Verdict } from './judgement.ts';
import { halved } from './halved.ts';
import { judgeExcursions, type PromptRule } from './prompt.ts';
import type { Limit } from './standard.ts';
import { hiddenS } from './hidden.ts';
import { seconds } from './words.ts';

/** One value over the time where its tolerance counts. */
export interface TimedQuestion {
  readonly id: string;
  readonly title: string;
  readonly unit: CriterionJudgement['unit'];
  readonly limit: Limit;
  /** The limit in words, as the end of "beyond …". */
  readonly limitWords: string;
  readonly counted: readonly Span[];
  /** The recorded value within `counted`, relative to its target. */
  readonly parts: readonly Polyline[];
  /** One excursion that the rules make, in place of whatever was flown in its time; null for none. */
  readonly madeUp: Excursion | null;
  /** Spells parted only by time this near the limit are one. */
  readonly near: number;
  /** Half of a limit is never taken below this. */
  readonly halfFloor: number;
  readonly prompt: PromptRule;
  /** What ended it, where an excursion that runs to the very end is no fault or was answered; null elsewhere. */
  readonly endedBy: 'leaving' | 'going-around' | null;
  /** Why being within is not yet proof; null when the stretch was flown to its end. */
  readonly openEnd: string | null;
}

/** Time beyond a limit, its excursions, and whether that is met. Beyond once is proof; within needs all of it. */
export function judgeTimed(question: TimedQuestion): CriterionJudgement {
  const { id, title, unit, limit, counted, parts, madeUp } = question;
  const later = madeUp === null ? parts : afterMoment(parts, madeUp.endS);
  const found = [...(madeUp ? [madeUp] : []), ...findExcursions(later, limit, question.near)];
  // Who circles or sidesteps leaves the beam on purpose: its last excursion is the leaving itself.
  const excursions = question.endedBy === 'leaving' ? found.filter((one) => !isOpen(one, counted)) : found;
  // Of a final that went on unseen, no share can be told.
  const rule = question.openEnd === null ? question.prompt : { ...question.prompt, finalS: Infinity };
  const judged = judgeExcursions(excursions, limit, rule);
  const assessedS = durationS(parts);
  return {
    id,
    title,
    limit,
    unit,
    measured: farthest(parts, limit),
    counted,
    assessedS,
    outsideS: assessedS > 0 ? timeOutsideS(excursions) : null,
    excursions: judged,
    insideHalfShare: assessedS > 0 ? insideHalfS(parts, limit, question.halfFloor) / assessedS : null,
    ...verdictOf(question, judged, assessedS),
    allowed: null,
  };
}

function verdictOf(
  { limitWords, parts, counted, limit, openEnd, endedBy }: TimedQuestion,
  excursions: readonly JudgedExcursion[],
  assessedS: number,
): { verdict: Verdict; why: string } {
  const outsideS = timeOutsideS(excursions);
  if (assessedS === 0) return { verdict: 'not-assessed', why: 'nothing of it was recorded' };
  if (excursions.some(({ prompt }) => !prompt))
    return { verdict: 'not-met', why: `beyond ${limitWords} for ${seconds(outsideS)}` };
  const answered = endedBy === 'going-around' && excursions.some((one) => isOpen(one, counted));
  const how = answered ? 'answered by going around' : 'promptly corrected';
  const within =
    excursions.length === 0
      ? `within ${limitWords}`
      : `beyond ${limitWords} for ${seconds(outsideS)}, ${how}`;
  const unrecordedS = hiddenS(parts, counted, limit);
  if (openEnd !== null) return { verdict: 'not-assessed', why: `${within}, but ${openEnd}` };
  if (unrecordedS > 0)
    return { verdict: 'not-assessed', why: `${within}, but ${seconds(unrecordedS)} of it were not recorded` };
  return { verdict: 'met', why: within };
}

/** Whether an excursion was not over when what counted was. */
function isOpen({ endS }: Excursion, counted: readonly Span[]): boolean {
  return counted.length > 0 && endS >= counted.at(-1)!.endS;
}

function insideHalfS(parts: readonly Polyline[], limit: Limit, floor: number): number {
  return durationS(parts) - timeOutsideS(findExcursions(parts, halved(limit, floor), 0));
}

/** The value farthest beyond its limit, or nearest to it. */
function farthest(parts: readonly Polyline[], { lower, upper }: Limit): number | null {
  let worst: number | null = null;
  let mostBeyond = -Infinity;
  for (const { value } of parts)
    for (const v of value) {
      const beyond = Math.max(upper === null ? -Infinity : v - upper, lower === null ? -Infinity : lower - v);
      if (beyond <= mostBeyond) continue;
      mostBeyond = beyond;
      worst = v;
    }
  return worst;
}

function afterMoment(parts: readonly Polyline[], momentS: number): Polyline[] {
  return parts.flatMap(({ timeS, value }) =>
    clip(timeS, value, { startS: momentS, endS: Infinity }, Infinity),
  );
}
