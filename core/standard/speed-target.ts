import type { Flown } from '../approach/flown.ts';
import type { Case } from './case.ts';
import type { Limit, SpeedBasis } from './standard.ts';
import type { Stated } from './stated.ts';

/** The user's target speed on final, or Vref; neither is ever taken from the log or from the other. */
export function speedTarget(
  basis: SpeedBasis,
  stated: Stated,
): { kt: number; words: string } | { why: string } {
  if (basis === 'vref') {
    if (stated.vrefKt === null) return { why: 'no Vref was given' };
    return { kt: stated.vrefKt, words: `a Vref of ${stated.vrefKt} kt` };
  }
  if (stated.targetAirspeedKt === null) return { why: 'no target airspeed was given' };
  return { kt: stated.targetAirspeedKt, words: `the target of ${stated.targetAirspeedKt} kt` };
}

export function noAirspeed({ track }: Flown): string {
  return track.recorded.airspeedTrueKt
    ? 'the log holds true airspeed only'
    : 'the log holds no indicated airspeed';
}

/** The limit on final, or the one for an engine out when that is stated and the standard has one. */
export function speedLimitOnFinal({ standard, stated }: Pick<Case, 'standard' | 'stated'>): Limit | null {
  return (stated.engineOut ? standard.final.airspeedAsymmetricKt : null) ?? standard.final.airspeedKt;
}

/** The same at a gate and after it. */
export function speedLimitAtGates({ standard, stated }: Case): Limit | null {
  return (stated.engineOut ? standard.final.airspeedAsymmetricKt : null) ?? standard.gates.airspeed;
}
