import { earthCentred, eastNorthUp, localFrame } from '../earth/frame.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { Track } from '../track/track.ts';
import {
  DEGREES_PER_RADIAN,
  FEET_PER_METRE,
  METRES_PER_FOOT,
  METRES_PER_NM,
  RADIANS_PER_DEGREE,
  wrap180,
} from '../units/units.ts';
import type { Deviations } from './deviations.ts';

type Positions = Pick<Track, 'latDeg' | 'lonDeg' | 'altitudeFt'>;

/**
 * Projects every fix onto the localizer and the glidepath: angles in the local frame of each antenna, where a
 * radio beam is a straight line (design, section 4). One conversion to earth-centred coordinates and three
 * rotations a fix, nothing allocated inside the loop.
 */
export function projectTrack(track: Positions, facility: FacilityGeometry): Deviations {
  const antenna = localFrame(facility.localizerAntenna);
  const origin = localFrame(facility.glidepathOrigin);
  const threshold = localFrame(facility.threshold);
  const tanAngle = Math.tan(facility.glidepathAngleDeg * RADIANS_PER_DEGREE);
  const sinBearing = Math.sin(facility.trueBearingDeg * RADIANS_PER_DEGREE);
  const cosBearing = Math.cos(facility.trueBearingDeg * RADIANS_PER_DEGREE);
  const sinCourse = Math.sin(facility.courseTrueDeg * RADIANS_PER_DEGREE);
  const cosCourse = Math.cos(facility.courseTrueDeg * RADIANS_PER_DEGREE);

  const out = emptyDeviations(track.latDeg.length);
  const point = new Float64Array(3);
  const local = new Float64Array(3);
  for (let i = 0; i < track.latDeg.length; i++) {
    const altitudeFt = track.altitudeFt[i]!;
    const hasHeight = !Number.isNaN(altitudeFt);
    // Without a height the fix is put at the threshold's: sideways that moves it by less than a needle's width.
    const heightM = (hasHeight ? altitudeFt : facility.threshold.elevationFt) * METRES_PER_FOOT;
    earthCentred(track.latDeg[i]!, track.lonDeg[i]!, heightM, point);

    eastNorthUp(antenna, point, local);
    // The angle between the bearing of the aircraft and that of the course, outward: course + 180° − bearing.
    const alongCourseM = -(local[0]! * sinCourse + local[1]! * cosCourse);
    const acrossCourseM = local[0]! * cosCourse - local[1]! * sinCourse;
    const localizerDeg = wrap180(Math.atan2(acrossCourseM, alongCourseM) * DEGREES_PER_RADIAN);
    out.localizerFullScale[i] = localizerDeg / facility.localizerFullScaleDeg;
    out.alongCourseNm[i] = alongCourseM / METRES_PER_NM;
    out.acrossCourseNm[i] = acrossCourseM / METRES_PER_NM;

    eastNorthUp(threshold, point, local);
    out.distanceToThresholdNm[i] = -(local[0]! * sinBearing + local[1]! * cosBearing) / METRES_PER_NM;
    out.centrelineOffsetFt[i] = (local[0]! * cosBearing - local[1]! * sinBearing) * FEET_PER_METRE;
    out.heightAboveThresholdFt[i] = hasHeight ? local[2]! * FEET_PER_METRE : NaN;

    eastNorthUp(origin, point, local);
    const alongM = horizontalM(local);
    const upM = hasHeight ? local[2]! : NaN;
    const glidepathDeg = Math.atan2(upM, alongM) * DEGREES_PER_RADIAN - facility.glidepathAngleDeg;
    out.glidepathFullScale[i] = glidepathDeg / facility.glidepathFullScaleDeg;
    out.heightAboveGlidepathFt[i] = (upM - alongM * tanAngle) * FEET_PER_METRE;
  }
  return out;
}

/** Not Math.hypot, which guards against overflow and costs five times as much. */
function horizontalM(local: Float64Array): number {
  return Math.sqrt(local[0]! * local[0]! + local[1]! * local[1]!);
}

function emptyDeviations(count: number): Deviations {
  const column = () => new Float64Array(count);
  return {
    localizerFullScale: column(),
    glidepathFullScale: column(),
    heightAboveGlidepathFt: column(),
    distanceToThresholdNm: column(),
    centrelineOffsetFt: column(),
    heightAboveThresholdFt: column(),
    alongCourseNm: column(),
    acrossCourseNm: column(),
  };
}
