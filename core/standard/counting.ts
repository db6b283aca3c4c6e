import { unseenPassage } from '../approach/flown-approach.ts';
import { at } from '../approach/flown.ts';
import type { Span } from '../numeric/polyline.ts';
import { finalOf, moment, PASSED_UNSEEN, type Case } from './case.ts';
import { countingGate } from './counting-gate.ts';
import { fallsToS } from './falling.ts';
import { INSIDE_FIX } from './words.ts';

/** Where a criterion counts, or why nowhere. */
export type Counting = { readonly span: Span } | { readonly why: string };

const NO_FINAL = 'final was not flown';
/** The glidepath counts this long after its intercept, or this far into final (design, section 9). */
const AFTER_INTERCEPT_S = 10;
const INTO_FINAL_NM = 0.5;
/** What was held for less than this before the fix proves nothing. Ours. */
const SHORTEST_S = 10;
/** A vectored aircraft is held to the localizer from here at the latest. */
const VECTORED_TO_NM = 3;

/** The localizer before final: from established to the fix. Before that it is described and not judged. */
export function localizerBeforeFinal(sitting: Case): Counting {
  const { approach } = sitting;
  const establishedS = moment(sitting, 'localizer-established');
  if (approach.insideFix !== null) return { why: INSIDE_FIX[approach.insideFix] };
  if (establishedS === null) return { why: 'never established on the localizer' };
  const endS = approach.finalBeganS ?? approach.endS;
  if (establishedS >= endS) return { why: 'not yet established at the fix' };
  if (endS - establishedS < SHORTEST_S) return { why: 'established too late before the fix to judge' };
  return { span: { startS: establishedS, endS } };
}

/** The localizer on final: from the fix, or from where final began inside it. */
export function localizerOnFinal(sitting: Case): Counting {
  const final = fromFixOrGate(sitting);
  if ('why' in final || !isVectored(sitting)) return final;
  const establishedS = moment(sitting, 'localizer-established') ?? Infinity;
  const { flown } = sitting;
  const closeS = fallsToS(flown, final.span, flown.deviations.distanceToThresholdNm, VECTORED_TO_NM);
  const startS = Math.max(final.span.startS, Math.min(establishedS, closeS ?? Infinity));
  return startS < final.span.endS ? { span: { startS, endS: final.span.endS } } : { why: NO_FINAL };
}

/** Where the log does not tell how it came there, what is stated does. */
export function isVectored({ approach, stated }: Case): boolean {
  return approach.insideFix !== null && stated.vectoredInsideFix;
}

/**
 * Until when one who was seen to join inside the fix counts as not established, which is one excursion; null where
 * that rule does not apply.
 */
export function joinedByS(sitting: Case): number | null {
  const { approach, standard } = sitting;
  const final = finalOf(sitting);
  if (!final || approach.insideFix !== 'joined' || isVectored(sitting)) return null;
  if (standard.final.countsFrom === 'gate') return null;
  return Math.min(moment(sitting, 'localizer-established') ?? Infinity, final.endS);
}

/** The glidepath on final: from the fix when it was held 10 s before, else once there was time to get on it. */
export function glidepathOnFinal(sitting: Case): Counting {
  const final = fromFixOrGate(sitting);
  if ('why' in final || sitting.standard.final.countsFrom === 'gate') return final;
  const { startS, endS } = final.span;
  const interceptS = moment(sitting, 'glidepath-intercept');
  if (interceptS !== null && interceptS + AFTER_INTERCEPT_S <= startS) return final;
  const caughtS = interceptS === null ? Infinity : interceptS + AFTER_INTERCEPT_S;
  const fromS = Math.min(caughtS, intoFinalS(sitting, final.span) ?? Infinity);
  if (fromS >= endS) return { why: 'final ended before the glidepath began to count' };
  return { span: { startS: fromS, endS } };
}

/** Airspeed and whatever else counts over all of final. */
export function fromFixOrGate(sitting: Case): Counting {
  const final = finalOf(sitting);
  if (!final) return { why: NO_FINAL };
  if (sitting.standard.final.countsFrom === 'fix') return { span: final };
  const gate = countingGate(sitting);
  const gateS = moment(sitting, gate.kind);
  if (gateS === null || gateS >= final.endS) {
    const passed = unseenPassage(sitting.approach, gate.kind) ? PASSED_UNSEEN : 'not passed on final';
    return { why: `this standard counts from the ${gate.words} gate, which was ${passed}` };
  }
  return { span: { startS: gateS, endS: final.endS } };
}

function intoFinalS(sitting: Case, final: Span): number | null {
  const distances = sitting.flown.deviations.distanceToThresholdNm;
  const level = at(sitting.flown, distances, final.startS) - INTO_FINAL_NM;
  return fallsToS(sitting.flown, final, distances, level);
}
