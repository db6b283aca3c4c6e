import { findExcursions, timeOutsideS, timeWithinS, type Excursion } from '../approach/excursions.ts';
import { durationS, type Polyline, type Span } from '../numeric/polyline.ts';
import type { CriterionJudgement, JudgedExcursion, Verdict } from './judgement.ts';
import { judgeExcursions, type PromptRule } from './prompt.ts';
import type { Limit } from './standard.ts';
import { seconds } from './words.ts';

/** A gap this short, with both ends within half the limit, hides nothing (design, section 10). */
const HARMLESS_GAP_S = 10;

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
  const judged = judgeExcursions(excursions, limit, question.prompt);
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

/** Unrecorded seconds in which the value may have been beyond its limit. */
function hiddenS(parts: readonly Polyline[], counted: readonly Span[], limit: Limit): number {
  let hidden = 0;
  for (const { startS, endS } of counted) {
    let fromS = startS;
    let before: number | null = null;
    const inside = parts.filter(({ timeS }) => timeS[0]! >= startS && timeS.at(-1)! <= endS);
    for (const { timeS, value } of inside) {
      hidden += gapS(timeS[0]! - fromS, before, value[0]!, limit);
      fromS = timeS.at(-1)!;
      before = value.at(-1)!;
    }
    hidden += gapS(endS - fromS, before, null, limit);
  }
  return hidden;
}

function gapS(lengthS: number, before: number | null, after: number | null, limit: Limit): number {
  const wellInside = [before, after].every((value) => value !== null && isWellInside(value, limit));
  return lengthS <= HARMLESS_GAP_S && wellInside ? 0 : Math.max(0, lengthS);
}

function isWellInside(value: number, limit: Limit): boolean {
  const { lower, upper } = halved(limit, 0);
  return value >= lower && value <= upper;
}

/** Half of a limit to each side of its target; of a band beside the target, the middle half. */
function halved({ lower, upper }: Limit, floor: number): { lower: number; upper: number } {
  if (lower !== null && upper !== null && !(lower < 0 && upper > 0)) {
    const quarter = (upper - lower) / 4;
    return { lower: lower + quarter, upper: upper - quarter };
  }
  return {
    lower: lower === null ? -Number.MAX_VALUE : Math.min(lower / 2, -floor),
    upper: upper === null ? Number.MAX_VALUE : Math.max(upper / 2, floor),
  };
}

function insideHalfS(parts: readonly Polyline[], limit: Limit, floor: number): number {
  const { lower, upper } = halved(limit, floor);
  const middle = lower / 2 + upper / 2;
  const shifted = parts.map(({ timeS, value }) => ({ timeS, value: value.map((v) => v - middle) }));
  return timeWithinS(shifted, upper - middle);
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
  return parts.flatMap(({ timeS, value }) => {
    const first = timeS.findIndex((s) => s >= momentS);
    const kept = { timeS: timeS.slice(first), value: value.slice(first) };
    return first === -1 || kept.timeS.length < 2 ? [] : [kept];
  });
}
