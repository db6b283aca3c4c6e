import { beamTruth, placeAlong } from '../flight/beam-truth.ts';
import type { FacilityFile } from '../flight/facility-file.ts';

/** The same runway and beam again, so many feet to the right. */
export function parallelFacility(facility: FacilityFile, rightFt: number): FacilityFile {
  const { runwayBearingTrueDeg } = beamTruth(facility);
  const beside = <P extends { latDeg: number; lonDeg: number }>(place: P): P => ({
    ...place,
    ...placeAlong(place, runwayBearingTrueDeg, 0, rightFt),
  });
  const { antenna: localizerAntenna, ...localizer } = facility.localizer;
  const { antenna: glidepathAntenna, ...glidepath } = facility.glidepath;
  return {
    ...facility,
    name: `${facility.name}, parallel`,
    runway: {
      ...facility.runway,
      threshold: beside(facility.runway.threshold),
      farEnd: beside(facility.runway.farEnd),
    },
    localizer: { ...localizer, ...(localizerAntenna && { antenna: beside(localizerAntenna) }) },
    glidepath: { ...glidepath, ...(glidepathAntenna && { antenna: beside(glidepathAntenna) }) },
  };
}

/** The runway landed on from the other end, with a plain beam on its centreline. */
export function reciprocalFacility(facility: FacilityFile): FacilityFile {
  const number = ((Number.parseInt(facility.runway.designator, 10) + 17) % 36) + 1;
  return {
    ...facility,
    name: `${facility.name}, other end`,
    runway: {
      ...facility.runway,
      designator: String(number).padStart(2, '0'),
      threshold: facility.runway.farEnd,
      farEnd: facility.runway.threshold,
    },
    localizer: { courseMagneticDeg: (facility.localizer.courseMagneticDeg + 180) % 360 },
    glidepath: {
      angleDeg: facility.glidepath.angleDeg,
      thresholdCrossingHeightFt: facility.glidepath.thresholdCrossingHeightFt,
    },
  };
}
