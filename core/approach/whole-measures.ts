import { durationS, type Span } from '../numeric/polyline.ts';
import { FEET_PER_NM } from '../units/units.ts';
import { findCorrections, type Corrections } from './corrections.ts';
import { findDescent, type Descent } from './descent.ts';
import { momentOf, type FlownApproach } from './flown-approach.ts';
import { at, type Flown } from './flown.ts';
import { neededSinkFpm } from './glidepath-intercept.ts';
import { heightAboveThresholdAt } from './on-ground.ts';
import { compareNeedle, type RecordedNeedle } from './recorded-needles.ts';
import { rolloutOf, type Rollout } from './rollout.ts';
import { spreadOf } from './spread.ts';
import { windAt, windOver, type Wind } from './wind.ts';

/** What is measured of an approach as a whole (design, section 8); null where the log does not tell. */
export interface WholeMeasures {
  readonly corrections: Corrections | null;
  readonly sink: { readonly heldFpm: number; readonly neededFpm: number } | null;
  readonly descent: Descent | null;
  readonly wind: Wind | null;
  readonly windAt1000: Wind | null;
  readonly windAtThreshold: Wind | null;
  readonly threshold: { readonly heightFt: number; readonly offsetFt: number } | null;
  readonly touchdownDistanceFt: number | null;
  readonly heightLostFt: number | null;
  /** What the log recorded of the needles themselves, up to the end of final. */
  readonly recordedLocalizer: RecordedNeedle | null;
  readonly recordedGlidepath: RecordedNeedle | null;
  readonly rollout: Rollout | null;
}

export function wholeMeasures(
  flown: Flown,
  approach: FlownApproach,
  variationDeg: number | null,
): WholeMeasures {
  const final = approach.segments.find(({ kind }) => kind === 'final') ?? null;
  const onNeedles = { startS: approach.startS, endS: final?.endS ?? approach.endS };
  return {
    corrections: final && findCorrections(flown, final),
    sink: final && sinkOver(flown, final),
    descent: final && findDescent(flown, final),
    wind: final && windOver(flown, final, variationDeg),
    windAt1000: windAt(flown, approach, 'gate-1000', variationDeg),
    windAtThreshold: windAt(flown, approach, 'threshold', variationDeg),
    threshold: thresholdOf(flown, approach),
    touchdownDistanceFt: touchdownDistanceFt(flown, approach),
    heightLostFt: heightLostFt(flown, approach),
    recordedLocalizer: compareNeedle(flown, 'localizer', onNeedles),
    recordedGlidepath: compareNeedle(flown, 'glidepath', onNeedles),
    rollout: rolloutOf(flown, approach),
  };
}

/** Mean sink rate over the recorded parts of a span, and what its mean groundspeed needed. */
function sinkOver(flown: Flown, span: Span): WholeMeasures['sink'] {
  const { altitudeFt, groundspeedKt } = flown.track;
  const heights = flown.lines.over(altitudeFt, span);
  const speed = spreadOf(flown.lines.over(groundspeedKt, span));
  if (heights.length === 0 || !speed) return null;
  const lostFt = heights.reduce((sum, { value }) => sum + value[0]! - value.at(-1)!, 0);
  return { heldFpm: (lostFt / durationS(heights)) * 60, neededFpm: neededSinkFpm(flown, speed.mean) };
}

function thresholdOf(flown: Flown, approach: FlownApproach): WholeMeasures['threshold'] {
  const momentS = momentOf(approach, 'threshold');
  if (momentS === null) return null;
  const heightFt = heightAboveThresholdAt(flown, momentS);
  if (Number.isNaN(heightFt)) return null;
  return { heightFt, offsetFt: at(flown, flown.deviations.centrelineOffsetFt, momentS) };
}

function touchdownDistanceFt(flown: Flown, approach: FlownApproach): number | null {
  const momentS = momentOf(approach, 'touchdown');
  return momentS === null ? null : -at(flown, flown.deviations.distanceToThresholdNm, momentS) * FEET_PER_NM;
}

/** Height lost from the start of the missed approach to its lowest point. */
function heightLostFt(flown: Flown, approach: FlownApproach): number | null {
  const startS = momentOf(approach, 'missed-approach-start');
  const lowestS = momentOf(approach, 'lowest-point');
  if (startS === null || lowestS === null) return null;
  return at(flown, flown.track.altitudeFt, startS) - at(flown, flown.track.altitudeFt, lowestS);
}
