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

/** The limit for an airspeed, or the standard's wider one when the user states an engine out. */
export function airspeedLimit(
  { standard, stated }: Pick<Case, 'standard' | 'stated'>,
  limit: Limit | null,
): Limit | null {
  if (limit === null || !stated.engineOut) return limit;
  return standard.final.airspeedAsymmetricKt ?? limit;
}
