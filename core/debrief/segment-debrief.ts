import type { ApproachSegment, SegmentKind } from '../approach/flown-approach.ts';
import { excursionsOff, timeOutsideS, type Off } from '../approach/excursions.ts';
import { ESTIMATED_AIRSPEED_ERROR_KT } from '../approach/estimated-airspeed.ts';
import { spreadOf } from '../approach/spread.ts';
import { AIRSPEED_ERROR_KT, windOver } from '../approach/wind.ts';
import type { LazyColumn } from '../numeric/lazy-column.ts';
import { durationS, constant, relativeTo, type Polyline, type Span } from '../numeric/polyline.ts';
import { halfWidthsIn, recordedIn, type Case } from '../standard/case.ts';
import { hiddenS } from '../standard/hidden.ts';
import type { CriterionJudgement } from '../standard/judgement.ts';
import { airspeedLimit } from '../standard/speed-target.ts';
import type { Limit } from '../standard/standard.ts';
import { utcText } from '../units/utc.ts';
import type { Air } from './air.ts';
import type { DebriefSegment, DebriefSpeed, DebriefSpread } from './debrief.ts';
import { unknownOf } from './known.ts';
import {
  GLIDEPATH_BEAM,
  GLIDEPATH_SIDES,
  LOCALIZER_BEAM,
  LOCALIZER_SIDES,
  needleDebrief,
  type NeedleRule,
} from './needle-debrief.ts';

const FEET_ONLY = 'Below decision altitude the needles mean a few dozen feet: only feet are given.';
const NOT_FOR_SCALE = 'Given in fractions of full scale on this segment.';
const NO_TARGET = 'No target airspeed was given for this segment.';
const NO_SPEED_LIMIT = 'The standard sets no limit for airspeed here.';
const MISSED = 'The needles are not followed on a missed approach.';

/** How each value was spread over a segment, against the standard's limits for it. */
export function segmentDebrief(
  sitting: Case,
  air: Air,
  segment: ApproachSegment,
  criteria: readonly CriterionJudgement[],
): DebriefSegment {
  const { track, deviations } = sitting.flown;
  const { kind, startS, endS } = segment;
  const parts = (column: Float64Array | undefined) =>
    column ? sitting.flown.lines.over(column, segment) : [];
  const isVisual = kind === 'visual';
  const limits = limitsOn(sitting, kind);
  const values = {
    ...needlesOn(sitting, segment, limits, criteria),
    centrelineOffsetFt: isVisual ? spreadDebrief(parts(deviations.centrelineOffsetFt)) : null,
    heightAboveGlidepathFt: isVisual ? spreadDebrief(parts(deviations.heightAboveGlidepathFt)) : null,
    airspeed: speedDebrief(parts(air.airspeedKt), segment, limits, air.estimated),
    verticalSpeed: spreadDebrief(parts(track.verticalSpeedFpm)),
    altitude: spreadDebrief(parts(sitting.flown.decidingAltitudeFt)),
    bank: spreadDebrief(parts(track.recorded.bankDeg)),
    wind: kind === 'final' ? air.windOnFinal : windOver(sitting.flown, segment, air.variationDeg),
  };
  // Known at every fix, and cut out already for the criteria.
  const recorded = parts(deviations.localizerFullScale);
  return {
    kind,
    startUtc: utcText(startS)!,
    endUtc: utcText(endS)!,
    durationS: endS - startS,
    unrecordedS: Math.max(0, endS - startS - durationS(recorded)),
    ...values,
    unknown: unknownOf(values, { ...sentences(kind), wind: air.noWind }),
  };
}

/** Both needles, where they are followed. */
function needlesOn(
  sitting: Case,
  segment: ApproachSegment,
  limits: SegmentLimits,
  criteria: readonly CriterionJudgement[],
): Pick<DebriefSegment, 'localizer' | 'glidepath'> {
  const { kind } = segment;
  if (kind !== 'intercept' && kind !== 'final') return { localizer: null, glidepath: null };
  const { track, deviations, needleError } = sitting.flown;
  const judged = (id: string) => criteria.find((criterion) => criterion.id === id)?.excursions ?? [];
  const needle = (column: Float64Array, halfWidth: LazyColumn, rule: NeedleRule) => {
    const parts = recordedIn(sitting, column, [segment]);
    const halfWidths = halfWidthsIn(sitting, column, halfWidth, [segment]);
    const hidden = (limit: Limit) => hiddenS(parts, [segment], limit, halfWidths);
    return needleDebrief({ parts, halfWidths, hiddenS: hidden }, rule, track.medianIntervalS);
  };
  return {
    localizer: needle(deviations.localizerFullScale, needleError.localizer, {
      limit: limits.localizer,
      sides: LOCALIZER_SIDES,
      beam: LOCALIZER_BEAM,
      judged: judged(kind === 'final' ? 'localizer-final' : 'localizer-before-final'),
    }),
    glidepath: needle(deviations.glidepathFullScale, needleError.glidepath, {
      limit: limits.glidepath,
      sides: GLIDEPATH_SIDES,
      beam: GLIDEPATH_BEAM,
      judged: judged('glidepath-final'),
    }),
  };
}

interface SegmentLimits {
  readonly localizer: Limit | null;
  readonly glidepath: Limit | null;
  readonly airspeed: Limit | null;
  readonly targetKt: number | null;
}

/** What the standard asks on a segment; null where it asks nothing. */
function limitsOn({ standard, stated }: Case, kind: SegmentKind): SegmentLimits {
  const { beforeFinal, final } = standard;
  if (kind === 'intercept')
    return {
      localizer: beforeFinal.localizer,
      glidepath: null,
      airspeed: beforeFinal.airspeedKt,
      targetKt: stated.interceptAirspeedKt,
    };
  if (kind !== 'final') return { localizer: null, glidepath: null, airspeed: null, targetKt: null };
  return {
    localizer: final.localizer,
    glidepath: final.glidepath,
    airspeed: airspeedLimit({ standard, stated }, final.airspeedKt),
    targetKt: final.speedBasis === 'vref' ? stated.vrefKt : stated.targetAirspeedKt,
  };
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

function speedDebrief(
  parts: readonly Polyline[],
  segment: Span,
  { airspeed, targetKt }: SegmentLimits,
  estimated: boolean,
): DebriefSpeed | null {
  const spread = spreadDebrief(parts);
  if (!spread) return null;
  const errorKt = estimated ? ESTIMATED_AIRSPEED_ERROR_KT : AIRSPEED_ERROR_KT;
  const speed = { ...spread, estimated, errorKt, targetKt };
  if (airspeed === null || targetKt === null) {
    const unknown = {
      ...(targetKt === null && { targetKt: NO_TARGET }),
      timeOutsideS: airspeed === null ? NO_SPEED_LIMIT : NO_TARGET,
    };
    return { ...speed, timeOutsideS: null, unknown };
  }
  const offTarget = relativeTo(parts, targetKt);
  // What the instrument showed is what the pilot flew by: only an estimate may be off.
  const halfWidths = estimated ? constant(offTarget, ESTIMATED_AIRSPEED_ERROR_KT) : [];
  const outsideS = (off: Off) => timeOutsideS(excursionsOff(offTarget, halfWidths, airspeed, 0, off));
  const unseenS = hiddenS(offTarget, [segment], airspeed, halfWidths);
  return {
    ...speed,
    timeOutsideS: { atLeast: outsideS(-1), best: outsideS(0), atMost: outsideS(1) + unseenS },
    unknown: {},
  };
}
