import type { Place } from '../earth/frame.ts';
import { geodesicBetween, geodesicFrom, type Position } from '../earth/geodesic.ts';
import {
  DEGREES_PER_RADIAN,
  FEET_PER_METRE,
  METRES_PER_FOOT,
  RADIANS_PER_DEGREE,
  wrap180,
  wrap360,
} from '../units/units.ts';
import type { Facility } from './facility-schema.ts';
import type { RunwayAxis } from './runway-axis.ts';

/** FAA handbooks: about 1,000 ft past the stop end (second-hand). */
const DEFAULT_SETBACK_FT = 1000;
/** FAA AIM 1-1-9 b.2 (published): the course is tailored to 700 ft at the threshold, full left to full right. */
const HALF_WIDTH_AT_THRESHOLD_FT = 350;
/** The same handbooks: a course is 3 to 6 degrees wide (second-hand); a side is half of it. */
const FULL_SCALE_LIMITS_DEG = { min: 1.5, max: 3 } as const;

export interface LocalizerBeam {
  readonly antenna: Place;
  /** Inbound, true, at the antenna. */
  readonly courseTrueDeg: number;
  /** Course less the runway's own azimuth, both at the antenna; 0 when no course is given. */
  readonly offsetDeg: number;
  /** From on course to full left or full right. */
  readonly fullScaleDeg: number;
}

/** The localizer of a facility: antenna as given or on the centreline, course as given or the runway's. */
export function localizerBeam(facility: Facility, axis: RunwayAxis): LocalizerBeam {
  const given = facility.localizer ?? {};
  const { antenna, runwayAzimuthDeg } = antennaOf(facility, axis);
  const courseTrueDeg = given.courseTrueDeg === undefined ? runwayAzimuthDeg : given.courseTrueDeg % 360;
  const distanceFt = geodesicBetween(axis.threshold, antenna).distanceM * FEET_PER_METRE;
  return {
    antenna,
    courseTrueDeg,
    offsetDeg: wrap180(courseTrueDeg - runwayAzimuthDeg),
    fullScaleDeg:
      given.courseWidthDeg === undefined ? tailoredFullScaleDeg(distanceFt) : given.courseWidthDeg / 2,
  };
}

/** Full scale, one side, that 700 ft at the threshold give from an antenna so far away, kept to real widths. */
export function tailoredFullScaleDeg(antennaToThresholdFt: number): number {
  const angleDeg = Math.atan(HALF_WIDTH_AT_THRESHOLD_FT / antennaToThresholdFt) * DEGREES_PER_RADIAN;
  return Math.min(Math.max(angleDeg, FULL_SCALE_LIMITS_DEG.min), FULL_SCALE_LIMITS_DEG.max);
}

function antennaOf(facility: Facility, axis: RunwayAxis) {
  const given = facility.localizer?.antenna;
  const thresholdElevationFt = facility.runway.threshold.elevationFt;
  if (given === undefined) {
    const distanceFt = axis.lengthFt + (facility.localizer?.antennaSetbackFt ?? DEFAULT_SETBACK_FT);
    const reached = geodesicFrom(axis.threshold, axis.trueBearingDeg, distanceFt * METRES_PER_FOOT);
    const { latDeg, lonDeg, endBearingDeg } = reached;
    const antenna = { latDeg, lonDeg, elevationFt: thresholdElevationFt };
    return { antenna, runwayAzimuthDeg: endBearingDeg };
  }
  const antenna = { ...given, elevationFt: given.elevationFt ?? thresholdElevationFt };
  return {
    antenna,
    runwayAzimuthDeg: wrap360(axis.trueBearingDeg + meridianConvergenceDeg(axis.threshold, given)),
  };
}

/** How far a straight line turns against north between two points: the longitude difference × sin latitude. */
function meridianConvergenceDeg(from: Position, to: Position): number {
  const middleLatitude = ((from.latDeg + to.latDeg) / 2) * RADIANS_PER_DEGREE;
  return wrap180(to.lonDeg - from.lonDeg) * Math.sin(middleLatitude);
}
