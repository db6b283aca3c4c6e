import { neededSinkFpm } from '../approach/glidepath-intercept.ts';
import type { Flown } from '../approach/flown.ts';
import { followedSinkErrorFpm } from '../approach/sink-error.ts';
import type { DebriefMeasures, DebriefRecordedNeedle } from '../debrief/debrief.ts';
import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import { airspeedOf } from '../standard/airspeed.ts';
import type { Stated } from '../standard/stated.ts';
import { FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { ExtraStrip, SheetColumns } from './sheet.ts';

const EXTRAS: readonly ExtraStrip[] = [
  'pitchDeg',
  'bankDeg',
  'powerPercent',
  'engineRpm',
  'manifoldPressureInHg',
  'flapDeg',
  'gearDown',
];

/** The columns of a span, with the fix before it and the one after, where there are any. */
export function sheetColumns(
  flown: Flown,
  stated: Stated,
  measures: Pick<DebriefMeasures, 'recordedLocalizer' | 'recordedGlidepath'>,
  span: Span,
): SheetColumns {
  const { track, deviations, needleError } = flown;
  const first = Math.max(0, firstAtOrAfter(track.timeS, span.startS) - 1);
  const end = Math.min(track.count, firstAfter(track.timeS, span.endS) + 1);
  const cut = (column: Float64Array) => column.slice(first, end);
  const filled = (valueOf: (i: number) => number) =>
    Float64Array.from({ length: end - first }, (_, i) => valueOf(first + i));
  const airspeed = airspeedOf({ flown, stated });
  const { recorded } = track;
  return {
    timeS: cut(track.timeS),
    gapBefore: Uint8Array.from({ length: end - first }, (_, i) => Number(isGapBefore(track, first + i))),
    distanceNm: cut(deviations.distanceToThresholdNm),
    offsetFt: cut(deviations.centrelineOffsetFt),
    altitudeFt: cut(track.altitudeFt),
    indicatedFt: track.altitudeIndicatedFt && cut(track.altitudeIndicatedFt),
    localizer: cut(deviations.localizerFullScale),
    glidepath: cut(deviations.glidepathFullScale),
    localizerHalf: filled((i) => needleError.localizer.at(i)),
    glidepathHalf: filled((i) => needleError.glidepath.at(i)),
    localizerAlongFt: filled((i) => deviations.alongCourseNm[i]! * FEET_PER_NM),
    glidepathAlongFt: filled((i) => glidepathAlongFt(flown, i)),
    airspeedKt: 'why' in airspeed ? null : cut(airspeed.column),
    airspeedHalfKt: 'why' in airspeed ? 0 : airspeed.halfWidthKt,
    groundspeedKt: cut(track.groundspeedKt),
    verticalSpeedFpm: cut(track.verticalSpeedFpm),
    verticalSpeedHalf: filled((i) => followedSinkErrorFpm(flown, i)),
    neededVerticalSpeedFpm: filled((i) => -neededSinkFpm(flown, track.groundspeedKt[i]!)),
    recordedLocalizer: needle(recorded.localizerRecordedFullScale, measures.recordedLocalizer, cut),
    recordedGlidepath: needle(recorded.glidepathRecordedFullScale, measures.recordedGlidepath, cut),
    extras: Object.fromEntries(
      EXTRAS.flatMap((name) => (recorded[name] ? [[name, cut(recorded[name])]] : [])),
    ),
  };
}

function isGapBefore({ timeS, gapLimitS }: Flown['track'], i: number): boolean {
  return i > 0 && timeS[i]! - timeS[i - 1]! > gapLimitS;
}

/** Horizontal feet from the path's origin, of its height above that and the angle that it is seen at. */
function glidepathAlongFt({ deviations, facility }: Flown, i: number): number {
  const { heightAboveGlidepathFt, glidepathFullScale } = deviations;
  const tangent = (angleDeg: number) => Math.tan(angleDeg * RADIANS_PER_DEGREE);
  const { glidepathAngleDeg, glidepathFullScaleDeg } = facility;
  const risePerFt =
    tangent(glidepathAngleDeg + glidepathFullScale[i]! * glidepathFullScaleDeg) - tangent(glidepathAngleDeg);
  // On the path itself both are nothing, and the distance to the threshold has to do.
  if (Math.abs(risePerFt) > 1e-6) return heightAboveGlidepathFt[i]! / risePerFt;
  const originFt = facility.thresholdCrossingHeightFt / tangent(glidepathAngleDeg);
  return deviations.distanceToThresholdNm[i]! * FEET_PER_NM + originFt;
}

/** A recorded needle where it was compared with the computed one, turned to the same sense. */
function needle(
  recorded: Float64Array | undefined,
  compared: DebriefRecordedNeedle | null,
  cut: (column: Float64Array) => Float64Array,
): Float64Array | null {
  if (!recorded || !compared) return null;
  return compared.turned ? cut(recorded).map((value) => -value) : cut(recorded);
}
