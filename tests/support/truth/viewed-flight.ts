import { FEET_PER_NM, METRES_PER_FOOT, wrap180 } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import { earthCentred, seenFrom } from '../flight/ellipsoid.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import type { Hair } from './hair.ts';
import { sinkIn, type Sink } from './sink.ts';

/** Moments a second in every column. */
export const RATE = 10;
const HALF_TRACK = 2.5 * RATE;
const FARTHEST_FT = 25 * FEET_PER_NM;
/** Nearer than where full scale is this wide nothing is told from a needle. */
const MIN_SCALE_FT = 20;

/** A flight as the rules of approaches look at it; columns of one length, ten moments a second. */
export interface FlightView {
  readonly facility: FacilityFile;
  readonly count: number;
  readonly timeS: Float64Array;
  readonly distanceNm: Float64Array;
  readonly localizer: Float64Array;
  readonly glidepath: Float64Array;
  readonly centrelineFt: Float64Array;
  /** Right of the course line, wherever the course points. */
  readonly rightOfCourseFt: Float64Array;
  readonly heightFt: Float64Array;
  readonly indicatedFt: Float64Array;
  readonly groundspeedKt: Float64Array;
  readonly onGround: Uint8Array;
  /** Ground track less course, over 5 s centred; NaN while standing. */
  readonly courseAngleDeg: Float64Array;
  readonly sinkFpm: (i: number) => Sink;
  /** 1 while before the threshold and within 45° of the course. */
  readonly inbound: Uint8Array;
  /** 1 while inbound and within full scale of the localizer. */
  readonly onLocalizer: Uint8Array;
  /** What full scale of a needle is there. */
  readonly localizerScaleFt: Float64Array;
  readonly glidepathScaleFt: Float64Array;
}

/** A view as the rules are read in it: by an altimeter or without one, and to a hair. */
export interface ViewedFlight extends FlightView {
  readonly by: 'indicated' | 'height';
  /** What gates and decision altitude are judged by. */
  readonly decidingFt: Float64Array;
  readonly hair: Hair;
}

export function readTo(view: FlightView, by: 'indicated' | 'height', hair: Hair): ViewedFlight {
  return { ...view, by, decidingFt: by === 'indicated' ? view.indicatedFt : view.heightFt, hair };
}

export function viewOf({ plan, columns, beam }: FlightTruth): FlightView {
  const count = columns.timeS.length;
  const truth = beamTruth(plan.facility);
  const seen = Array.from(columns.timeS, (_, i) =>
    seenFrom(
      truth.localizer,
      earthCentred({
        latDeg: columns.latDeg[i]!,
        lonDeg: columns.lonDeg[i]!,
        heightM: columns.heightFt[i]! * METRES_PER_FOOT,
      }),
    ),
  );
  const column = (value: (i: number) => number): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => value(i));
  const courseAngleDeg = column((i) => {
    const from = seen[Math.max(0, i - HALF_TRACK)]!;
    const to = seen[Math.min(count - 1, i + HALF_TRACK)]!;
    const [eastM, northM] = [to.eastM - from.eastM, to.northM - from.northM];
    if (Math.hypot(eastM, northM) < 2) return NaN;
    return wrap180((Math.atan2(eastM, northM) * 180) / Math.PI - truth.courseTrueDeg);
  });
  const distanceNm = beam.distanceToThresholdNm;
  const scaleFt = (distanceFt: number, fullScaleDeg: number): number =>
    Math.max(MIN_SCALE_FT, distanceFt * Math.tan((fullScaleDeg * Math.PI) / 180));
  const originFt =
    plan.facility.glidepath.thresholdCrossingHeightFt / Math.tan((truth.glideAngleDeg * Math.PI) / 180);
  const rangeFt = (i: number): number => Math.hypot(seen[i]!.eastM, seen[i]!.northM) / METRES_PER_FOOT;
  const inbound = Uint8Array.from(distanceNm, (d, i) =>
    d > 0 && Math.abs(courseAngleDeg[i]!) <= 45 && rangeFt(i) <= FARTHEST_FT ? 1 : 0,
  );
  return {
    facility: plan.facility,
    count,
    timeS: columns.timeS,
    distanceNm,
    localizer: beam.localizerFullScale,
    glidepath: beam.glidepathFullScale,
    centrelineFt: beam.centrelineOffsetFt,
    rightOfCourseFt: column((i) => rangeFt(i) * Math.sin((beam.localizerDeg[i]! * Math.PI) / 180)),
    heightFt: columns.heightFt,
    indicatedFt: columns.indicatedFt,
    groundspeedKt: columns.groundspeedKt,
    onGround: columns.onGround,
    courseAngleDeg,
    sinkFpm: sinkIn(columns.heightFt, RATE),
    inbound,
    localizerScaleFt: column((i) => scaleFt(rangeFt(i), truth.localizerFullScaleDeg)),
    glidepathScaleFt: column((i) =>
      scaleFt(Math.abs(distanceNm[i]! * FEET_PER_NM + originFt), truth.glidepathFullScaleDeg),
    ),
    onLocalizer: inbound.map((is, i) => (is === 1 && Math.abs(beam.localizerFullScale[i]!) <= 1 ? 1 : 0)),
  };
}
