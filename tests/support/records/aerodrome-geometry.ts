import { placeOnAxis } from '../../../core/facility/runway-axis.ts';
import { beamTruth, placeAlong } from '../flight/beam-truth.ts';
import type { Aerodrome } from './aerodrome.ts';

const FEET_PER_NM = 1852 / 0.3048;
const RADIANS = Math.PI / 180;
const GLIDEPATH_ASIDE_FT = -400;

/** Where things stand at an aerodrome, as far as a facility file leaves it to be worked out. */
export function aerodromeGeometry({ facility, displacedFt }: Aerodrome) {
  const { runway, localizer, glidepath, finalApproachFix } = facility;
  const { runwayBearingTrueDeg, runwayLengthFt, localizerFullScaleDeg } = beamTruth(facility);
  const along = (alongFt: number, rightFt = 0) =>
    placeAlong(runway.threshold, runwayBearingTrueDeg, alongFt, rightFt);
  const antenna = localizer.antenna ?? along(runwayLengthFt + (localizer.antennaSetbackFt ?? 1000));
  const axis = { threshold: runway.threshold, trueBearingDeg: runwayBearingTrueDeg };
  const { alongFt, rightFt } = placeOnAxis(axis, antenna);
  const courseTrueDeg = localizer.courseTrueDeg ?? runwayBearingTrueDeg;
  const aside = Math.tan((courseTrueDeg - runwayBearingTrueDeg) * RADIANS);
  /** On the course that leads to the antenna, so many miles before the threshold. */
  const onCourse = (distanceNm: number) => {
    const before = -distanceNm * FEET_PER_NM;
    return along(before, rightFt + (before - alongFt) * aside);
  };
  const glidepathAlongFt = (glidepath.thresholdCrossingHeightFt - 1) / Math.tan(glidepath.angleDeg * RADIANS);
  return {
    runwayBearingTrueDeg,
    courseTrueDeg,
    pavementFt: displacedFt.here + runwayLengthFt,
    oppositeThreshold: along(runwayLengthFt - displacedFt.opposite),
    antenna,
    antennaPastEndFt: alongFt - runwayLengthFt,
    glidepathAntenna: along(glidepathAlongFt, GLIDEPATH_ASIDE_FT),
    glidepathAlongFt,
    glidepathElevationFt: runway.threshold.elevationFt + 1,
    fix: onCourse(finalApproachFix.distanceNm),
    joining: onCourse(finalApproachFix.distanceNm + 5),
    courseWidthDeg: localizerFullScaleDeg * 2,
  };
}
