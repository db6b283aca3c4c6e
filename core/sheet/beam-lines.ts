import { glidepathAltitudeFt } from '../facility/path-altitude.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { glidepathFeet } from '../facility/needle-feet.ts';
import { placeOnAxis } from '../facility/runway-axis.ts';
import { FEET_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { PathPoint, SheetBeam } from './sheet.ts';

const FRACTIONS = [0.25, 0.5, 0.75, 1] as const;
const SAMPLED_EVERY_NM = 0.1;

/** What a facility's path and sector are drawn from, so many NM out. */
export function beamOf(geometry: FacilityGeometry, outToNm: number): SheetBeam {
  const antenna = placeOnAxis(geometry, geometry.localizerAntenna);
  const count = Math.ceil(Math.max(outToNm, 1) / SAMPLED_EVERY_NM) + 1;
  return {
    localizerFullScaleDeg: geometry.localizerFullScaleDeg,
    glidepathFullScaleDeg: geometry.glidepathFullScaleDeg,
    glidepathAngleDeg: geometry.glidepathAngleDeg,
    courseOffsetDeg: geometry.courseOffsetDeg,
    antennaAlongFt: antenna.alongFt,
    antennaRightFt: antenna.rightFt,
    runwayLengthFt: geometry.lengthFt,
    runwayWidthFt: geometry.widthFt,
    path: Array.from({ length: count }, (_, step) => pathPoint(geometry, step * SAMPLED_EVERY_NM)),
  };
}

function pathPoint(geometry: FacilityGeometry, distanceNm: number): PathPoint {
  const feet = (sign: number) =>
    FRACTIONS.map((fraction) => glidepathFeet(geometry, distanceNm, sign * fraction)) as [
      number,
      number,
      number,
      number,
    ];
  return {
    distanceNm,
    altitudeFt: glidepathAltitudeFt(geometry, distanceNm),
    upFt: feet(1),
    downFt: feet(-1),
  };
}

/** Feet right of the runway's centreline at which the localizer shows a fraction of full scale, so many NM out. */
export function courseOffsetFt(beam: SheetBeam, distanceNm: number, fraction: number): number {
  const { antennaAlongFt, antennaRightFt, courseOffsetDeg, localizerFullScaleDeg } = beam;
  const alongFt = antennaAlongFt + distanceNm * FEET_PER_NM;
  const angleDeg = fraction * localizerFullScaleDeg - courseOffsetDeg;
  return antennaRightFt + alongFt * Math.tan(angleDeg * RADIANS_PER_DEGREE);
}

/** Feet off the course of a fraction of full scale, so many feet from the antenna along it. */
export function localizerFeetAt(beam: SheetBeam, alongFt: number, fraction: number): number {
  return alongFt * Math.tan(fraction * beam.localizerFullScaleDeg * RADIANS_PER_DEGREE);
}

/** Feet above the path of a fraction of full scale, so many feet from its origin. */
export function glidepathFeetAt(beam: SheetBeam, alongFt: number, fraction: number): number {
  const { glidepathAngleDeg, glidepathFullScaleDeg } = beam;
  const tangent = (angleDeg: number) => Math.tan(angleDeg * RADIANS_PER_DEGREE);
  return (
    alongFt * (tangent(glidepathAngleDeg + fraction * glidepathFullScaleDeg) - tangent(glidepathAngleDeg))
  );
}
