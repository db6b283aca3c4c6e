import {
  excursionsOff,
  findExcursions,
  timeOutsideS,
  type Excursion,
  type Off,
} from '../approach/excursions.ts';
import { clip, durationS, largestOf, type Polyline, type Span } from '../numeric/polyline.ts';
import type { CriterionJudgement, JudgedExcursion, Verdict } from './judgement.ts';
import { halved } from './halved.ts';
import { isShort, judgeExcursions, MOST_OF_THEM, type PromptRule } from './prompt.ts';
import type { Limit } from './standard.ts';
import { hiddenS } from './hidden.ts';
import { lengthNm, outsideDistanceNm } from './outside-distance.ts';
import { within } from './within.ts';
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
  /** Nautical miles flown since each part began, in lines of the same times. */
  readonly flownNm: readonly Polyline[];
  /** How far off it may be, 95 % half-widths in lines of the same times; empty where it is what it says. */
  readonly halfWidths: readonly Polyline[];
  /** Until when one excursion that the rules make stands in place of whatever was flown; null for none. */
  readonly madeUpToS: number | null;
  /** Spells parted only by time this near the limit are one. */
  readonly near: number;
  /** Half of a limit is never taken below this. */
  readonly halfFloor: number;
  readonly prompt: PromptRule;
  /** What the instructor flew, so far as it is stated. */
  readonly instructorFlew?: readonly Span[];
  /** What ended it, where an excursion that runs to the very end is no fault or was answered; null elsewhere. */
  readonly endedBy: 'leaving' | 'going-around' | null;
  /** Why being within is not yet proof; null when the stretch was flown to its end. */
  readonly openEnd: string | null;
}

/** A question as it is answered with the value off one way. */
interface Reading {
  readonly excursions: readonly JudgedExcursion[];
  readonly outsideS: number;
}

/**
 * Time beyond a limit, its excursions, and whether that is met. It is read three times: with the value off inward by
 * all that it may be, as it is, and off outward. Beyond in the first is proof, within in the last is proof.
 */
export function judgeTimed(question: TimedQuestion): CriterionJudgement {
  const { id, title, unit, limit, counted, parts, halfWidths } = question;
  const assessedS = durationS(parts);
  const most = read(question, halfWidths.length === 0 ? 0 : 1);
  // What is never beyond with all of its error outward is never beyond with less, but for a leaving that was left out.
  const isSettled =
    halfWidths.length === 0 || (most.excursions.length === 0 && question.endedBy !== 'leaving');
  const best = isSettled ? most : read(question, 0);
  const least = isSettled ? most : read(question, -1);
  const hidden = hiddenS(parts, counted, limit, halfWidths);
  return {
    id,
    title,
    limit,
    unit,
    measured: farthest(question.endedBy === 'leaving' ? beforeLeaving(question) : parts, limit),
    halfWidth: largest(halfWidths),
    counted,
    assessedS,
    outsideS: assessedS === 0 ? null : best.outsideS,
    assessedNm: assessedS === 0 ? null : lengthNm(question.flownNm),
    outsideNm: assessedS === 0 ? null : outsideDistanceNm(question, best.excursions),
    outsideRangeS:
      assessedS === 0
        ? null
        : {
            atLeast: Math.min(least.outsideS, best.outsideS),
            atMost: Math.max(most.outsideS, best.outsideS) + hidden,
          },
    excursions: best.excursions,
    insideHalfShare: assessedS > 0 ? insideHalfS(parts, limit, question.halfFloor) / assessedS : null,
    ...verdictOf(question, { least, best, most, hiddenS: hidden, assessedS }),
    allowed: null,
  };
}

function read(question: TimedQuestion, off: Off): Reading {
  const { limit, counted, parts, halfWidths, madeUpToS, near } = question;
  const madeUp = madeUpToS === null ? null : joining(question, madeUpToS, off);
  const later = (lines: readonly Polyline[]) =>
    madeUpToS === null || !madeUp ? lines : afterMoment(lines, madeUpToS);
  const found = excursionsOff(later(parts), later(halfWidths), limit, near, off);
  const all = madeUp === null ? found : [madeUp, ...found];
  // Who circles or sidesteps leaves the beam on purpose: its last excursion is the leaving itself.
  const excursions = question.endedBy === 'leaving' ? all.filter((one) => !isOpen(one, counted)) : all;
  // Of a final that went on unseen, no share can be told.
  const rule = question.openEnd === null ? question.prompt : { ...question.prompt, finalS: Infinity };
  return { excursions: judgeExcursions(excursions, limit, rule), outsideS: timeOutsideS(excursions) };
}

/** Joined inside the fix: until established is one excursion, as deep as the deepest in it; null where that is within. */
function joining(
  { parts, halfWidths, counted, limit }: TimedQuestion,
  endS: number,
  off: Off,
): Excursion | null {
  let peak = 0;
  let peakS = counted[0]?.startS ?? NaN;
  let outsideS = 0;
  for (const [k, { timeS, value }] of parts.entries()) {
    // What was not recorded, or not flown by the student, is no time outside.
    outsideS += Math.max(0, Math.min(timeS.at(-1)!, endS) - timeS[0]!);
    for (let i = 0; i < value.length && timeS[i]! <= endS; i++) {
      const half = off * (halfWidths[k]?.value[i] ?? 0);
      const moved = Math.sign(value[i]!) * Math.max(0, Math.abs(value[i]!) + half);
      if (Math.abs(moved) > Math.abs(peak)) [peak, peakS] = [moved, timeS[i]!];
    }
  }
  if (counted.length === 0 || within(limit, peak)) return null;
  const { startS } = counted[0]!;
  return { startS, endS, outsideS, peak, peakS, side: peak > 0 ? 'above' : 'below', untilEstablished: true };
}

interface Readings {
  readonly least: Reading;
  readonly best: Reading;
  readonly most: Reading;
  readonly hiddenS: number;
  readonly assessedS: number;
}

function verdictOf(question: TimedQuestion, readings: Readings): { verdict: Verdict; why: string } {
  const { limitWords, counted, openEnd, endedBy } = question;
  const { least, best, most, hiddenS: hidden, assessedS } = readings;
  // Only what the instructor flew is taken out of where it counts.
  if (counted.length === 0) return { verdict: 'not-assessed', why: 'the instructor flew all of it' };
  if (assessedS === 0) return { verdict: 'not-assessed', why: 'nothing of it was recorded' };
  const isBeyond = ({ excursions }: Reading) => excursions.some(({ prompt }) => !prompt);
  const beyond = beyondWords(question, best);
  // Moved inward one excursion may fall apart into too many, so that alone is no proof; nor is outward, where they join.
  if (isBeyond(least) && isBeyond(best))
    return { verdict: 'not-met', why: `${beyond}${spreadWords(readings)}${oftenWords(question, best)}` };
  const answered = endedBy === 'going-around' && best.excursions.some((one) => isOpen(one, counted));
  const how = answered ? 'answered by going around' : correctedWords(question, best);
  const promptly = isBeyond(best) ? beyond : `${beyond}, ${how}`;
  const told = best.excursions.length === 0 ? `within ${limitWords}` : promptly;
  if (openEnd !== null) return { verdict: 'not-assessed', why: `${told}, but ${openEnd}` };
  if (hidden > assessedS)
    return { verdict: 'not-assessed', why: `${told}, but most of it, ${seconds(hidden)}, was not recorded` };
  const isOpenByError = [least, best, most].some(isBeyond);
  const doubt = isOpenByError ? spreadWords(readings) || ', though given its error not surely' : '';
  if (hidden > 0)
    return { verdict: 'unclear', why: `${told}${doubt}, but ${seconds(hidden)} of it were not recorded` };
  return isOpenByError ? { verdict: 'unclear', why: `${told}${doubt}` } : { verdict: 'met', why: told };
}

/** Where each was short and only their number is against them, that has to be said. */
function oftenWords({ prompt }: TimedQuestion, { excursions }: Reading): string {
  const areMany = excursions.length > MOST_OF_THEM && excursions.every((one) => isShort(one, prompt));
  return areMany ? `, ${excursions.length} times: two at most count as promptly corrected` : '';
}

/** How long it was out: one who has yet to settle is not beyond the limit all that time. */
function beyondWords({ limitWords, instructorFlew = [] }: TimedQuestion, best: Reading): string {
  const beyond = (s: number) => `beyond ${limitWords} for ${seconds(s)}`;
  const joined = best.excursions.find(({ untilEstablished }) => untilEstablished);
  if (!joined) return beyond(best.outsideS);
  const first = instructorFlew.length === 0 ? 'the first ' : '';
  const late = `not established for ${first}${seconds(joined.outsideS)} of final`;
  const laterS = best.outsideS - joined.outsideS;
  return laterS > 0 ? `${late}, then ${beyond(laterS)}` : late;
}

/** So short that it passes for promptly corrected; where the instructor took over in it, nobody saw that it was. */
function correctedWords({ instructorFlew = [] }: TimedQuestion, { excursions }: Reading): string {
  const isTaken = excursions.some(({ endS }) => instructorFlew.some(({ startS }) => startS === endS));
  return isTaken ? 'until the instructor took over' : 'promptly corrected';
}

/** What the error leaves open, where that is told in whole seconds. */
function spreadWords({ least, best, most }: Readings): string {
  const [from, to] = [least, most].map(({ outsideS }) => Math.round(outsideS));
  if (best.outsideS === 0) return `, though given its error up to ${seconds(most.outsideS)} beyond`;
  return from === to ? '' : `, ${from} to ${to} s given its error`;
}

function largest(lines: readonly Polyline[]): number | null {
  const most = largestOf(lines);
  return most > 0 ? most : null;
}

/** Whether an excursion was not over when what counted was. */
function isOpen({ endS }: Excursion, counted: readonly Span[]): boolean {
  return counted.length > 0 && endS >= counted.at(-1)!.endS;
}

function insideHalfS(parts: readonly Polyline[], limit: Limit, floor: number): number {
  return durationS(parts) - timeOutsideS(findExcursions(parts, halved(limit, floor), 0));
}

/** What was flown before the leaving itself, which is no excursion and so no farthest value either. */
function beforeLeaving({ parts, limit, near, counted }: TimedQuestion): Polyline[] {
  const leaving = findExcursions(parts, limit, near).find((one) => isOpen(one, counted));
  return leaving ? beforeMoment(parts, leaving.startS) : [...parts];
}

/** The value farthest beyond its limit, or nearest to it. */
function farthest(parts: readonly Polyline[], { lower, upper }: Limit): number | null {
  let worst: number | null = null;
  let mostBeyond = -Infinity;
  for (const { value } of parts)
    for (let i = 0; i < value.length; i++) {
      const v = value[i]!;
      const beyond = Math.max(upper === null ? -Infinity : v - upper, lower === null ? -Infinity : lower - v);
      if (beyond <= mostBeyond) continue;
      mostBeyond = beyond;
      worst = v;
    }
  return worst;
}

function beforeMoment(parts: readonly Polyline[], momentS: number): Polyline[] {
  return parts.flatMap(({ timeS, value }) =>
    clip(timeS, value, { startS: -Infinity, endS: momentS }, Infinity),
  );
}

function afterMoment(parts: readonly Polyline[], momentS: number): Polyline[] {
  return parts.flatMap(({ timeS, value }) =>
    clip(timeS, value, { startS: momentS, endS: Infinity }, Infinity),
  );
}
