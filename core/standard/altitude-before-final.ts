import { at } from '../approach/flown.ts';
import { relativeTo, type Span } from '../numeric/polyline.ts';
import { flownDistanceNm } from '../track/flown-distance.ts';
import { whole } from '../units/whole.ts';
import { halfWidthsIn, recordedIn, withoutInstructor, type Case } from './case.ts';
import { TIMED_TITLES } from './criterion-ids.ts';
import { fallsToS } from './falling.ts';
import type { CriterionJudgement } from './judgement.ts';
import { noLimit } from './no-limit.ts';
import { notAssessed } from './not-assessed.ts';
import { promptRule } from './prompt-rule.ts';
import { withAllowance } from './with-allowance.ts';
import { bandWords, INSIDE_FIX } from './words.ts';

/** What is level for less than this is not held. Ours. */
const SHORTEST_S = 10;
const ID = 'altitude-before-final';
const TITLE = TIMED_TITLES[ID];
/** The fix's altitude is held to over the last part before the descent (design, section 9). */
const LAST_NM = 2;
/**
 * A descent begun farther out than this before the fix came down from another altitude than the fix's, which the log
 * does not tell. Ours: 1 NM is what an intercept 300 ft too high costs.
 */
const FIX_REACH_NM = 1;
/** Ours: an altitude has no needle's 0.15, so half of the tolerance again. */
const PROMPT_DEPTH_FT = 50;
const NEAR_FT = 10;
const FLOOR_FT = 40;

/** Level before the descent, against the altitude that the user was assigned, else the fix's. */
export function altitudeBeforeFinal(sitting: Case): CriterionJudgement {
  const limit = sitting.standard.beforeFinal.altitudeFt;
  if (limit === null) return notAssessed(ID, TITLE, noLimit(sitting.standard, ID));
  const target = targetOf(sitting);
  if ('why' in target) return notAssessed(ID, TITLE, target.why, limit, 'ft');
  const counted = withoutInstructor(sitting, target.span);
  const { track, decidingAltitudeFt, error } = sitting.flown;
  const parts = relativeTo(recordedIn(sitting, decidingAltitudeFt, counted), target.altitudeFt);
  return withAllowance(sitting, {
    id: ID,
    title: TITLE,
    unit: 'ft',
    limit,
    limitWords: `${bandWords(limit.lower, limit.upper, 'ft')} of ${whole(target.altitudeFt)} ft`,
    counted,
    parts,
    flownNm: flownDistanceNm(track, parts),
    halfWidths: halfWidthsIn(sitting, decidingAltitudeFt, error.decidingFt, counted),
    madeUpToS: null,
    near: NEAR_FT,
    halfFloor: FLOOR_FT,
    prompt: promptRule(sitting, target.span, { depth: PROMPT_DEPTH_FT, stop: Infinity }),
    endedBy: null,
    openEnd: null,
  });
}

function targetOf(sitting: Case): { altitudeFt: number; span: Span } | { why: string } {
  const { flown, approach, stated } = sitting;
  const { distanceNm, altitudeFt: fixFt } = flown.facility.finalApproachFix;
  const intercept = approach.events.find(({ kind }) => kind === 'glidepath-intercept');
  if (approach.insideFix !== null) return { why: INSIDE_FIX[approach.insideFix] };
  if (!intercept) return { why: 'no descent on the glidepath to be level before' };
  if (stated.assignedAltitudeFt === null && intercept.remark === 'from-above')
    return { why: 'the glidepath was met from above, and no altitude was assigned' };
  const span = lastMiles(sitting, intercept.timeS);
  if (span === null) return { why: 'too little level flight before the descent to judge' };
  if (stated.assignedAltitudeFt !== null) return { altitudeFt: stated.assignedAltitudeFt, span };
  if (fixFt === null) return { why: 'no altitude was assigned, and the fix has none' };
  const interceptNm = at(flown, flown.deviations.distanceToThresholdNm, intercept.timeS);
  if (interceptNm > distanceNm + FIX_REACH_NM)
    return { why: 'the descent began well before the fix, and no altitude was assigned' };
  return { altitudeFt: fixFt, span };
}

/** The last 2 NM before a moment, no earlier than the approach and not into final. */
function lastMiles({ flown, approach }: Case, descentS: number): Span | null {
  const distances = flown.deviations.distanceToThresholdNm;
  const fromNm = at(flown, distances, descentS) + LAST_NM;
  const endS = Math.min(descentS, approach.finalBeganS ?? Infinity);
  const startS = fallsToS(flown, { startS: approach.startS, endS }, distances, fromNm);
  return startS !== null && endS - startS >= SHORTEST_S ? { startS, endS } : null;
}
