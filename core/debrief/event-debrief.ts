import { mediansAround } from '../approach/around.ts';
import type { ApproachEvent, FlownApproach } from '../approach/flown-approach.ts';
import { needlesUntilS } from '../approach/flown-approach.ts';
import type { Flown } from '../approach/flown.ts';
import { firstAfter, firstAtOrAfter, valueFrom } from '../numeric/polyline.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefEvent } from './debrief.ts';
import { known, unknownOf } from './known.ts';

const NOT_RECORDED = 'Not recorded at this moment.';
const WAY_UNSEEN =
  'The log begins, or has a gap, too shortly before to tell whether the glidepath was met from above or from below.';
const FEET_ONLY = 'Below decision altitude full scale is a few dozen feet: only feet are given.';

/** An approach's events with what was flown at each. */
export function eventDebriefs(flown: Flown, approach: FlownApproach): DebriefEvent[] {
  const untilS = needlesUntilS(approach) ?? Infinity;
  return approach.events.map((event) => eventDebrief(flown, event, event.timeS > untilS));
}

function eventDebrief(flown: Flown, event: ApproachEvent, belowDecision: boolean): DebriefEvent {
  const { track, deviations, needleError } = flown;
  const { timeS, gapLimitS } = track;
  const before = firstAfter(timeS, event.timeS) - 1;
  const around = event.heightCrossedFt === null ? null : mediansAround(flown, event.timeS);
  const value = (column: Float64Array | undefined) => {
    if (!column) return null;
    return known(around ? around(column) : valueFrom(timeS, column, before, event.timeS, gapLimitS));
  };
  const nearest = Math.min(firstAtOrAfter(track.timeS, event.timeS), track.count - 1);
  const values = {
    distanceToThresholdNm: value(deviations.distanceToThresholdNm),
    altitudeFt: event.heightCrossedFt ?? value(flown.decidingAltitudeFt),
    localizerFullScale: belowDecision ? null : value(deviations.localizerFullScale),
    glidepathFullScale: belowDecision ? null : value(deviations.glidepathFullScale),
    localizerHalfWidth: belowDecision ? null : known(needleError.localizer.at(nearest)),
    glidepathHalfWidth: belowDecision ? null : known(needleError.glidepath.at(nearest)),
    heightAboveGlidepathFt: value(deviations.heightAboveGlidepathFt),
    centrelineOffsetFt: value(deviations.centrelineOffsetFt),
    groundspeedKt: value(track.groundspeedKt),
    verticalSpeedFpm: value(track.verticalSpeedFpm),
    airspeedKt: value(track.recorded.airspeedIndicatedKt),
  };
  const needle = belowDecision ? FEET_ONLY : NOT_RECORDED;
  return {
    kind: event.kind,
    utc: utcText(event.timeS)!,
    remark: event.remark,
    altitudeSource: flown.altitudeSource,
    ...values,
    unknown: unknownOf(event.kind === 'glidepath-intercept' ? { ...values, remark: event.remark } : values, {
      remark: WAY_UNSEEN,
      ...Object.fromEntries(Object.keys(values).map((key) => [key, NOT_RECORDED])),
      localizerFullScale: needle,
      glidepathFullScale: needle,
      localizerHalfWidth: needle,
      glidepathHalfWidth: needle,
      airspeedKt: track.recorded.airspeedIndicatedKt ? NOT_RECORDED : 'The log has no indicated airspeed.',
    }),
  };
}
