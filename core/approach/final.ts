import { aliveS } from './localizer-alive.ts';
import type { InsideFix } from './flown-approach.ts';
import type { Flown } from './flown.ts';
import { firstCrossing } from './hold.ts';
import { isInbound, recordBeginsWith, type Pass } from './passes.ts';

/** No decision altitude given: final ends at the lowest one an ILS can have (ICAO: 60 m, 200 ft; second-hand). */
const ASSUMED_DECISION_HEIGHT_FT = 200;

/** Where final began, and by what. */
export interface FinalBegin {
  readonly aliveS: number;
  /** The fix's distance passed inbound; null when final began inside it, or never. */
  readonly fixS: number | null;
  /** The later of the two; null when the fix's distance was never passed. */
  readonly beganS: number | null;
  readonly insideFix: InsideFix | null;
}

/**
 * Final begins at the fix's distance passed inbound, or where the localizer came alive when that is later. Of
 * several passages the last counts: an aircraft that turned back out had not begun.
 */
export function findFinalBegin(flown: Flown, pass: Pass): FinalBegin {
  const distances = flown.deviations.distanceToThresholdNm;
  const { distanceNm } = flown.facility.finalApproachFix;
  const alive = aliveS(flown, pass);
  const fixS = lastPassageS(flown, pass, distanceNm);
  if (fixS !== null) return { aliveS: alive, fixS, beganS: fixS, insideFix: null };
  if (!(distances[pass.first]! <= distanceNm)) {
    const resumed = resumesInside(flown, pass, distanceNm);
    return { aliveS: alive, fixS: null, beganS: null, insideFix: null, ...resumed };
  }
  const insideFix = recordBeginsWith(flown, pass) ?? 'joined';
  return { aliveS: alive, fixS: null, beganS: alive, insideFix };
}

/**
 * Where final began after a gap in which the fix was passed: with the first fix behind it, or where the localizer was
 * joined from there. Null where the fix was not passed so.
 */
function resumesInside(
  flown: Flown,
  pass: Pass,
  distanceNm: number,
): Pick<FinalBegin, 'beganS' | 'insideFix'> | null {
  const { timeS, gapLimitS } = flown.track;
  const distances = flown.deviations.distanceToThresholdNm;
  for (let i = pass.last; i > pass.first; i--) {
    const isPassed = distances[i - 1]! > distanceNm && distances[i]! <= distanceNm;
    if (!isPassed || timeS[i]! - timeS[i - 1]! <= gapLimitS) continue;
    for (let k = i; k <= pass.last; k++)
      if (Math.abs(flown.deviations.localizerFullScale[k]!) <= 1 && isInbound(flown, k))
        return { beganS: timeS[k]!, insideFix: k === i ? 'log-resumes' : 'joined' };
  }
  return null;
}

/** The last time that a distance was passed inbound, within a pass. */
function lastPassageS(flown: Flown, pass: Pass, distanceNm: number): number | null {
  const distances = flown.deviations.distanceToThresholdNm;
  for (let i = pass.last; i > pass.first; i--) {
    if (!isInbound(flown, i)) continue;
    const passedS = firstCrossing(flown.track, { first: i - 1, last: i }, distances, distanceNm);
    if (passedS !== null) return passedS;
  }
  return null;
}

export interface Decision {
  readonly altitudeFt: number;
  readonly assumed: boolean;
}

export function decisionOf({ facility }: Flown): Decision {
  const given = facility.decisionAltitudeFt;
  return given === null
    ? { altitudeFt: facility.touchdownZoneElevationFt + ASSUMED_DECISION_HEIGHT_FT, assumed: true }
    : { altitudeFt: given, assumed: false };
}
