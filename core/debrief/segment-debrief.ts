import type { ApproachSegment, SegmentKind } from '../approach/flown-approach.ts';
import type { Flown } from '../approach/flown.ts';
import { spreadOf } from '../approach/spread.ts';
import { clip, durationS, type Polyline } from '../numeric/polyline.ts';
import { INSTRUMENT_RATING } from '../standard/instrument-rating.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefSegment, DebriefSpread } from './debrief.ts';
import { unknownOf } from './known.ts';
import { GLIDEPATH_SIDES, LOCALIZER_SIDES, needleDebrief } from './needle-debrief.ts';

const FEET_ONLY = 'Below decision altitude the needles mean a few dozen feet: only feet are given.';
const NOT_FOR_SCALE = 'Given in fractions of full scale on this segment.';
const MISSED = 'The needles are not followed on a missed approach.';

/** How each value was spread over a segment. */
export function segmentDebrief(flown: Flown, segment: ApproachSegment): DebriefSegment {
  const { track, deviations } = flown;
  const { kind, startS, endS } = segment;
  const parts = (column: Float64Array | undefined) =>
    column ? clip(track.timeS, column, segment, track.gapLimitS) : [];
  const onNeedles = kind === 'intercept' || kind === 'final';
  const isVisual = kind === 'visual';
  const limits = limitsOn(kind);
  const values = {
    localizer: onNeedles
      ? needleDebrief(
          parts(deviations.localizerFullScale),
          limits.localizer,
          LOCALIZER_SIDES,
          track.medianIntervalS,
        )
      : null,
    glidepath: onNeedles
      ? needleDebrief(
          parts(deviations.glidepathFullScale),
          limits.glidepath,
          GLIDEPATH_SIDES,
          track.medianIntervalS,
        )
      : null,
    centrelineOffsetFt: isVisual ? spreadDebrief(parts(deviations.centrelineOffsetFt)) : null,
    heightAboveGlidepathFt: isVisual ? spreadDebrief(parts(deviations.heightAboveGlidepathFt)) : null,
    airspeed: spreadDebrief(parts(track.recorded.airspeedIndicatedKt)),
    verticalSpeed: spreadDebrief(parts(track.verticalSpeedFpm)),
    altitude: spreadDebrief(parts(flown.decidingAltitudeFt)),
    bank: spreadDebrief(parts(track.recorded.bankDeg)),
  };
  const recorded = parts(deviations.distanceToThresholdNm);
  return {
    kind,
    startUtc: utcText(startS)!,
    endUtc: utcText(endS)!,
    durationS: endS - startS,
    unrecordedS: Math.max(0, endS - startS - durationS(recorded)),
    ...values,
    unknown: unknownOf(values, sentences(kind)),
  };
}

/** What the standard asks of the two needles on a segment; null where it asks nothing. */
function limitsOn(kind: SegmentKind): { localizer: number | null; glidepath: number | null } {
  const { beforeFinalLocalizerFullScale, finalNeedleFullScale } = INSTRUMENT_RATING;
  return kind === 'final'
    ? { localizer: finalNeedleFullScale, glidepath: finalNeedleFullScale }
    : { localizer: beforeFinalLocalizerFullScale, glidepath: null };
}

function sentences(kind: SegmentKind): Record<string, string> {
  const needle = kind === 'missed' ? MISSED : FEET_ONLY;
  const feet = kind === 'missed' ? MISSED : NOT_FOR_SCALE;
  const notLogged = 'Not in the log, or not on this segment.';
  return {
    localizer: needle,
    glidepath: needle,
    centrelineOffsetFt: feet,
    heightAboveGlidepathFt: feet,
    airspeed: notLogged,
    verticalSpeed: notLogged,
    altitude: notLogged,
    bank: notLogged,
  };
}

function spreadDebrief(parts: readonly Polyline[]): DebriefSpread | null {
  const spread = spreadOf(parts);
  if (!spread) return null;
  const { mean, standardDeviation, lowest, highest } = spread;
  return { mean, standardDeviation, lowest, highest };
}
