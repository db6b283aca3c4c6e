import { descentRateFpm } from '../facility/descent-rate.ts';
import type { BriefedDecision, BriefedDescent, BriefedFix } from './briefing.ts';

const STEP_KT = 10;
/** Where no groundspeed is given: those of light aircraft. */
const ALL_KT = Array.from({ length: 11 }, (_, i) => 60 + i * STEP_KT);
/** So many steps slower and faster than the one given: what a wind makes of it. */
const STEPS_AROUND = [-4, -3, -2, -1, 0, 1, 2, 3, 4] as const;
const SECONDS_PER_HOUR = 3600;

/** Sink rate, and time from the fix to decision altitude, by groundspeed around the one given. */
export function descentsOf(
  angleDeg: number,
  askedKt: number | null,
  fix: BriefedFix,
  decision: BriefedDecision | null,
): BriefedDescent[] {
  const wayNm = decision === null ? null : fix.distanceNm - decision.distanceNm;
  return speedsAround(askedKt).map((groundspeedKt) => ({
    groundspeedKt,
    isAsked: groundspeedKt === askedKt,
    rateFpm: descentRateFpm(groundspeedKt, angleDeg),
    timeS: wayNm === null ? null : (wayNm / groundspeedKt) * SECONDS_PER_HOUR,
  }));
}

function speedsAround(askedKt: number | null): readonly number[] {
  if (askedKt === null) return ALL_KT;
  return STEPS_AROUND.map((steps) => askedKt + steps * STEP_KT).filter((kt) => kt >= STEP_KT);
}
