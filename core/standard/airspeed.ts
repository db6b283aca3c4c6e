import { ESTIMATED_AIRSPEED_ERROR_KT, estimatedAirspeed } from '../approach/estimated-airspeed.ts';
import type { Case } from './case.ts';

/** The indicated airspeed that an approach is judged by. */
interface JudgedAirspeed {
  readonly column: Float64Array;
  /** 95 %; 0 for what the instrument showed, since the pilot flew by that. */
  readonly halfWidthKt: number;
  /** What to add where it is spoken of; empty for what was logged. */
  readonly words: string;
}

/** Logged, else estimated from groundspeed where the user states a wind; or why there is none. */
export function airspeedOf({
  flown,
  stated,
}: Pick<Case, 'flown' | 'stated'>): JudgedAirspeed | { why: string } {
  const { airspeedIndicatedKt, airspeedTrueKt } = flown.track.recorded;
  if (airspeedIndicatedKt) return { column: airspeedIndicatedKt, halfWidthKt: 0, words: '' };
  if (stated.wind !== null)
    return {
      column: estimatedAirspeed(flown, stated.wind),
      halfWidthKt: ESTIMATED_AIRSPEED_ERROR_KT,
      words: ', estimated from groundspeed and the stated wind',
    };
  return { why: airspeedTrueKt ? 'the log holds true airspeed only' : 'the log holds no indicated airspeed' };
}
