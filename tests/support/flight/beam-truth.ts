import { FEET_PER_METRE, METRES_PER_FOOT, METRES_PER_NM, wrap180 } from '../../../core/units/units.ts';
import { earthCentred, frameAt, geodetic, pointAt, seenFrom, type LocalFrame } from './ellipsoid.ts';
import type { FacilityFile } from './facility-file.ts';

const RADIANS = Math.PI / 180;

/** Where a beam stands and what its full scale is, worked out from the definitions and from nothing of the product. */
export interface BeamTruth {
  readonly runwayBearingTrueDeg: number;
  readonly runwayLengthFt: number;
  readonly thresholdElevationFt: number;
  readonly farEndElevationFt: number;
  readonly threshold: LocalFrame;
  readonly localizer: LocalFrame;
  readonly glidepath: LocalFrame;
  readonly courseTrueDeg: number;
  readonly localizerFullScaleDeg: number;
  readonly glideAngleDeg: number;
  readonly glidepathFullScaleDeg: number;
}

/** Where a point stands against the beam; signs: right of course, above the path and before the threshold positive. */
export interface BeamReading {
  readonly localizerDeg: number;
  readonly localizerFullScale: number;
  readonly glidepathDeg: number;
  readonly glidepathFullScale: number;
  readonly heightAboveGlidepathFt: number;
  readonly distanceToThresholdNm: number;
  readonly centrelineOffsetFt: number;
}

interface Place {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationFt: number;
}

export function beamTruth(facility: FacilityFile): BeamTruth {
  const { runway, glidepath } = facility;
  const threshold = frameOf(runway.threshold);
  // Lengths on the ground are those of the ellipsoid, whatever the elevation: the definition is a geodesic.
  const ground = frameOf({ ...runway.threshold, elevationFt: 0 });
  const farEnd = seenFrom(ground, frameOf({ ...runway.farEnd, elevationFt: 0 }).origin);
  const runwayBearingTrueDeg = bearingDeg(farEnd.eastM, farEnd.northM);
  const runwayLengthFt = Math.hypot(farEnd.eastM, farEnd.northM) * FEET_PER_METRE;
  const setbackFt = facility.localizer.antennaSetbackFt ?? 1000;
  const localizer = facility.localizer.antenna
    ? frameOf(facility.localizer.antenna)
    : frameAlong(
        runway.threshold,
        runwayBearingTrueDeg,
        runwayLengthFt + setbackFt,
        runway.threshold.elevationFt,
      );
  const originFt = glidepath.thresholdCrossingHeightFt / Math.tan(glidepath.angleDeg * RADIANS);
  const back = seenFrom(frameOnGround(localizer), ground.origin);
  const baselineFt = Math.hypot(back.eastM, back.northM) * FEET_PER_METRE;
  const widthDeg = facility.localizer.courseWidthDeg;
  return {
    runwayBearingTrueDeg,
    runwayLengthFt,
    thresholdElevationFt: runway.threshold.elevationFt,
    farEndElevationFt: runway.farEnd.elevationFt,
    threshold,
    localizer,
    glidepath: glidepath.antenna
      ? frameOf(glidepath.antenna)
      : frameAlong(runway.threshold, runwayBearingTrueDeg, originFt, runway.threshold.elevationFt),
    // On a line this short the azimuth carried forward is the one that looks back, turned around.
    courseTrueDeg: facility.localizer.courseTrueDeg ?? (bearingDeg(back.eastM, back.northM) + 180) % 360,
    localizerFullScaleDeg: widthDeg === undefined ? tailoredFullScaleDeg(baselineFt) : widthDeg / 2,
    glideAngleDeg: glidepath.angleDeg,
    glidepathFullScaleDeg: glidepath.fullScaleDeg ?? 0.24 * glidepath.angleDeg,
  };
}

/** 700 ft wide at the threshold, 3° to 6° in all (FAA AIM 1-1-9 b.2, published). */
function tailoredFullScaleDeg(baselineFt: number): number {
  return Math.min(3, Math.max(1.5, Math.atan2(350, baselineFt) / RADIANS));
}

export function readBeam(beam: BeamTruth, latDeg: number, lonDeg: number, heightFt: number): BeamReading {
  const point = earthCentred({ latDeg, lonDeg, heightM: heightFt * METRES_PER_FOOT });
  const fromLocalizer = seenFrom(beam.localizer, point);
  const fromGlidepath = seenFrom(beam.glidepath, point);
  const fromThreshold = seenFrom(beam.threshold, point);
  const bearing = beam.runwayBearingTrueDeg * RADIANS;
  const localizerDeg = wrap180(
    beam.courseTrueDeg + 180 - Math.atan2(fromLocalizer.eastM, fromLocalizer.northM) / RADIANS,
  );
  const groundM = Math.hypot(fromGlidepath.eastM, fromGlidepath.northM);
  const glidepathDeg = Math.atan2(fromGlidepath.upM, groundM) / RADIANS - beam.glideAngleDeg;
  const { eastM, northM } = fromThreshold;
  return {
    localizerDeg,
    localizerFullScale: localizerDeg / beam.localizerFullScaleDeg,
    glidepathDeg,
    glidepathFullScale: glidepathDeg / beam.glidepathFullScaleDeg,
    heightAboveGlidepathFt:
      (fromGlidepath.upM - groundM * Math.tan(beam.glideAngleDeg * RADIANS)) * FEET_PER_METRE,
    distanceToThresholdNm: -(eastM * Math.sin(bearing) + northM * Math.cos(bearing)) / METRES_PER_NM,
    centrelineOffsetFt: (eastM * Math.cos(bearing) - northM * Math.sin(bearing)) * FEET_PER_METRE,
  };
}

/** The point at a distance before the threshold, right of the centreline, at a height above sea level. */
export function pointFromThreshold(
  beam: BeamTruth,
  distanceNm: number,
  offsetFt: number,
  heightFt: number,
): { latDeg: number; lonDeg: number } {
  const bearing = beam.runwayBearingTrueDeg * RADIANS;
  const [alongM, rightM] = [-distanceNm * METRES_PER_NM, offsetFt * METRES_PER_FOOT];
  const eastM = alongM * Math.sin(bearing) + rightM * Math.cos(bearing);
  const northM = alongM * Math.cos(bearing) - rightM * Math.sin(bearing);
  // The frame is flat and the sea is not: a first guess, then the height that was asked for, at that place.
  let upM = 0;
  for (let round = 0; round < 4; round++) {
    upM += heightFt * METRES_PER_FOOT - geodetic(pointAt(beam.threshold, eastM, northM, upM)).heightM;
  }
  const { latDeg, lonDeg } = geodetic(pointAt(beam.threshold, eastM, northM, upM));
  return { latDeg, lonDeg };
}

/** The place so many feet along a bearing from another and right of that line, both at most a few miles. */
export function placeAlong(
  from: { latDeg: number; lonDeg: number },
  bearingTrueDeg: number,
  alongFt: number,
  rightFt = 0,
): { latDeg: number; lonDeg: number } {
  const bearing = bearingTrueDeg * RADIANS;
  const [alongM, rightM] = [onPlaneM(alongFt), onPlaneM(rightFt)];
  const eastM = alongM * Math.sin(bearing) + rightM * Math.cos(bearing);
  const northM = alongM * Math.cos(bearing) - rightM * Math.sin(bearing);
  const { latDeg, lonDeg } = geodetic(pointAt(frameOf({ ...from, elevationFt: 0 }), eastM, northM, 0));
  return { latDeg, lonDeg };
}

/** How far out on the tangent plane the end of a length along the curved ground lies below: its tangent. */
function onPlaneM(lengthFt: number): number {
  const radiusM = 6371000;
  return radiusM * Math.tan((lengthFt * METRES_PER_FOOT) / radiusM);
}

function frameOf(place: Place): LocalFrame {
  return frameAt({
    latDeg: place.latDeg,
    lonDeg: place.lonDeg,
    heightM: place.elevationFt * METRES_PER_FOOT,
  });
}

function frameOnGround(frame: LocalFrame): LocalFrame {
  return frameAt({ ...geodetic(frame.origin), heightM: 0 });
}

/** A frame so many feet along a bearing, at an elevation; good to 0.1 mm over runway lengths. */
function frameAlong(from: Place, bearingTrueDeg: number, lengthFt: number, elevationFt: number): LocalFrame {
  return frameOf({ ...placeAlong(from, bearingTrueDeg, lengthFt), elevationFt });
}

function bearingDeg(eastM: number, northM: number): number {
  return (Math.atan2(eastM, northM) / RADIANS + 360) % 360;
}
