import type { Issue } from '../issue/issue.ts';
import { approachEvents, type Moments } from './approach-events.ts';
import { missedApproachStartS } from './climb.ts';
import { findCapture, NEVER_SETTLED } from './established.ts';
import { decisionOf, findFinalBegin, type FinalBegin } from './final.ts';
import type { Flown } from './flown.ts';
import type { FlownApproach } from './flown-approach.ts';
import { findGlidepathIntercept, glidepathAliveS } from './glidepath-intercept.ts';
import { heightsPassed } from './heights-passed.ts';
import { kindOf, settledInTime } from './kind.ts';
import { nothingFound, otherRunwayNote, passNote } from './notes.ts';
import { otherRunwayFt } from './other-runway.ts';
import { findEnding, type Ending } from './outcome.ts';
import { findPasses, type Pass } from './passes.ts';
import { segmentsOf } from './segments.ts';

export interface FoundApproaches {
  readonly approaches: readonly FlownApproach[];
  /** What was flown towards this runway and is no approach, and why. */
  readonly notes: readonly Issue[];
}

/**
 * Finds what was flown on a localizer: approaches, and passes that are listed but not graded.
 *
 * @param gateDatumFt the elevation above which gates are counted, feet above mean sea level
 */
export function findApproaches(flown: Flown, gateDatumFt: number): FoundApproaches {
  const approaches: FlownApproach[] = [];
  const notes: Issue[] = [];
  for (const pass of findPasses(flown)) {
    const elsewhereFt = otherRunwayFt(flown, pass);
    const begin = findFinalBegin(flown, pass);
    const verdict = kindOf(flown, pass, begin.fixS);
    if (elsewhereFt !== null) notes.push(otherRunwayNote(flown, pass, elsewhereFt));
    else if (verdict.kind === 'none') notes.push(passNote(flown, pass, verdict.why));
    else {
      const why = verdict.kind === 'approach' ? null : verdict.why;
      approaches.push(describe(flown, pass, begin, gateDatumFt, { kind: verdict.kind, why }));
    }
  }
  const nothing = approaches.length === 0 && notes.length === 0;
  return { approaches, notes: nothing ? [nothingFound(flown)] : notes };
}

function describe(
  flown: Flown,
  pass: Pass,
  { aliveS, fixS, beganS, insideFix }: FinalBegin,
  gateDatumFt: number,
  verdict: Pick<FlownApproach, 'kind' | 'why'>,
): FlownApproach {
  const untilS = flown.track.timeS[pass.until]!;
  const ending = findEnding(flown, pass, beganS, decisionOf(flown).altitudeFt);
  const missed = beganS !== null && isMissed(ending);
  const endS = endOf(ending, missed, untilS);
  const moments: Moments = {
    ...momentsOnNeedles(flown, pass, endS, verdict.kind),
    aliveS,
    fixS,
    fixAssumed: flown.facility.origins.finalApproachFix === 'assumed',
    ...heightsPassed(flown, pass, beganS, gateDatumFt),
    missedStartS: missed ? missedApproachStartS(flown, ending.climb!, beganS) : null,
    ending,
  };
  const limits = { beganS, endS };
  return {
    ...verdict,
    startS: aliveS,
    endS,
    outcome: ending.outcome,
    events: approachEvents(moments, endS),
    segments: segmentsOf(flown, moments, limits, untilS),
    finalBeganS: beganS,
    // Passing it later, on the way round to another runway, is not this final.
    flownToDecision: moments.decision !== null && moments.decision.timeS <= endS,
    unseen: moments.unseen.filter(({ startS }) => startS < endS),
    insideFix,
    roll: ending.landing?.roll ?? null,
  };
}

/** missed-approach-start and lowest-point exist only with these two (design, section 7). */
function isMissed({ outcome }: Ending): boolean {
  return outcome === 'missed-approach' || outcome === 'low-approach';
}

/** The first of: touchdown, 300 ft above the lowest point, leaving, the end of what was recorded. */
function endOf({ landing, climb, leftS }: Ending, missed: boolean, untilS: number): number {
  if (missed) return Math.min(climb!.clearS, leftS ?? Infinity);
  return Math.min(landing?.touchdownS ?? Infinity, leftS ?? Infinity, untilS);
}

function momentsOnNeedles(flown: Flown, pass: Pass, endS: number, kind: FlownApproach['kind']) {
  const stretch = { first: Math.max(0, pass.first - 1), last: pass.until };
  const settled = findCapture(flown, stretch, endS);
  const capture =
    kind === 'approach' && !settledInTime(flown, settled.establishedS) ? NEVER_SETTLED : settled;
  return {
    capture,
    glidepathAliveS: glidepathAliveS(flown, stretch),
    intercept: findGlidepathIntercept(flown, stretch, capture.establishedS),
  };
}
