import { findExcursions, timeOutsideS, type Excursion } from '../approach/excursions.ts';
import { spreadOf } from '../approach/spread.ts';
import { clip, durationS, type Span } from '../numeric/polyline.ts';
import { INSTRUMENT_RATING } from '../standard/instrument-rating.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefCriterion, DebriefExcursion, DebriefNeedle, ThreeFigures } from './debrief.ts';

/** Spells parted by time no farther than this inside the limit are one excursion (design, section 8). */
const NEAR_FULL_SCALE = 0.05;
const LIMIT = INSTRUMENT_RATING.finalNeedleFullScale;
const LIMIT_WORDS = '¾ scale';

export interface NeedleOnFinal {
  readonly debrief: DebriefNeedle;
  readonly unrecordedS: number;
}

/** One needle over final: how it was spread, and when it was beyond ¾ scale. */
export function needleOnFinal(
  track: Track,
  fullScale: Float64Array,
  final: Span,
  sides: { readonly above: DebriefExcursion['side']; readonly below: DebriefExcursion['side'] },
): NeedleOnFinal {
  const parts = clip(track.timeS, fullScale, final, track.gapLimitS);
  const spread = spreadOf(parts);
  const excursions = findExcursions(parts, { lower: -LIMIT, upper: LIMIT }, NEAR_FULL_SCALE);
  const silent = 'Nothing of this needle was recorded on final.';
  return {
    unrecordedS: final.endS - final.startS - durationS(parts),
    debrief: {
      meanFullScale: spread?.mean ?? null,
      rmsFullScale: spread?.rms ?? null,
      maxAbsFullScale: spread && Math.abs(spread.peak),
      timeOutsideS: threeEqual(timeOutsideS(excursions)),
      excursions: excursions.map((excursion) => excursionOf(excursion, sides[excursion.side])),
      unknown: spread ? {} : { meanFullScale: silent, rmsFullScale: silent, maxAbsFullScale: silent },
    },
  };
}

/** Until position error is known the best figure is all there is. */
function threeEqual(seconds: number): ThreeFigures {
  return { atLeast: seconds, best: seconds, atMost: seconds };
}

function excursionOf(excursion: Excursion, side: DebriefExcursion['side']): DebriefExcursion {
  return {
    startUtc: utcText(excursion.startS)!,
    endUtc: utcText(excursion.endS)!,
    peakUtc: utcText(excursion.peakS)!,
    peakFullScale: excursion.peak,
    side,
  };
}

/**
 * Whether a needle stayed within the limit. Beyond it once is proof against, whatever the log lacks; within it is
 * proof only when final was flown to decision altitude and recorded without a hole.
 */
export function needleCriterion(
  id: DebriefCriterion['id'],
  title: string,
  { debrief, unrecordedS }: NeedleOnFinal,
  flownToDecision: boolean,
): DebriefCriterion {
  const outsideS = debrief.timeOutsideS.best;
  const judged = ((): Pick<DebriefCriterion, 'verdict' | 'why'> => {
    if (outsideS > 0) return { verdict: 'not-met', why: `beyond ${LIMIT_WORDS} for ${seconds(outsideS)}` };
    if (!flownToDecision)
      return { verdict: 'not-assessed', why: 'final was not recorded to decision altitude' };
    if (unrecordedS > 0)
      return { verdict: 'not-assessed', why: `${seconds(unrecordedS)} of final were not recorded` };
    return { verdict: 'met', why: `within ${LIMIT_WORDS} from the fix to decision altitude` };
  })();
  return {
    id,
    title,
    limit: LIMIT,
    unit: 'full scale',
    measured: debrief.maxAbsFullScale,
    timeOutsideS: debrief.timeOutsideS,
    ...judged,
  };
}

/** Seconds as a person says them; a moment that would read as none is said to be less than one. */
function seconds(s: number): string {
  return s < 1 ? 'less than 1 s' : `${Math.round(s)} s`;
}
