import { FEET_PER_NM, METRES_PER_FOOT, wrap180 } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import { earthCentred, seenFrom } from '../flight/ellipsoid.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import type { Hair } from './hair.ts';

/** Moments a second in every column. */
export const RATE = 10;
const HALF_TRACK = 2.5 * RATE;
const HALF_FIT = 3 * RATE;
const FARTHEST_M = 25 * 1852;
/** Nearer than where full scale is this wide nothing is told from a needle. */
const MIN_SCALE_FT = 20;

/** A flight as the rules of approaches look at it; columns of one length, ten moments a second. */
export interface ViewedFlight {
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
  /** What gates and decision altitude are judged by. */
  readonly decidingFt: Float64Array;
  readonly groundspeedKt: Float64Array;
  readonly onGround: Uint8Array;
  /** Ground track less course, over 5 s centred; NaN while standing. */
  readonly courseAngleDeg: Float64Array;
  readonly sinkFpm: Float64Array;
  /** 1 while before the threshold and within 45° of the course. */
  readonly inbound: Uint8Array;
  /** 1 while inbound and within full scale of the localizer. */
  readonly onLocalizer: Uint8Array;
  /** What a hair is on the needles there, fractions of full scale. */
  readonly localizerHair: Float64Array;
  readonly glidepathHair: Float64Array;
  readonly hair: Hair;
}

/** @param by what gates and decision altitude are judged by: `height` for a log without an altimeter */
export function viewOf(
  { plan, columns, beam }: FlightTruth,
  by: 'indicated' | 'height',
  hair: Hair,
): ViewedFlight {
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
  const near = (i: number): boolean => Math.hypot(seen[i]!.eastM, seen[i]!.northM) <= FARTHEST_M;
  const inbound = Uint8Array.from(distanceNm, (d, i) =>
    d > 0 && Math.abs(courseAngleDeg[i]!) <= 45 && near(i) ? 1 : 0,
  );
  return {
    facility: plan.facility,
    count,
    timeS: columns.timeS,
    distanceNm,
    localizer: beam.localizerFullScale,
    glidepath: beam.glidepathFullScale,
    centrelineFt: beam.centrelineOffsetFt,
    rightOfCourseFt: column((i) => {
      const rangeFt = Math.hypot(seen[i]!.eastM, seen[i]!.northM) / METRES_PER_FOOT;
      return rangeFt * Math.sin((beam.localizerDeg[i]! * Math.PI) / 180);
    }),
    heightFt: columns.heightFt,
    decidingFt: by === 'indicated' ? columns.indicatedFt : columns.heightFt,
    groundspeedKt: columns.groundspeedKt,
    onGround: columns.onGround,
    courseAngleDeg,
    sinkFpm: column((i) => -60 * slopePerS(columns.heightFt, i)),
    inbound,
    localizerHair: column((i) => {
      const rangeFt = Math.hypot(seen[i]!.eastM, seen[i]!.northM) / METRES_PER_FOOT;
      return hair.sideFt / scaleFt(rangeFt, truth.localizerFullScaleDeg);
    }),
    glidepathHair: column(
      (i) =>
        hair.heightFt /
        scaleFt(Math.abs(distanceNm[i]! * FEET_PER_NM + originFt), truth.glidepathFullScaleDeg),
    ),
    hair,
    onLocalizer: inbound.map((is, i) => (is === 1 && Math.abs(beam.localizerFullScale[i]!) <= 1 ? 1 : 0)),
  };
}

/** Slope of the straight line of least squares through the moments within ± 3 s. */
function slopePerS(values: Float64Array, i: number): number {
  const first = Math.max(0, i - HALF_FIT);
  const last = Math.min(values.length - 1, i + HALF_FIT);
  const middle = (first + last) / 2;
  let top = 0;
  let bottom = 0;
  for (let k = first; k <= last; k++) {
    top += (k - middle) * values[k]!;
    bottom += (k - middle) ** 2;
  }
  return (top / bottom) * RATE;
}
