import { decidingOff, type Flown } from '../../../core/approach/flown.ts';
import type { Deviations } from '../../../core/deviation/deviations.ts';
import { needleError } from '../../../core/deviation/needle-error.ts';
import type { FacilityGeometry } from '../../../core/facility/derive-geometry.ts';
import { LineMemory } from '../../../core/numeric/line-memory.ts';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';
import { RADIANS_PER_DEGREE } from '../../../core/units/units.ts';
import { NO_ERROR, type PositionError } from '../../../core/track/position-error.ts';
import { gapsLongerThan } from '../../../core/track/gaps.ts';
import type { ExtraQuantity, Track } from '../../../core/track/track.ts';

/** A column of a made flight: one value, or a function of the seconds since its first fix. */
type Course = number | ((s: number) => number);

export interface Making {
  /** Times of the fixes; every second from 0 to `untilS` when not said. */
  readonly timeS?: readonly number[];
  readonly untilS?: number;
  readonly distanceNm?: Course;
  readonly localizer?: Course;
  readonly glidepath?: Course;
  /** Above the threshold, which stands at 100 ft; the altitude follows from it. */
  readonly heightFt?: Course;
  /** What the altimeter shows; where there is none the altitude decides. */
  readonly indicatedFt?: Course;
  readonly offsetFt?: Course;
  readonly courseAngleDeg?: Course;
  readonly trackTrueDeg?: Course;
  readonly groundspeedKt?: Course;
  readonly verticalSpeedFpm?: Course;
  readonly antennaHeightFt?: number;
  readonly recorded?: { readonly [Q in ExtraQuantity]?: Course };
  readonly facility?: Partial<FacilityGeometry>;
  readonly error?: PositionError;
}

export const THRESHOLD_FT = 100;
const PLACE = { latDeg: 0, lonDeg: 0, elevationFt: THRESHOLD_FT };

/**
 * A runway of 6,000 by 150 ft to the east that rises by 60 ft, its touchdown zone at 130 ft, a path of 3°, decision
 * altitude at 330 ft and the fix at 5 NM.
 */
const FACILITY: FacilityGeometry = {
  threshold: PLACE,
  farEnd: { ...PLACE, elevationFt: THRESHOLD_FT + 60 },
  trueBearingDeg: 90,
  lengthFt: 6000,
  widthFt: 150,
  touchdownZoneElevationFt: 130,
  airportElevationFt: 160,
  localizerAntenna: PLACE,
  courseTrueDeg: 90,
  courseOffsetDeg: 0,
  localizerFullScaleDeg: 2.5,
  glidepathOrigin: PLACE,
  glidepathAngleDeg: 3,
  glidepathFullScaleDeg: 0.72,
  thresholdCrossingHeightFt: 50,
  impliedCrossingHeightFt: null,
  decisionAltitudeFt: 330,
  finalApproachFix: { name: null, distanceNm: 5, altitudeFt: null },
  origins: {
    trueBearingDeg: 'derived',
    lengthFt: 'derived',
    widthFt: 'given',
    farEndElevationFt: 'given',
    touchdownZoneElevationFt: 'given',
    localizerAntenna: 'assumed',
    localizerAntennaElevationFt: 'assumed',
    courseTrueDeg: 'derived',
    localizerFullScaleDeg: 'derived',
    glidepathOrigin: 'derived',
    glidepathFullScaleDeg: 'derived',
    finalApproachFix: 'given',
  },
};

/**
 * A flight made of columns that a test writes by hand, each for itself: what is not given is an aircraft on course
 * and on the path at 4 NM, level at 1,000 ft above the threshold at 90 kt, with a fix every second for 100 s.
 */
export function makeFlown(making: Making = {}): Flown {
  const { untilS = 100 } = making;
  const timeS = Float64Array.from(making.timeS ?? Array.from({ length: untilS + 1 }, (_, s) => s));
  const column = (course: Course) =>
    typeof course === 'number' ? new Float64Array(timeS.length).fill(course) : timeS.map(course);
  const localizer = column(making.localizer ?? 0);
  const glidepath = column(making.glidepath ?? 0);
  const heightFt = column(making.heightFt ?? 1000);
  const altitudeFt = heightFt.map((feet) => feet + THRESHOLD_FT);
  const indicatedFt = making.indicatedFt === undefined ? null : column(making.indicatedFt);
  const distanceNm = column(making.distanceNm ?? 4);
  const gapLimitS = 5;
  const track: Track = {
    count: timeS.length,
    timeS,
    latDeg: column(0),
    lonDeg: column(0),
    altitudeFt,
    altitudeSource: 'geometric',
    temperatureKnown: false,
    receiver: { kind: 'augmented', isStated: false, accuracyShare: 0.95 },
    altitudeIndicatedFt: indicatedFt,
    groundspeedKt: column(making.groundspeedKt ?? 90),
    trackTrueDeg: column(making.trackTrueDeg ?? 90),
    verticalSpeedFpm: column(making.verticalSpeedFpm ?? 0),
    derived: { groundspeedKt: true, trackTrueDeg: true, verticalSpeedFpm: true },
    flags: new Uint8Array(timeS.length),
    medianIntervalS: 1,
    gapLimitS,
    gaps: gapsLongerThan(timeS, gapLimitS),
    recorded: Object.fromEntries(
      Object.entries(making.recorded ?? {}).map(([name, course]) => [name, column(course)]),
    ),
    line: Uint32Array.from(timeS, (_, i) => i + 2),
    issues: [],
  };
  const deviations: Deviations = {
    localizerFullScale: localizer,
    glidepathFullScale: glidepath,
    heightAboveGlidepathFt: glidepath.map((fraction) => fraction * 250),
    distanceToThresholdNm: distanceNm,
    centrelineOffsetFt: column(making.offsetFt ?? 0),
    heightAboveThresholdFt: heightFt,
    // The antenna stands 1.2 NM behind the threshold.
    alongCourseNm: distanceNm.map((nm, i) => (nm + 1.2) * Math.cos(localizer[i]! * 2.5 * RADIANS_PER_DEGREE)),
    acrossCourseNm: distanceNm.map(
      (nm, i) => (nm + 1.2) * Math.sin(localizer[i]! * 2.5 * RADIANS_PER_DEGREE),
    ),
  };
  const facility = { ...FACILITY, ...making.facility };
  const error = making.error ?? NO_ERROR;
  return {
    track,
    deviations,
    facility,
    error,
    needleError: needleError(error, deviations, facility),
    lines: new LineMemory(timeS, gapLimitS),
    heightCorrectionFt: 0,
    courseAngleDeg: new LazyColumn(timeS.length, (block, first) =>
      block.set(column(making.courseAngleDeg ?? 0).subarray(first, first + block.length)),
    ),
    decidingAltitudeFt: indicatedFt ?? altitudeFt,
    decidingOffFt: decidingOff(indicatedFt ?? altitudeFt, error),
    altitudeSource: indicatedFt ? 'indicated' : 'geometric',
    antennaHeightFt: making.antennaHeightFt ?? 6,
  };
}

/** All fixes of a flight as one pass. */
export function wholeOf({ track }: Flown): { first: number; last: number; until: number } {
  return { first: 0, last: track.count - 1, until: track.count - 1 };
}
