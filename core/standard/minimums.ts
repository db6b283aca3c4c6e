import { at, type Flown } from '../approach/flown.ts';
import { firstAfter } from '../numeric/polyline.ts';
import { whole } from '../units/whole.ts';
import { neededSinkFpm } from '../approach/glidepath-intercept.ts';
import { endsUnseen, finalOf, instructorFlewAt, moment, PASSED_UNSEEN, type Case } from './case.ts';
import { fallsToS } from './falling.ts';
import { goAroundBegunS } from './go-around-begun.ts';
import type { CriterionJudgement, Verdict } from './judgement.ts';
import { noLimit } from './no-limit.ts';
import { notAssessed } from './not-assessed.ts';
import { seconds } from './words.ts';

const ID = 'minimums';
const TITLE = 'At minimums';
const NOT_STATED = 'whether the runway was in sight was not stated';
/** A missed approach begun higher than this above decision altitude was begun before minimums. */
const AT_MINIMUMS_FT = 50;
/** Descending on for longer than this with the runway stated not in sight is a safety limit (design, section 11). */
export const BLIND_DESCENT_S = 3;

/** What was done at decision altitude, against the rule of the standard. */
export function judgeMinimums(sitting: Case): CriterionJudgement {
  const { standard, flown } = sitting;
  const rule = standard.minimums;
  if (rule === null) return notAssessed(ID, TITLE, noLimit(standard, ID));
  const open = (why: string) =>
    notAssessed(ID, TITLE, why, rule.limit, rule.kind === 'start-within-height' ? 'ft' : 's');
  const decisionFt = flown.facility.decisionAltitudeFt;
  if (decisionFt === null) return open('the facility gives no decision altitude');
  const startS = goAroundBegunS(sitting);
  const decisionS = moment(sitting, 'decision-altitude');
  // How long after decision altitude a missed approach was begun cannot be told then; how high, it can.
  if (endsUnseen(sitting) && (startS === null || rule.kind !== 'start-within-height'))
    return open(`decision altitude was ${PASSED_UNSEEN}`);
  if (startS === null && decisionS === null) return open('decision altitude was not reached');
  if (instructorFlewAt(sitting, startS ?? decisionS!)) return open('the instructor flew');
  const settled = (verdict: Verdict, measured: number | null, why: string): CriterionJudgement => ({
    ...open(why),
    measured,
    halfWidth: measured === null ? null : halfWidthOf(sitting, startS!),
    verdict,
  });
  if (startS === null) return continued(sitting, decisionS!, settled);
  const aboveFt = at(flown, flown.decidingAltitudeFt, startS) - decisionFt;
  if (Number.isNaN(aboveFt)) return open('the altitude was not recorded where the missed approach was begun');
  const byHeight = rule.kind === 'start-within-height';
  if (aboveFt > (byHeight ? rule.limit.upper! : AT_MINIMUMS_FT))
    return settled(
      'not-assessed',
      null,
      `went around ${whole(aboveFt)} ft above decision altitude, before minimums`,
    );
  const lateS = decisionS === null ? 0 : Math.max(0, startS - decisionS);
  const measured = byHeight ? aboveFt : lateS;
  const offFt = errorFt(sitting, startS);
  const sinkFps = pathSinkFps(sitting, startS);
  // With the aircraft so much lower than the log has it, decision altitude was passed so much earlier.
  const lateWith = (lowerFt: number) => Math.max(0, lateS + (lowerFt - (lateS > 0 ? 0 : aboveFt)) / sinkFps);
  const inTime = (lowerFt: number) =>
    byHeight
      ? aboveFt - lowerFt >= rule.limit.lower!
      : (lowerFt === 0 ? lateS : lateWith(lowerFt)) <= rule.seconds;
  if (inTime(offFt)) return settled('met', measured, startWords(aboveFt));
  if (inTime(-offFt) && sitting.stated.visualReferenceAtMinimums !== 'seen') {
    const why = `${startWords(aboveFt)}, by heights that may be off by ${whole(offFt)} ft`;
    return settled('unclear', measured, why);
  }
  const late = endsUnseen(sitting) ? '' : `, ${seconds(lateS)} after it was passed`;
  return tooLow(sitting, { measured, why: `${startWords(aboveFt)}${late}` }, settled);
}

/** Of what is measured there, in its own unit; null where it is what it says. */
function halfWidthOf(sitting: Case, startS: number): number | null {
  const offFt = errorFt(sitting, startS);
  if (offFt === 0) return null;
  return sitting.standard.minimums!.kind === 'start-within-height'
    ? offFt
    : offFt / pathSinkFps(sitting, startS);
}

/** What the path sinks a second at the groundspeed of that moment, ft. */
function pathSinkFps({ flown }: Case, momentS: number): number {
  return neededSinkFpm(flown, at(flown, flown.track.groundspeedKt, momentS)) / 60;
}

/** How far off the height may be there. */
function errorFt({ flown: { track, error } }: Case, momentS: number): number {
  return error.decidingFt(Math.min(firstAfter(track.timeS, momentS), track.count - 1));
}

type Settle = (verdict: Verdict, measured: number | null, why: string) => CriterionJudgement;

/** Below minimums before the missed approach was begun: that is right with the runway in sight, and wrong without. */
function tooLow(
  { stated, approach }: Case,
  { measured, why }: { measured: number; why: string },
  settled: Settle,
): CriterionJudgement {
  const { visualReferenceAtMinimums } = stated;
  if (visualReferenceAtMinimums === 'seen')
    return settled('met', measured, 'continued below decision altitude with the runway in sight, as stated');
  // A missed approach at minimums needs no runway; one from far below may have had it.
  if (visualReferenceAtMinimums === 'not-stated' && approach.outcome === 'low-approach')
    return settled('not-assessed', measured, NOT_STATED);
  return settled('not-met', measured, why);
}

function startWords(aboveFt: number): string {
  const feet = whole(Math.abs(aboveFt));
  if (feet === '0') return 'began to stop the descent at decision altitude';
  return `began to stop the descent ${feet} ft ${aboveFt < 0 ? 'below' : 'above'} decision altitude`;
}

function continued(sitting: Case, decisionS: number, settled: Settle): CriterionJudgement {
  const { visualReferenceAtMinimums } = sitting.stated;
  if (visualReferenceAtMinimums === 'seen')
    return settled('met', null, 'continued with the runway in sight, as stated');
  if (visualReferenceAtMinimums === 'not-stated') return settled('not-assessed', null, NOT_STATED);
  const { surelyS, perhapsS } = descentBelowS(sitting, decisionS);
  if (surelyS > BLIND_DESCENT_S)
    return settled('not-met', null, `descended on for ${seconds(surelyS)} with the runway not in sight`);
  if (sitting.approach.outcome === 'incomplete')
    return settled('not-assessed', null, 'the log ends at decision altitude');
  if (perhapsS > BLIND_DESCENT_S) {
    const offFt = errorFt(sitting, decisionS);
    const why = `may have descended on for up to ${seconds(perhapsS)} with the runway not in sight`;
    return settled('unclear', null, `${why}, by heights that may be off by ${whole(offFt)} ft`);
  }
  return settled('met', null, 'did not descend below decision altitude');
}

/**
 * Seconds of descent below decision altitude, to where a missed approach was begun; a bump on the way is no end of it.
 * With the heights off all the one way and all the other: at least, and at most.
 */
export function descentBelowS(
  sitting: Case,
  decisionS: number,
): { readonly surelyS: number; readonly perhapsS: number } {
  const { flown, approach } = sitting;
  const fromS = finalOf(sitting)?.startS ?? decisionS;
  const span = { startS: fromS, endS: Math.min(goAroundBegunS(sitting) ?? Infinity, approach.endS) };
  if (errorFt(sitting, decisionS) === 0) {
    const s = descentS(flown, decisionS, span.endS);
    return { surelyS: s, perhapsS: s };
  }
  const passedS = (off: 'high' | 'low') =>
    fallsToS(flown, span, flown.decidingOffFt[off], flown.facility.decisionAltitudeFt!) ?? Infinity;
  return {
    surelyS: descentS(flown, passedS('high'), span.endS),
    perhapsS: descentS(flown, passedS('low'), span.endS),
  };
}

function descentS({ track }: Flown, fromS: number, untilS: number): number {
  const { timeS, verticalSpeedFpm, gapLimitS } = track;
  let downS = 0;
  for (let i = firstAfter(timeS, fromS); i < timeS.length && timeS[i - 1]! < untilS; i++) {
    const startS = Math.max(fromS, timeS[i - 1]!);
    const isRecorded = timeS[i]! - timeS[i - 1]! <= gapLimitS;
    if (isRecorded && verticalSpeedFpm[i]! < 0) downS += Math.min(timeS[i]!, untilS) - startS;
  }
  return downS;
}
